/**
 * The few strokes pictures are made of. A canvas and an SVG document both offer them, so that a drawing on the page and
 * its export are one piece of code.
 */
import type { Box } from './picture.js';

export interface LineStyle {
  readonly colour: string;
  readonly width: number;
  readonly opacity?: number;
  readonly dash?: readonly number[];
}

export interface TextStyle {
  readonly colour: string;
  /** Pixels. */
  readonly size: number;
  readonly weight?: 400 | 600;
  readonly align?: 'start' | 'middle' | 'end';
  /** `y` is the baseline, or the middle of the small letters and figures. */
  readonly vertical?: 'baseline' | 'middle';
  /** Painted behind the letters, as wide as `haloWidth`, so that they stand clear of lines. */
  readonly halo?: string;
}

/** Red, green, blue and alpha of each pixel, row by row from the top. */
export interface Pixels {
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
}

/** Points are flat: x0, y0, x1, y1 … in CSS pixels. */
export interface Pen {
  line(points: ArrayLike<number>, style: LineStyle): void;
  area(points: ArrayLike<number>, fill: string, opacity?: number): void;
  circle(x: number, y: number, radius: number, fill: string | null, edge: LineStyle | null): void;
  text(text: string, x: number, y: number, style: TextStyle): void;
  measure(text: string, style: TextStyle): number;
  /** The pixels across a box, none blurred into another. */
  image(pixels: Pixels, box: Box): void;
  clipped(box: Box, draw: () => void): void;
}

/** What signs are made of. */
export type Strokes = Pick<Pen, 'line' | 'area' | 'circle'>;

/** Pixels as canvases: they can be drawn where a transform says, and again at no cost. */
const pictures = new WeakMap<Pixels, HTMLCanvasElement>();

function pictureOf(pixels: Pixels): HTMLCanvasElement {
  const known = pictures.get(pixels);
  if (known) return known;
  const { data, width, height } = pixels;
  const canvas = Object.assign(document.createElement('canvas'), { width, height });
  canvas.getContext('2d')?.putImageData(new ImageData(data, width, height), 0, 0);
  pictures.set(pixels, canvas);
  return canvas;
}

const HALO_WIDTH = 4;

/** How far below the middle of figures their baseline lies, in ems: half the height of figures of common sans faces. */
export const MIDDLE = 0.36;

export const fontOf = (style: TextStyle, family: string): string =>
  `${style.weight ?? 400} ${style.size}px ${family}`;

/** A pen on a canvas whose transform already maps CSS pixels to device pixels. */
export function canvasPen(context: CanvasRenderingContext2D, fontFamily: string): Pen {
  const trace = (points: ArrayLike<number>): void => {
    context.beginPath();
    for (let k = 0; k + 1 < points.length; k += 2)
      if (k === 0) context.moveTo(points[0], points[1]);
      else context.lineTo(points[k], points[k + 1]);
  };
  const ink = (style: LineStyle): void => {
    context.strokeStyle = style.colour;
    context.lineWidth = style.width;
    context.globalAlpha = style.opacity ?? 1;
    context.setLineDash(style.dash ? [...style.dash] : []);
    context.lineJoin = 'round';
    context.lineCap = 'butt';
    context.stroke();
    context.globalAlpha = 1;
  };
  return {
    line(points, style) {
      trace(points);
      ink(style);
    },
    area(points, fill, opacity = 1) {
      trace(points);
      context.closePath();
      context.globalAlpha = opacity;
      context.fillStyle = fill;
      context.fill();
      context.globalAlpha = 1;
    },
    circle(x, y, radius, fill, edge) {
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      if (fill) {
        context.fillStyle = fill;
        context.fill();
      }
      if (edge) ink(edge);
    },
    text(text, x, y, style) {
      context.font = fontOf(style, fontFamily);
      context.textBaseline = 'alphabetic';
      context.direction = 'ltr';
      context.textAlign = style.align === 'middle' ? 'center' : style.align === 'end' ? 'right' : 'left';
      const base = y + (style.vertical === 'middle' ? MIDDLE * style.size : 0);
      if (style.halo) {
        context.strokeStyle = style.halo;
        context.lineWidth = HALO_WIDTH;
        context.lineJoin = 'round';
        context.setLineDash([]);
        context.strokeText(text, x, base);
      }
      context.fillStyle = style.colour;
      context.fillText(text, x, base);
    },
    measure(text, style) {
      context.font = fontOf(style, fontFamily);
      return context.measureText(text).width;
    },
    image(pixels, { left, top, right, bottom }) {
      context.imageSmoothingEnabled = false;
      context.drawImage(pictureOf(pixels), left, top, right - left, bottom - top);
    },
    clipped(box, draw) {
      context.save();
      context.beginPath();
      context.rect(box.left, box.top, box.right - box.left, box.bottom - box.top);
      context.clip();
      draw();
      context.restore();
    },
  };
}
