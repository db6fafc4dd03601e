import { describe, expect, it } from 'vitest';
import { drawEndNames, endNamesMargin, shortened } from '../../src/draw/end-names.js';
import type { Pen, TextStyle } from '../../src/draw/pen.js';
import { estimateWidth, svgPen } from '../../src/draw/svg.js';
import { looks } from '../../src/sheet/looks.js';

interface Written {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly style: TextStyle;
}

/** A pen that keeps what is written. */
function keepingPen(): { pen: Pen; written: Written[] } {
  const written: Written[] = [];
  const text = (words: string, x: number, y: number, style: TextStyle): void =>
    void written.push({ text: words, x, y, style });
  return { pen: { ...svgPen(), text }, written };
}

const name = (text: string, y = 50, main = false) => ({ text, y, main });

/** Names beside a plot of a picture so wide, as the charts set them. */
function set(ends: readonly ReturnType<typeof name>[], cssWidth: number, [top, bottom] = [26, 200]) {
  const { pen, written } = keepingPen();
  const margin = endNamesMargin(pen, looks.light, ends, cssWidth);
  const box = { left: 40, top, bottom, right: cssWidth - margin };
  drawEndNames(pen, looks.light, ends, box, cssWidth);
  return { written, margin };
}

describe('names at the ends of curves', () => {
  it.each([
    ['coordinates', ['3.60, 1.50, 1.20 m', '4.60, 1.20, 1.20 m', 'mean']],
    ['long names', ['Behind the mixing desk, on the left', 'Visitors’ sofa beneath the window', 'mean']],
    ['one long word', ['Zuschauertribünenhinterwandplatz', 'Mittel']],
    ['eight of them', Array.from({ length: 8 }, (_, k) => `A seat with a long name, number ${k + 1}`)],
  ])('never leave a picture of 288 px: %s', (_, names) => {
    const ends = names.map((text, k) => name(text, 40 + 9 * k, k === names.length - 1));
    const { written, margin } = set(ends, 288);
    expect(margin).toBeLessThanOrEqual(0.3 * 288);
    expect(written.length).toBeGreaterThanOrEqual(names.length);
    for (const { text, x, y, style } of written) {
      expect(x + estimateWidth(text, style)).toBeLessThanOrEqual(288);
      expect(y).toBeGreaterThan(26);
      expect(y).toBeLessThan(200);
    }
    // None over another.
    const heights = written.map(({ y }) => y).sort((a, b) => a - b);
    heights.slice(1).forEach((y, k) => expect(y - heights[k]).toBeGreaterThanOrEqual(14 - 1e-9));
  });

  it('are set in lines where they are too wide, every word of them', () => {
    const { written } = set([name('3.60, 1.50, 1.20 m')], 288);
    expect(written.map(({ text }) => text)).toEqual(['3.60, 1.50,', '1.20 m']);
  });

  it('stand in one line, and whole, where there is room', () => {
    const { written } = set([name('3.60, 1.50, 1.20 m'), name('mean', 90, true)], 900);
    expect(written.map(({ text }) => text)).toEqual(['3.60, 1.50, 1.20 m', 'mean']);
    expect(written[1].style).toMatchObject({ weight: 600, colour: looks.light.accent });
  });

  it('say by an ellipsis that something is left out', () => {
    const style = { colour: '', size: 11 };
    expect(shortened(svgPen(), 'Zuschauertribünenhinterwandplatz', 80, style)).toMatch(/^Zuschauer\p{L}*…$/u);
    expect(shortened(svgPen(), 'desk', 80, style)).toBe('desk');
    expect(shortened(svgPen(), 'desk', 0, style)).toBe('…');
  });
});
