import { describe, expect, it } from 'vitest';
import { placeInRows, spreadOut } from '../../src/draw/label-rows.js';
import { Rng } from '../../src/signal/random.js';

const bounds = [0, 600] as const;

describe('labels in rows', () => {
  it('stand over their points where nothing is in the way', () => {
    const spans = [100, 300, 500].map((at) => ({ at, width: 60, weight: 1 }));
    expect(placeInRows(spans, bounds, 2, 3).map((place) => [place!.at, place!.row])).toEqual([
      [100, 0],
      [300, 0],
      [500, 0],
    ]);
  });

  it('are spread evenly about a crowd', () => {
    const places = spreadOut(
      [298, 300, 302].map((at) => ({ at, width: 50 })),
      bounds,
      10,
    )!;
    expect(places.map((x) => Math.round(x))).toEqual([240, 300, 360]);
  });

  it('never touch, keep the order of their points, and let leaders pass without crossing', () => {
    const random = new Rng(5);
    let inTwoRows = 0;
    for (let round = 0; round < 300; round += 1) {
      const spans = Array.from({ length: 1 + Math.floor(random.uniform() * 18) }, () => ({
        at: random.uniform() * 640 - 20,
        width: 40 + random.uniform() * 50,
        weight: random.uniform(),
      }));
      const rows = 1 + Math.floor(random.uniform() * 3);
      const places = placeInRows(spans, bounds, rows, 3);
      const standing = spans
        .map((span, k) => ({
          ...span,
          ...places[k],
          wish: Math.min(600, Math.max(0, span.at)),
          placed: places[k] !== null,
        }))
        .filter(({ placed }) => placed)
        .sort((a, b) => a.wish - b.wish);
      expect(standing.length).toBeGreaterThan(0);
      for (let row = 0; row < rows; row += 1) {
        // What a row holds: its own labels, and lanes of the rows above.
        const held = standing
          .filter((label) => label.row! >= row)
          .map((label) => (label.row === row ? [label.at, label.width] : [label.lanes![row], 0]));
        held.forEach(([x, width], k) => {
          expect(x - width / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(x + width / 2).toBeLessThanOrEqual(600 + 1e-6);
          if (k === 0) return;
          const [before, beforeWidth] = held[k - 1];
          expect(x - width / 2).toBeGreaterThanOrEqual(before + beforeWidth / 2 + 3 - 1e-6);
        });
        if (row === 1 && held.length > 0) inTwoRows += 1;
      }
    }
    expect(inTwoRows).toBeGreaterThan(50);
  });

  it('leave out the lightest first', () => {
    const spans = Array.from({ length: 12 }, (_, k) => ({ at: 300, width: 90, weight: k }));
    const places = placeInRows(spans, bounds, 1, 3);
    const kept = places.flatMap((place, k) => (place ? [k] : []));
    expect(kept).toEqual([6, 7, 8, 9, 10, 11]);
  });
});
