import { expect } from '@open-wc/testing';
import { isSoftware, ReadBack } from '../../src/draw/read-back.js';

const size = { width: 40, height: 30 };

/** A context larger than the picture, which stands in its lower left corner: opaque, half transparent and empty parts. */
function drawn(): WebGL2RenderingContext {
  const canvas = Object.assign(document.createElement('canvas'), { width: 64, height: 48 });
  const gl = canvas.getContext('webgl2', { antialias: false })!;
  gl.enable(gl.SCISSOR_TEST);
  const patch = (
    box: readonly [number, number, number, number],
    colour: readonly [number, number, number, number],
  ): void => {
    gl.scissor(...box);
    gl.clearColor(...colour);
    gl.clear(gl.COLOR_BUFFER_BIT);
  };
  patch([0, 18, 10, 10], [1, 0, 0, 1]);
  patch([10, 18, 10, 20], [0, 0.25, 0.5, 0.5]);
  patch([30, 44, 10, 4], [0, 0.6, 0.2, 1]);
  return gl;
}

function onPaper(copy: (context: CanvasRenderingContext2D) => void): Uint8ClampedArray {
  const canvas = Object.assign(document.createElement('canvas'), size);
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  context.fillStyle = '#fbfaf7';
  context.fillRect(0, 0, size.width, size.height);
  copy(context);
  return context.getImageData(0, 0, size.width, size.height).data;
}

describe('a picture read from a context that is computed in software', () => {
  it('is the picture that the browser itself would draw, upright and over what is there', () => {
    const gl = drawn();
    const readBack = new ReadBack();
    const bottom = gl.canvas.height - size.height;
    const mine = onPaper((context) => readBack.copy(gl, context, size, bottom));
    const theirs = onPaper((context) => context.drawImage(gl.canvas, 0, 0));
    expect(mine.length).to.equal(theirs.length);
    let most = 0;
    mine.forEach((value, k) => (most = Math.max(most, Math.abs(value - theirs[k]))));
    // Half transparent colours are brought to whole numbers once more.
    expect(most).to.be.lessThan(2);
    expect([...mine.subarray(0, 3)]).to.deep.equal([251, 250, 247]);
    expect([...mine.subarray((35 + 2 * size.width) * 4, (35 + 2 * size.width) * 4 + 3)]).to.deep.equal([
      0, 153, 51,
    ]);
  });

  it('is as right when a smaller one follows a larger, and after its memory was given back', () => {
    const gl = drawn();
    const readBack = new ReadBack();
    const small = { width: 12, height: 9 };
    const copies = [size, small, size].map((of) =>
      onPaper((context) => readBack.copy(gl, context, of, gl.canvas.height - of.height)),
    );
    readBack.shrink();
    const last = onPaper((context) => readBack.copy(gl, context, size, gl.canvas.height - size.height));
    expect([...copies[2]]).to.deep.equal([...copies[0]]);
    expect([...last]).to.deep.equal([...copies[0]]);
    expect([...copies[1]]).not.to.deep.equal([...copies[0]]);
  });

  it('is taken where the tests run, whose Chromium draws without a graphics card', () => {
    expect(isSoftware(drawn())).to.equal(true);
  });

  it('is not asked for where a driver names a graphics card', () => {
    const named = (renderer: string, unmasked?: string): boolean =>
      isSoftware({
        RENDERER: 1,
        getParameter: (name: number) => (name === 1 ? renderer : unmasked),
        getExtension: () => (unmasked === undefined ? null : { UNMASKED_RENDERER_WEBGL: 2 }),
      } as unknown as WebGL2RenderingContext);
    expect(named('WebKit WebGL', 'ANGLE (Vendor, Some GPU Direct3D11)')).to.equal(false);
    expect(named('WebKit WebGL')).to.equal(false);
    expect(named('WebKit WebGL', 'ANGLE (Vulkan (SwiftShader Device))')).to.equal(true);
    expect(named('llvmpipe, or similar')).to.equal(true);
    expect(named('Some GPU, or similar')).to.equal(false);
  });
});
