import { aTimeout, expect, waitUntil } from '@open-wc/testing';
import { viewpoints } from '../../src/draw/orbit.js';
import { drawCounters } from '../../src/draw/schedule.js';
import { SurfaceView } from '../../src/draw/surface.js';
import { hasWebGl } from '../../src/draw/webgl.js';
import { darkTheme, inventedView, lightTheme } from './fields.js';

const size = { cssWidth: 420, cssHeight: 300, pixelRatio: 1 };

function coloursOf(canvas: HTMLCanvasElement): number {
  const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  return new Set(new Uint32Array(data.buffer)).size;
}

describe('a surface where there is no WebGL', () => {
  it('runs without WebGL, or proves nothing', () => {
    expect(hasWebGl(), 'this browser was to be started without WebGL').to.equal(false);
  });

  it('is drawn as lines from every viewpoint, light and dark, and can be picked', () => {
    for (const theme of [lightTheme, darkTheme])
      for (const [name, orbit] of Object.entries(viewpoints)) {
        const canvas = document.createElement('canvas');
        const surface = new SurfaceView(canvas, { watchVisibility: false });
        surface.update(inventedView(), orbit, theme, size);
        surface.drawNow();
        expect(surface.mode).to.equal('lines');
        expect(coloursOf(canvas), name).to.be.greaterThan(150);
        const at = surface.project(48.2, 0.4)!;
        const hit = surface.pick(at.x, at.y)!;
        const back = surface.project(hit.column, hit.row)!;
        expect(Math.hypot(back.x - at.x, back.y - at.y), name).to.be.lessThan(1);
        surface.dispose();
      }
    expect(drawCounters.contexts).to.equal(0);
  });

  it('draws when seen, once, and then rests', async () => {
    const canvas = document.createElement('canvas');
    canvas.style.cssText = 'display: block; width: 420px; height: 300px';
    document.body.append(canvas);
    const surface = new SurfaceView(canvas);
    const { frames } = drawCounters;
    surface.update(inventedView(), viewpoints.corner, lightTheme, size);
    await waitUntil(() => drawCounters.frames > frames, 'it is drawn', { timeout: 15000 });
    await aTimeout(600);
    expect(drawCounters.frames).to.equal(frames + 1);
    expect(coloursOf(canvas)).to.be.greaterThan(150);
    surface.dispose();
    canvas.remove();
  });
});
