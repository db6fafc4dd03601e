import { aTimeout, expect, nextFrame } from '@open-wc/testing';
import { hasWebGl } from '../../src/draw/webgl.js';
import { viewpoints } from '../../src/draw/orbit.js';
import { currentRenderer } from '../../src/draw/renderer.js';
import { drawCounters } from '../../src/draw/schedule.js';
import { SurfaceView } from '../../src/draw/surface.js';
import { darkTheme, inventedField, inventedView, lightTheme } from './fields.js';

const size = { cssWidth: 420, cssHeight: 300, pixelRatio: 1 };
const field = inventedField(80, 40);
const view = inventedView({ field });

const made: { canvas: HTMLCanvasElement; surface: SurfaceView }[] = [];

function makeSurface(): { canvas: HTMLCanvasElement; surface: SurfaceView } {
  const canvas = document.createElement('canvas');
  canvas.style.cssText = 'display: block; width: 420px; height: 300px';
  document.body.append(canvas);
  const pair = { canvas, surface: new SurfaceView(canvas) };
  made.push(pair);
  return pair;
}

async function until(what: () => boolean, milliseconds = 8000): Promise<void> {
  const end = performance.now() + milliseconds;
  while (!what()) {
    if (performance.now() > end) throw new Error(`Waited ${milliseconds} ms in vain.`);
    await aTimeout(20);
  }
}

/** Frames stop being drawn: longer than a careful picture waits after a quick one, and until the GPU is done. */
async function settled(): Promise<void> {
  let frames = -1;
  while (frames !== drawCounters.frames) {
    frames = drawCounters.frames;
    await aTimeout(400);
    await nextFrame();
  }
}

function coloursOf(canvas: HTMLCanvasElement): number {
  const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  return new Set(new Uint32Array(data.buffer)).size;
}

describe('a surface where there is WebGL', () => {
  afterEach(() => {
    for (const { canvas, surface } of made.splice(0)) {
      surface.dispose();
      canvas.remove();
    }
  });

  it('has WebGL to be tested with', () => {
    expect(hasWebGl(), 'this browser offers no WebGL 2: the surface cannot be tested').to.equal(true);
  });

  it('draws a picture of many colours, light and dark', async () => {
    for (const theme of [lightTheme, darkTheme]) {
      const { canvas, surface } = makeSurface();
      surface.update(view, viewpoints.corner, theme, size);
      await until(() => coloursOf(canvas) > 1500);
      expect(surface.mode).to.equal('webgl');
    }
  });

  it('has the colour of the level where a known point is drawn in plan', async () => {
    const flat = {
      ...field,
      columnFloor: null,
      rowEnd: 9,
      values: new Float32Array(field.values.length).fill(-32.5),
    };
    const { canvas, surface } = makeSurface();
    surface.update(inventedView({ field: flat, flags: [], marks: [] }), viewpoints.plan, darkTheme, size);
    await until(() => coloursOf(canvas) > 5);
    const { scaleTable } = await import('../../src/draw/colours.js');
    const wanted = scaleTable('dusk').subarray(117 * 4, 117 * 4 + 3);
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let near = 0;
    for (let k = 0; k < data.length; k += 4)
      if ([0, 1, 2].every((c) => Math.abs(data[k + c] - wanted[c]) <= 10)) near += 1;
    expect(near).to.be.greaterThan(8000);
  });

  it('shares one context among many, gives it back with the last, and keeps nothing', async () => {
    expect(drawCounters.contexts).to.equal(0);
    for (let k = 0; k < 24; k += 1) makeSurface().surface.update(view, viewpoints.corner, lightTheme, size);
    expect(drawCounters.contexts).to.equal(1);
    made[0].canvas.scrollIntoView();
    await until(() => coloursOf(made[0].canvas) > 1000);
    made[23].canvas.scrollIntoView();
    await until(() => coloursOf(made[23].canvas) > 1000);
    for (const { canvas, surface } of made.splice(0)) {
      surface.dispose();
      canvas.remove();
    }
    expect(drawCounters.contexts).to.equal(0);
    expect(drawCounters.pictures).to.equal(0);
    expect(currentRenderer()).to.equal(null);
  });

  it('draws nothing while nothing changes, and asks for no frames', async () => {
    const { canvas, surface } = makeSurface();
    surface.update(view, viewpoints.corner, lightTheme, size);
    await until(() => coloursOf(canvas) > 1000);
    await settled();
    const { frames, requests } = drawCounters;
    for (let k = 0; k < 5; k += 1) {
      surface.update(
        { ...view, flags: view.flags.map((flag) => ({ ...flag })) },
        { ...viewpoints.corner },
        { ...lightTheme },
        { ...size },
      );
      await nextFrame();
    }
    await aTimeout(200);
    expect(drawCounters.frames).to.equal(frames);
    expect(drawCounters.requests).to.equal(requests);
  });

  it('builds nothing and uploads nothing when limits, scale, span or camera change', async () => {
    const { canvas, surface } = makeSurface();
    surface.update(view, viewpoints.corner, lightTheme, size);
    await until(() => coloursOf(canvas) > 1000);
    const { geometries, uploads, frames } = drawCounters;
    surface.update({ ...view, valueRange: [-40, 0] }, viewpoints.corner, lightTheme, size);
    surface.drawNow();
    surface.update({ ...view, columnScale: 'linear' }, viewpoints.front, lightTheme, size);
    surface.drawNow();
    surface.update({ ...view, rowRange: [0, 0.8] }, viewpoints.high, darkTheme, size);
    surface.drawNow();
    expect(drawCounters.frames).to.equal(frames + 3);
    expect(drawCounters.geometries).to.equal(geometries);
    expect(drawCounters.uploads).to.equal(uploads);
  });

  it('draws nothing while it cannot be seen, and what was asked for once it can', async () => {
    const { canvas, surface } = makeSurface();
    canvas.style.marginTop = '5000px';
    await settled();
    const { frames } = drawCounters;
    surface.update(view, viewpoints.corner, lightTheme, size);
    await aTimeout(200);
    expect(drawCounters.frames).to.equal(frames);
    canvas.style.marginTop = '0';
    await until(() => coloursOf(canvas) > 1000);
  });

  it('keeps its picture when the context is lost, draws lines meanwhile, and the surface again when it is back', async () => {
    const { canvas, surface } = makeSurface();
    surface.update(view, viewpoints.corner, lightTheme, size);
    await until(() => coloursOf(canvas) > 1500);
    const lost = currentRenderer()!.loseContext();
    await until(() => currentRenderer()!.lost);
    expect(coloursOf(canvas)).to.be.greaterThan(20);
    await until(() => surface.mode === 'lines');
    expect(coloursOf(canvas)).to.be.greaterThan(20);
    surface.update(view, viewpoints.front, lightTheme, size);
    await settled();
    expect(coloursOf(canvas)).to.be.greaterThan(20);
    lost.restore();
    await until(() => surface.mode === 'webgl');
    expect(coloursOf(canvas)).to.be.greaterThan(1500);
  });

  it('falls back to lines where a program of its shaders does not link', async () => {
    // eslint-disable-next-line @typescript-eslint/unbound-method -- it is called on the context that it is taken from
    const { shaderSource } = WebGL2RenderingContext.prototype;
    WebGL2RenderingContext.prototype.shaderSource = function (shader, text) {
      shaderSource.call(this, shader, text.replace('void main', 'nonsense main'));
    };
    try {
      const { canvas, surface } = makeSurface();
      surface.update(view, viewpoints.corner, lightTheme, size);
      await until(() => surface.mode === 'lines');
      expect(coloursOf(canvas)).to.be.greaterThan(40);
      surface.dispose();
    } finally {
      WebGL2RenderingContext.prototype.shaderSource = shaderSource;
    }
  });

  it('survives the forced loss of its context while disposed in the middle', async () => {
    const { surface } = makeSurface();
    surface.update(view, viewpoints.corner, lightTheme, size);
    currentRenderer()!.loseContext();
    surface.dispose();
    surface.dispose();
    await aTimeout(50);
    expect(drawCounters.contexts).to.equal(0);
    const next = makeSurface();
    next.surface.update(view, viewpoints.corner, lightTheme, size);
    await until(() => coloursOf(next.canvas) > 1000);
  });

  it('picks the point that is drawn under the pointer: the colours of a narrow ridge are where it is projected', async () => {
    // One column stands out of a flat field: its peak must be where the projection says, within a pixel.
    const values = new Float32Array(field.values.length).fill(-55);
    for (let r = 0; r < field.rows; r += 1) values[r * field.columns + 40] = -2;
    const spike = { ...field, values, columnFloor: null, rowEnd: 9 };
    const { canvas, surface } = makeSurface();
    surface.update(inventedView({ field: spike, flags: [], marks: [] }), viewpoints.high, lightTheme, size);
    await until(() => coloursOf(canvas) > 100);
    const context = canvas.getContext('2d')!;
    const column = field.columnPositions[40];
    for (const row of [0.3, 0.5, 0.7]) {
      const at = surface.project(column, row)!;
      const hit = surface.pick(at.x, at.y + 0.3)!;
      const back = surface.project(hit.column, hit.row)!;
      expect(Math.hypot(back.x - at.x, back.y - at.y)).to.be.lessThan(1);
      // The strongest (darkest) pixel of that line of pixels lies at the projected crest.
      const strip = context.getImageData(Math.round(at.x) - 12, Math.round(at.y), 24, 1).data;
      let darkest = 0;
      for (let k = 1; k < 24; k += 1) if (strip[k * 4 + 1] < strip[darkest * 4 + 1]) darkest = k;
      expect(Math.abs(Math.round(at.x) - 12 + darkest + 0.5 - at.x)).to.be.lessThan(2.6);
    }
    expect(surface.pick(2, 2)).to.equal(null);
  });

  it('has ridges and cursor in a quick picture where a careful one has them', () => {
    const canvas = document.createElement('canvas');
    const surface = new SurfaceView(canvas, { watchVisibility: false });
    made.push({ canvas, surface });
    const cursor = { column: 100, row: 0.2 };
    surface.update({ ...view, cursor }, viewpoints.high, lightTheme, size);
    const places = [
      ...[0.15, 0.3, 0.45].map((row) => surface.project(48.2, row)!),
      ...[26, 36, 90].map((column) => surface.project(column, cursor.row)!),
    ];
    /** How near to the accent's colour the pixels about each place come, in steps of 255. */
    const away = (): number[] =>
      places.map(({ x, y }) => {
        const { data } = canvas.getContext('2d')!.getImageData(Math.round(x) - 2, Math.round(y) - 2, 4, 4);
        const each = Array.from({ length: 16 }, (_, k) =>
          Math.max(...[0x0b, 0x6e, 0x8a].map((value, c) => Math.abs(data[4 * k + c] - value))),
        );
        return Math.min(...each);
      });
    surface.drawNow();
    const quick = away();
    surface.drawAnyway();
    const careful = away();
    surface.update(view, viewpoints.high, lightTheme, size);
    surface.drawNow();
    const without = away();
    for (const distances of [quick, careful]) expect(Math.max(...distances)).to.be.lessThan(70);
    expect(Math.min(...without.slice(3)), 'no cursor, no line').to.be.greaterThan(75);
  });

  it('leaves nothing behind after many rounds of mounting and unmounting', async () => {
    const keeper = makeSurface();
    keeper.surface.update(view, viewpoints.corner, lightTheme, size);
    await until(() => coloursOf(keeper.canvas) > 1000);
    const before = currentRenderer()!.memory;
    const { geometries, contexts, pictures } = drawCounters;
    for (let round = 0; round < 60; round += 1) {
      const canvas = document.createElement('canvas');
      const surface = new SurfaceView(canvas, { watchVisibility: false });
      surface.update(view, viewpoints.corner, lightTheme, size);
      if (round % 6 === 0) surface.drawNow();
      surface.dispose();
    }
    expect(currentRenderer()!.memory).to.deep.equal(before);
    expect(drawCounters.geometries).to.equal(geometries);
    expect(drawCounters.contexts).to.equal(contexts);
    expect(drawCounters.pictures).to.equal(pictures);
  });
});
