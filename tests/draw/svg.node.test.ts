import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { layoutFlags } from '../../src/draw/flags.js';
import { lettersWithoutOverlap, labelBox } from '../../src/draw/letters.js';
import { viewpoints } from '../../src/draw/orbit.js';
import { svgPen } from '../../src/draw/svg.js';
import { surfaceSvg } from '../../src/draw/surface-svg.js';
import { Rng } from '../../src/signal/random.js';
import { darkTheme, inventedView, lightTheme } from './fields.js';

const size = { cssWidth: 900, cssHeight: 560 };

describe('the vector drawing of the surface', () => {
  it('carries title, caption, axes, ridges and what made it, and is well formed', () => {
    const svg = surfaceSvg(inventedView(), viewpoints.corner, lightTheme, size, {
      title: 'Studio A & "B"',
      description: 'Decay at the seat <main>',
      caption: ['Sliding window 0.3 s', 'Level relative to the loudest point'],
      origin: { hash: 'abc', version: '0.1.0' },
    });
    expect(svg).toContain('<title>Studio A &amp; &quot;B&quot;</title>');
    expect(svg).toContain('&lt;main&gt;');
    expect(svg).toContain('Sliding window 0.3 s');
    expect(svg).toContain('{&quot;hash&quot;:&quot;abc&quot;');
    for (const word of ['Frequency, Hz', 'Time, s', 'Level, dB', '48.2 Hz', '24.3 Hz'])
      expect(svg).toContain(`>${word}<`);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    const opened = svg.match(/<(svg|g|text|title|desc|metadata|clipPath)[\s>]/g)!.length;
    const closed = svg.match(/<\/(svg|g|text|title|desc|metadata|clipPath)>/g)!.length;
    expect(opened).toBe(closed);
    expect(svg.length).toBeLessThan(600_000);
  });

  it('is the same document for the same input, from every viewpoint, light and dark', () => {
    for (const orbit of Object.values(viewpoints))
      for (const theme of [lightTheme, darkTheme]) {
        const words = { title: 'x' };
        const svg = surfaceSvg(inventedView({ cursor: { column: 60, row: 0.3 } }), orbit, theme, size, words);
        expect(svg).toBe(
          surfaceSvg(inventedView({ cursor: { column: 60, row: 0.3 } }), orbit, theme, size, words),
        );
        expect(svg).not.toMatch(/NaN|undefined/);
        expect(svg.match(/<path/g)!.length).toBeGreaterThan(200);
      }
  });
});

describe('labels on a picture', () => {
  it('never lie over each other nor leave the canvas, whatever is asked', () => {
    const random = new Rng(21);
    const pen = svgPen();
    for (let round = 0; round < 60; round += 1) {
      const labels = Array.from({ length: 30 }, (_, k) => ({
        text: `${(random.uniform() * 200).toFixed(1)} Hz`,
        at: { x: random.uniform() * 400 - 20, y: random.uniform() * 200 - 10 },
        style: { colour: '#000', size: 11, align: (['start', 'middle', 'end'] as const)[k % 3] },
        weight: random.uniform(),
      }));
      const boxes = lettersWithoutOverlap(pen, labels, { cssWidth: 380, cssHeight: 180, pixelRatio: 1 }).map(
        (label) => labelBox(pen, label),
      );
      expect(boxes.length).toBeGreaterThan(5);
      boxes.forEach((a, k) => {
        expect(a.left >= 0 && a.right <= 380 && a.top >= 0 && a.bottom <= 180).toBe(true);
        for (const b of boxes.slice(0, k))
          expect(a.left >= b.right || a.right <= b.left || a.top >= b.bottom || a.bottom <= b.top).toBe(true);
      });
    }
  });

  it('of selected ridges win a place over all others', () => {
    const flags = Array.from({ length: 20 }, (_, k) => ({
      position: 50 + k,
      label: `${50 + k}.0 Hz`,
      until: 1,
      selected: k === 13,
      weight: k === 13 ? 0 : 1,
    }));
    const labels = layoutFlags(
      svgPen(),
      lightTheme,
      flags,
      flags.map((_, k) => 100 + k * 4),
      [0, 200],
      1,
    );
    expect(labels.placed.some(({ flag }) => flag === 13)).toBe(true);
  });
});

describe('every module of draw', () => {
  it('can be imported where there is no page', async () => {
    expect(typeof document).toBe('undefined');
    const files = readdirSync(new URL('../../src/draw/', import.meta.url)).filter((name) =>
      name.endsWith('.ts'),
    );
    expect(files.length).toBeGreaterThan(15);
    for (const name of files.map((file) => file.slice(0, -3))) await import(`../../src/draw/${name}.ts`);
    const { hasWebGl } = await import('../../src/draw/webgl.js');
    expect(hasWebGl()).toBe(false);
  });
});
