import { describe, expect, it } from 'vitest';
import {
  dragOrbit,
  keyOrbit,
  limitOrbit,
  orbitLimits,
  pinchOrbit,
  viewpoints,
  wheelOrbit,
} from '../../src/draw/orbit.js';
import { depthOf, invert, makeSpace, rayAt, toScreen } from '../../src/draw/projection.js';
import { Rng } from '../../src/signal/random.js';

const size = { cssWidth: 900, cssHeight: 560 };
const plot = { left: 60, top: 80, right: 840, bottom: 500 };
const random = new Rng(5);
const anyOrbit = (): { azimuthRadians: number; elevationRadians: number; zoom: number } =>
  limitOrbit({
    azimuthRadians: (random.uniform() - 0.5) * 7,
    elevationRadians: random.uniform() * 1.6,
    zoom: 1,
  });

describe('the space of the surface', () => {
  it('keeps the whole box inside the plot from any side', () => {
    for (let round = 0; round < 300; round += 1) {
      const space = makeSpace(anyOrbit(), plot, size);
      for (let corner = 0; corner < 8; corner += 1) {
        const { x, y } = toScreen(
          space,
          corner & 1 ? space.half[0] : -space.half[0],
          corner & 2 ? space.half[1] : -space.half[1],
          corner & 4 ? space.half[2] : -space.half[2],
        );
        expect(x).toBeGreaterThan(plot.left - 1e-6);
        expect(x).toBeLessThan(plot.right + 1e-6);
        expect(y).toBeGreaterThan(plot.top - 1e-6);
        expect(y).toBeLessThan(plot.bottom + 1e-6);
      }
    }
  });

  it('seen from the front has frequency to the right, level upwards and later time nearer', () => {
    const space = makeSpace(viewpoints.front, plot, size);
    const at = (x: number, y: number, z: number): { x: number; y: number } => toScreen(space, x, y, z);
    expect(at(0.5, 0, 0).x).toBeGreaterThan(at(-0.5, 0, 0).x);
    expect(at(0, 0.2, 0).y).toBeLessThan(at(0, -0.2, 0).y);
    expect(at(0, -0.3, 0.5).y).toBeGreaterThan(at(0, -0.3, -0.5).y);
    expect(depthOf(space, 0, 0, 0.5)).toBeLessThan(depthOf(space, 0, 0, -0.5));
    expect(space.eye[1]).toBeGreaterThan(space.half[1]);
  });

  it('has its eye where all rays meet', () => {
    for (let round = 0; round < 50; round += 1) {
      const space = makeSpace(anyOrbit(), plot, size);
      const { origin, direction } = rayAt(space, random.uniform() * 900, random.uniform() * 560);
      const toEye = space.eye.map((part, k) => part - origin[k]);
      const cross = Math.hypot(
        toEye[1] * direction[2] - toEye[2] * direction[1],
        toEye[2] * direction[0] - toEye[0] * direction[2],
        toEye[0] * direction[1] - toEye[1] * direction[0],
      );
      expect(cross / Math.hypot(...toEye) / Math.hypot(...direction)).toBeLessThan(1e-6);
    }
  });

  it('sends a ray through the pixel of a point back through that point', () => {
    for (let round = 0; round < 200; round += 1) {
      const space = makeSpace(anyOrbit(), plot, size);
      const point = space.half.map((half) => (random.uniform() * 2 - 1) * half) as [number, number, number];
      const pixel = toScreen(space, ...point);
      const { origin, direction } = rayAt(space, pixel.x, pixel.y);
      const t =
        direction.reduce((sum, part, k) => sum + part * (point[k] - origin[k]), 0) /
        direction.reduce((sum, part) => sum + part * part, 0);
      const miss = Math.hypot(...point.map((part, k) => origin[k] + direction[k] * t - part));
      expect(miss).toBeLessThan(1e-6);
    }
  });

  it('from above is a plan: floor and top of the box within two pixels of each other', () => {
    const space = makeSpace(viewpoints.plan, plot, size);
    for (const [x, z] of [
      [-1, -1],
      [1, 1],
      [0.5, -0.2],
    ]) {
      const low = toScreen(space, x * space.half[0], -space.half[1], z * space.half[2]);
      const high = toScreen(space, x * space.half[0], space.half[1], z * space.half[2]);
      expect(Math.hypot(low.x - high.x, low.y - high.y)).toBeLessThan(4);
    }
  });

  it('refuses to invert what has no inverse', () => {
    expect(() => invert(new Float64Array(16))).toThrow(RangeError);
  });
});

describe('the orbit', () => {
  it('stays within its limits and heals what is not a number', () => {
    for (const view of [
      { azimuthRadians: 40, elevationRadians: -3, zoom: 100 },
      { azimuthRadians: NaN, elevationRadians: Infinity, zoom: NaN },
    ]) {
      const kept = limitOrbit(view);
      expect(Math.abs(kept.azimuthRadians)).toBeLessThanOrEqual(Math.PI);
      expect(kept.elevationRadians).toBeGreaterThanOrEqual(orbitLimits.elevationRadians[0]);
      expect(kept.elevationRadians).toBeLessThanOrEqual(orbitLimits.elevationRadians[1]);
      expect(kept.zoom).toBeLessThanOrEqual(orbitLimits.zoom[1]);
    }
    for (const view of Object.values(viewpoints)) expect(limitOrbit(view)).toEqual(view);
  });

  it('comes back where it was when a gesture is undone', () => {
    const start = viewpoints.corner;
    const there = dragOrbit(start, 120, -40, size);
    const back = dragOrbit(there, -120, 40, size);
    expect(back.azimuthRadians).toBeCloseTo(start.azimuthRadians, 9);
    expect(back.elevationRadians).toBeCloseTo(start.elevationRadians, 9);
    expect(pinchOrbit(pinchOrbit(start, 1.5), 1 / 1.5).zoom).toBeCloseTo(1, 9);
    expect(wheelOrbit(wheelOrbit(start, -200), 200).zoom).toBeCloseTo(1, 9);
    expect(keyOrbit(keyOrbit(start, 'ArrowLeft')!, 'ArrowRight')!.azimuthRadians).toBeCloseTo(
      start.azimuthRadians,
      9,
    );
    expect(keyOrbit(start, 'Tab')).toBeNull();
    expect(keyOrbit(there, 'Home')).toEqual(start);
  });
});
