import type { StudySnapshot } from '../study/types.js';

type Diagnosis = NonNullable<StudySnapshot['diagnosis']>;
export type Ridge = Diagnosis['ridges'][number];
export type Candidate = Ridge['candidates'][number];

export interface RidgeRow {
  readonly index: number;
  readonly ridge: Ridge;
  readonly frequencySdHz: number | null;
  readonly q: number | null;
  readonly qSd: number | null;
  /** `resolved`, `cluster` …; null for a band that no resonance explains. */
  readonly kind: string | null;
  /** Heaviest first. */
  readonly candidates: readonly Candidate[];
  /** The chance that none of them is right, 0 to 1. */
  readonly noneShare: number;
}

/** As the trade writes the order of a mode. */
export const orderText = ([p, q, r]: Candidate['order']): string => `(${p},${q},${r})`;

/** The ridges with what the table needs from their resonances, worst first. */
export function ridgeRows(diagnosis: Diagnosis): RidgeRow[] {
  const rows = diagnosis.ridges.map((ridge, index): RidgeRow => {
    const resonance = ridge.resonance === null ? null : diagnosis.resonances[ridge.resonance];
    const { decayTimeSeconds: decay, decayTimeSdSeconds: sd } = ridge;
    const q = resonance?.q ?? null;
    const candidates = [...ridge.candidates].sort((a, b) => b.weight - a.weight);
    return {
      index,
      ridge,
      frequencySdHz: resonance?.frequencySdHz ?? null,
      q,
      // Q is pi f T / ln 1000^2: its relative uncertainty is that of T, beside which that of f is nothing.
      qSd: q !== null && decay !== null && decay > 0 && sd !== null ? (q * sd) / decay : null,
      kind: resonance?.kind ?? null,
      candidates,
      noneShare: Math.max(0, 1 - candidates.reduce((sum, { weight }) => sum + weight, 0)),
    };
  });
  return rows.sort((a, b) => (b.ridge.excess ?? -1) - (a.ridge.excess ?? -1));
}
