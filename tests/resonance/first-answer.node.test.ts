import { describe, expect, it } from 'vitest';
import { fitResonances, type ResonanceFit } from '../../src/resonance/index.js';
import { makeCell, paramsOf, recordingsOf } from '../benchmark/cells.mjs';
import { estimatesOf, readTruth, score, together } from '../benchmark/score.mjs';

const truth = readTruth();

/** The first answer, how many steps came before it and after it, and the whole answer. */
function fitOf(kind: string, seed: number, asked = true) {
  const job = fitResonances(recordingsOf(makeCell(kind, seed, 55)), { ...paramsOf(kind), draft: asked });
  let draft: ResonanceFit | null = null;
  const steps = { before: 0, after: 0 };
  for (;;) {
    const next = job.next();
    if (next.done) return { draft: draft, steps, fit: next.value };
    if (next.value.draft !== undefined) {
      expect(draft, 'there is one first answer').toBeNull();
      draft = next.value.draft as ResonanceFit;
    }
    steps[draft ? 'after' : 'before']++;
  }
}

const scoreOf = (kind: string, seed: number, { resonances }: ResonanceFit) =>
  score(estimatesOf(resonances), truth.get(`${kind} 55 ${seed}`) ?? []);

describe('the first answer of a fit', () => {
  it.each(['S', 'R'])(
    'finds nine in ten identifiable modes of set %s, within twice the errors of the whole fit and more',
    (kind) => {
      const all = [1, 2, 3, 4].map((seed) => scoreOf(kind, seed, fitOf(kind, seed).draft!));
      const { recall, zf, zT, wrong, identifiable } = together(all);
      expect(identifiable).toBeGreaterThan(2);
      expect(recall).toBeGreaterThanOrEqual(0.9);
      expect(Math.max(zf, zT)).toBeLessThan(3);
      expect(wrong).toBeLessThanOrEqual(0.5);
    },
  );

  it('comes before most of the work', () => {
    const { steps } = fitOf('R', 1);
    expect(steps.after).toBeGreaterThan(3 * steps.before);
  });

  it('of several recordings is that of the one of the widest range, and comes before they are compared', () => {
    const { draft, steps, fit } = fitOf('R5', 1);
    expect(draft!.resonances.length).toBeGreaterThan(5);
    expect(draft!.resonances[0].levelsDb).toHaveLength(1);
    expect(steps.before).toBeLessThanOrEqual(3);
    expect(fit.resonances[0].levelsDb).toHaveLength(5);
  });

  it('changes nothing of the whole answer, and is not made where nobody asks for it', () => {
    const asked = fitOf('S', 2);
    const plain = fitOf('S', 2, false);
    expect(plain.draft).toBeNull();
    expect(plain.fit).toEqual(asked.fit);
  });
});
