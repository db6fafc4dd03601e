import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { layoutFigure, wrapText } from '../../src/draw/figure.js';
import { viewpoints } from '../../src/draw/orbit.js';
import { crc32, pngWithText, textsOfPng } from '../../src/draw/png.js';
import { surfaceSvg } from '../../src/draw/surface-svg.js';
import { svgPen } from '../../src/draw/svg.js';
import { inventedView, lightTheme } from './fields.js';

const words = {
  title: 'Studio 2: waterfall',
  legend: [
    { sign: 'ridge', text: 'ridge, to where it sinks' },
    { sign: 'noise', text: 'in the noise' },
    { sign: 'fast', text: 'no slower than the window' },
    { sign: 'past-end', text: 'past the end' },
    { sign: 'curtain', text: 'audibility limit' },
    { sign: 'axial', text: 'axial' },
    { sign: 'tangential', text: 'tangential' },
    { sign: 'oblique', text: 'oblique' },
  ],
  caption: ['Sliding Hann window of 0.30 s; resolves ridges 6.7 Hz apart; 50 dB shown.', 'File 0123 …'],
} as const;

describe('a figure', () => {
  it('has its title above the picture, every sign with its word and the caption below', () => {
    const svg = surfaceSvg(
      inventedView(),
      viewpoints.corner,
      lightTheme,
      { cssWidth: 700, cssHeight: 420 },
      words,
    );
    for (const text of [words.title, ...words.legend.map((item) => item.text)])
      expect(svg).toContain(`>${text}<`);
    const height = Number(/<svg[^>]* height="([\d.]+)"/.exec(svg)![1]);
    const shift = Number(/translate\(0 ([\d.]+)\)/.exec(svg)![1]);
    for (const [, y, text] of svg.matchAll(/<text x="[\d.]+" y="([\d.]+)"[^>]*>([^<]*)</g))
      if (words.legend.some((item) => item.text === text)) {
        expect(Number(y)).toBeGreaterThan(420 + shift);
        expect(Number(y)).toBeLessThan(height);
      }
  });

  it('breaks its caption at words, no line wider than the picture', () => {
    const pen = svgPen();
    const style = { colour: '#000', size: 11 };
    const text = words.caption[0];
    for (const width of [120, 200, 640]) {
      const lines = wrapText(pen, text, width, style);
      expect(lines.join(' ')).toBe(text);
      for (const line of lines) expect(pen.measure(line, style)).toBeLessThanOrEqual(width);
    }
    expect(wrapText(pen, 'unbreakable', 5, style)).toEqual(['unbreakable']);
  });

  it('grows with what it says', () => {
    const heights = [900, 320].map(
      (cssWidth) => layoutFigure(svgPen(), lightTheme, { cssWidth, cssHeight: 300 }, words).cssHeight,
    );
    expect(heights[1]).toBeGreaterThan(heights[0] + 40);
  });
});

/** The smallest PNG there is: one grey pixel, by the specification. */
function onePixel(): Uint8Array {
  const parts: Uint8Array[] = [Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)];
  const add = (type: string, data: Uint8Array): void => {
    const chunk = new Uint8Array(data.length + 12);
    new DataView(chunk.buffer).setUint32(0, data.length);
    chunk.set(new TextEncoder().encode(type), 4);
    chunk.set(data, 8);
    new DataView(chunk.buffer).setUint32(data.length + 8, crc32(chunk.subarray(4, data.length + 8)));
    parts.push(chunk);
  };
  add('IHDR', Uint8Array.of(0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0));
  add('IDAT', deflateSync(Uint8Array.of(0, 128)));
  add('IEND', new Uint8Array());
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}

describe('text in a PNG file', () => {
  it('has the check sums of the specification', () => {
    // The IEND chunk of every PNG file ends in AE 42 60 82; CRC-32 of "123456789" is CBF43926 (both common knowledge).
    expect(crc32(new TextEncoder().encode('IEND'))).toBe(0xae426082);
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('comes back, in any script, and leaves the picture as it was', () => {
    const png = onePixel();
    const texts = { Title: 'Wasserfall „Süd“', Origin: JSON.stringify({ hash: 'ab', version: '0.1.0' }) };
    const made = pngWithText(png, texts);
    expect(textsOfPng(made)).toEqual(texts);
    expect([...made.subarray(made.length - (png.length - 33))]).toEqual([...png.subarray(33)]);
    expect(() => pngWithText(Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8), texts)).toThrow(/PNG/);
  });
});
