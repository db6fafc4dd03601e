/** Colours of the page as numbers, and mixtures of them: greys that belong to whatever theme the page has. */
import { bytesOfOklab, oklabOfBytes, type Triple } from './oklab.js';
import type { DrawTheme } from './types.js';

const known = new Map<string, Triple>();

function readHex(css: string): Triple | null {
  const match = /^#([0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$/i.exec(css);
  if (!match) return null;
  const digits = match[1].length < 6 ? [...match[1]].map((d) => d + d).join('') : match[1];
  return [0, 2, 4].map((at) => parseInt(digits.slice(at, at + 2), 16)) as unknown as Triple;
}

function readRgb(css: string): Triple | null {
  const match = /^rgba?\(\s*([\d.]+)[\s,]+([\d.]+)[\s,]+([\d.]+)/i.exec(css);
  return match ? [Number(match[1]), Number(match[2]), Number(match[3])] : null;
}

/** Any other notation is left to the browser: one pixel, painted and read. */
function paint(css: string): Triple {
  if (typeof OffscreenCanvas === 'undefined') throw new RangeError(`The colour '${css}' is not understood.`);
  const context = new OffscreenCanvas(1, 1).getContext('2d')!;
  context.fillStyle = css;
  context.fillRect(0, 0, 1, 1);
  const [r, g, b] = context.getImageData(0, 0, 1, 1).data;
  return [r, g, b];
}

/** sRGB bytes of a CSS colour; outside a browser only #hex and rgb() (RangeError for others). */
export function cssBytes(css: string): Triple {
  const trimmed = css.trim();
  let bytes = known.get(trimmed);
  if (!bytes) {
    bytes = readHex(trimmed) ?? readRgb(trimmed) ?? paint(trimmed);
    if (known.size > 200) known.clear();
    known.set(trimmed, bytes);
  }
  return bytes;
}

export const cssOf = ([r, g, b]: Triple): string =>
  `rgb(${Math.round(r)}, ${Math.round(g)}, ${Math.round(b)})`;

/** A mixture in OKLab: 0 is the first colour, 1 the second. */
export function mixBytes(first: Triple, second: Triple, part: number): Triple {
  const [a, b] = [oklabOfBytes(...first), oklabOfBytes(...second)];
  return bytesOfOklab([0, 1, 2].map((k) => a[k] + (b[k] - a[k]) * part) as unknown as Triple);
}

export const mixCss = (first: string, second: string, part: number): string =>
  cssOf(mixBytes(cssBytes(first), cssBytes(second), part));

/** The colours of what is not signal, the same in every picture of a field. */
export interface Tones {
  readonly background: Triple;
  /** Below the noise floor: a grey without hue, apart from every colour of the scales. */
  readonly noise: Triple;
  /** Strokes of the hatch over what rests on no data. */
  readonly hatch: Triple;
}

export function tonesOf(theme: DrawTheme): Tones {
  const background = cssBytes(theme.background);
  const text = cssBytes(theme.text);
  return {
    background,
    noise: mixBytes(background, text, theme.dark ? 0.2 : 0.16),
    hatch: mixBytes(background, text, theme.dark ? 0.34 : 0.3),
  };
}
