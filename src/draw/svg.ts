/** A pen that writes SVG, and the document around it. The same in a page and in Node. */
import { MIDDLE, type LineStyle, type Pen, type TextStyle } from './pen.js';
import type { Box } from './picture.js';
import { encodePng, pngAddress } from './png.js';

/** What XML 1.0 lets no document hold: most control characters, halves of pairs, and two that are none. */
// eslint-disable-next-line no-control-regex
const notXml = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

export const escapeXml = (text: string): string =>
  text
    .replace(notXml, '')
    .replace(
      /[&<>"']/g,
      (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' })[sign]!,
    );

const number = (value: number): string => String(Math.round(value * 100) / 100);
/** Along paths a tenth of a pixel is enough, and keeps the file small. */
const coordinate = (value: number): string => String(Math.round(value * 10) / 10);

/**
 * Width of a letter in ems, by kind, for sans faces of common width: a document knows no font, and a label measured a
 * little too wide only stands a little apart.
 */
function emOf(letter: string): number {
  if (/[.,:;'|il!ı·]/.test(letter)) return 0.31;
  if (/[\sfrtj()[\]/-]/.test(letter)) return 0.37;
  if (/[mwMW@%…—]/.test(letter)) return 0.92;
  if (/\d/.test(letter)) return 0.6;
  if (/\p{Lu}|−|\+|=|±/u.test(letter)) return 0.72;
  // Ideographs and other wide scripts fill the em.
  return letter.codePointAt(0)! > 0x2e80 ? 1 : 0.59;
}

export const estimateWidth = (text: string, style: Pick<TextStyle, 'size' | 'weight'>): number =>
  [...text].reduce((sum, letter) => sum + emOf(letter), 0) * style.size * (style.weight === 600 ? 1.07 : 1);

export interface SvgPen extends Pen {
  /** What has been drawn, as SVG elements. */
  content(): string;
}

const anchors = { start: 'start', middle: 'middle', end: 'end' } as const;

/** `idPrefix` keeps the ids of clips apart where several documents stand in one page. */
export function svgPen(idPrefix = 'clip'): SvgPen {
  const parts: string[] = [];
  let clips = 0;
  const strokeOf = (style: LineStyle): string =>
    [
      `stroke="${escapeXml(style.colour)}" stroke-width="${number(style.width)}"`,
      style.opacity !== undefined && style.opacity < 1 ? ` stroke-opacity="${number(style.opacity)}"` : '',
      style.dash ? ` stroke-dasharray="${style.dash.map(number).join(' ')}"` : '',
    ].join('');
  const pathOf = (points: ArrayLike<number>): string => {
    let path = '';
    let [px, py] = ['', ''];
    for (let k = 0; k + 1 < points.length; k += 2) {
      const [x, y] = [coordinate(points[k]), coordinate(points[k + 1])];
      if (x === px && y === py) continue;
      path += `${k === 0 ? 'M' : 'L'}${x} ${y}`;
      [px, py] = [x, y];
    }
    return path;
  };
  return {
    line(points, style) {
      parts.push(`<path d="${pathOf(points)}" fill="none" stroke-linejoin="round" ${strokeOf(style)}/>`);
    },
    area(points, fill, opacity = 1) {
      parts.push(
        `<path d="${pathOf(points)}Z" fill="${escapeXml(fill)}"${opacity < 1 ? ` fill-opacity="${number(opacity)}"` : ''}/>`,
      );
    },
    circle(x, y, radius, fill, edge) {
      parts.push(
        `<circle cx="${number(x)}" cy="${number(y)}" r="${number(radius)}" fill="${fill ? escapeXml(fill) : 'none'}"${edge ? ` ${strokeOf(edge)}` : ''}/>`,
      );
    },
    text(text, x, y, style) {
      const base = y + (style.vertical === 'middle' ? MIDDLE * style.size : 0);
      const halo = style.halo
        ? ` stroke="${escapeXml(style.halo)}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"`
        : '';
      parts.push(
        `<text x="${number(x)}" y="${number(base)}" font-size="${number(style.size)}"` +
          `${style.weight === 600 ? ' font-weight="600"' : ''} text-anchor="${anchors[style.align ?? 'start']}"` +
          ` fill="${escapeXml(style.colour)}"${halo}>${escapeXml(text)}</text>`,
      );
    },
    image(pixels, { left, top, right, bottom }) {
      parts.push(
        `<image x="${number(left)}" y="${number(top)}" width="${number(right - left)}" height="${number(bottom - top)}" preserveAspectRatio="none" href="${pngAddress(encodePng(pixels))}"/>`,
      );
    },
    measure: estimateWidth,
    clipped(box: Box, draw) {
      clips += 1;
      const id = `${idPrefix}-${clips}`;
      parts.push(
        `<clipPath id="${id}"><rect x="${number(box.left)}" y="${number(box.top)}" width="${number(box.right - box.left)}" height="${number(box.bottom - box.top)}"/></clipPath><g clip-path="url(#${id})">`,
      );
      draw();
      parts.push('</g>');
    },
    content: () => parts.join('\n'),
  };
}

export interface DocumentWords {
  readonly title: string;
  readonly description?: string;
  /** What made the picture: hash, parameters, version. Written into the document as JSON. */
  readonly origin?: Readonly<Record<string, unknown>>;
}

/** The document around drawn elements; drawn left to right whatever the page's direction. */
export function svgDocument(
  content: string,
  size: { readonly cssWidth: number; readonly cssHeight: number },
  look: { readonly background: string; readonly fontFamily: string },
  words: DocumentWords,
): string {
  const [width, height] = [number(size.cssWidth), number(size.cssHeight)];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" direction="ltr" font-family="${escapeXml(look.fontFamily)}">`,
    `<title>${escapeXml(words.title)}</title>`,
    words.description ? `<desc>${escapeXml(words.description)}</desc>` : '',
    words.origin ? `<metadata>${escapeXml(JSON.stringify(words.origin))}</metadata>` : '',
    `<rect width="${width}" height="${height}" fill="${escapeXml(look.background)}"/>`,
    content,
    '</svg>',
  ]
    .filter(Boolean)
    .join('\n');
}
