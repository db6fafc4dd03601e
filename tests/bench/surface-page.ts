/** Our page of `npm run bench -- surface`: measures in the browser and hands its figures to the script. */
import { viewpoints } from '../../src/draw/orbit.js';
import { drawCounters } from '../../src/draw/schedule.js';
import { SurfaceView } from '../../src/draw/surface.js';
import { inventedField, inventedView, lightTheme } from '../draw/fields.js';

const size = { cssWidth: 900, cssHeight: 600, pixelRatio: 1 };
const fields = Array.from({ length: 4 }, () => inventedField(300, 200));

/** Milliseconds of a task until its pixels can be read: what the GPU still has to do is waited for. */
function timed(canvas: HTMLCanvasElement, task: () => void): number {
  const begin = performance.now();
  task();
  canvas.getContext('2d')!.getImageData(450, 300, 1, 1);
  return performance.now() - begin;
}

/** The same numbers, for the other library: rows of levels, and the two axes. */
const plainData = (): unknown =>
  fields.map(({ values, columns, rows, columnPositions, rowPositions }) => ({
    x: [...columnPositions],
    y: [...rowPositions],
    z: Array.from({ length: rows }, (_, r) => [...values.subarray(r * columns, (r + 1) * columns)]),
  }));

async function measure(): Promise<Record<string, unknown>> {
  const views = fields.map((field) => inventedView({ field }));
  const canvas = document.createElement('canvas');
  document.body.append(canvas);
  let surface!: SurfaceView;
  const first = timed(canvas, () => {
    surface = new SurfaceView(canvas, { watchVisibility: false });
    surface.update(views[0], viewpoints.corner, lightTheme, size);
    surface.drawNow();
  });
  const turned = (k: number, draw: () => void): number =>
    timed(canvas, () => {
      surface.update(views[0], { ...viewpoints.corner, azimuthRadians: -0.4 + k * 0.02 }, lightTheme, size);
      draw();
    });
  const indices = [...Array(12).keys()];
  const steps = indices.map((k) => turned(k, () => surface.drawNow()));
  const fine = indices.slice(0, 5).map((k) => turned(20 + k, () => surface.drawAnyway()));
  const data = views.slice(1).map((view) =>
    timed(canvas, () => {
      surface.update(view, viewpoints.corner, lightTheme, size);
      surface.drawNow();
    }),
  );
  // The picture of care that follows a quick one is not rest yet.
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const { frames, requests } = drawCounters;
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const { mode } = surface;
  const idle = { frames: drawCounters.frames - frames, requests: drawCounters.requests - requests };
  surface.dispose();
  return { mode, first: [first], steps, fine, data, idle, contextsLeft: drawCounters.contexts };
}

Object.assign(globalThis, { measure, plainData });
