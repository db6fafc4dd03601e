/**
 * A picture taken from a context that is computed in software: its pixels lie in memory already, and a browser that is
 * asked to draw the context's canvas carries them there and back four times over.
 */

/** Names of drivers without a graphics card, by what browsers call them. */
const software = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** Whether a context is computed in software. Chromium and WebKit tell it by an extension alone, Firefox without one. */
export function isSoftware(gl: WebGL2RenderingContext): boolean {
  const name = String(gl.getParameter(gl.RENDERER));
  const more = /webkit/i.test(name) && gl.getExtension('WEBGL_debug_renderer_info');
  return software.test(more ? String(gl.getParameter(more.UNMASKED_RENDERER_WEBGL)) : name);
}

/** ImageData is not premultiplied, what a context draws is: brought to it where it makes a difference. */
function unmultiply(bytes: Uint8ClampedArray, count: number): void {
  const words = new Uint32Array(bytes.buffer, 0, count);
  for (let k = 0; k < count; k += 1) {
    // Little-endian, as every machine with a browser: alpha comes last.
    const alpha = words[k] >>> 24;
    if (alpha === 0 || alpha === 255) continue;
    for (let at = 4 * k; at < 4 * k + 3; at += 1) bytes[at] = (bytes[at] * 255) / alpha;
  }
}

export class ReadBack {
  private bytes = new Uint8ClampedArray(0);
  private context: CanvasRenderingContext2D | null = null;

  /** The lower left pixels of the context, upright onto all of a 2D canvas. */
  copy(
    gl: WebGL2RenderingContext,
    target: CanvasRenderingContext2D,
    { width, height }: { readonly width: number; readonly height: number },
    bottom: number,
  ): void {
    const length = width * height * 4;
    if (this.bytes.length < length) this.bytes = new Uint8ClampedArray(length);
    const { bytes } = this;
    gl.readPixels(0, bottom, width, height, gl.RGBA, gl.UNSIGNED_BYTE, bytes);
    unmultiply(bytes, width * height);
    this.context ??= document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
    const { canvas } = this.context;
    if (canvas.width < width) canvas.width = width;
    if (canvas.height < height) canvas.height = height;
    this.context.putImageData(new ImageData(bytes.subarray(0, length), width, height), 0, 0);
    // Rows come from below.
    target.translate(0, target.canvas.height);
    target.scale(target.canvas.width / width, -target.canvas.height / height);
    target.drawImage(canvas, 0, 0, width, height, 0, 0, width, height);
  }

  /** Gives its memory back. */
  shrink(): void {
    this.bytes = new Uint8ClampedArray(0);
    this.context = null;
  }
}
