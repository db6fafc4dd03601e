/** Scores of fitted resonances against the truth, as the benchmark defines them. */
import { readFileSync } from 'node:fs';
import { munkres } from 'munkres';

/**
 * @typedef {{ f: number, T: number, rho: number, sf: number, sT: number }} True
 *   frequency (Hz), decay time (s), modal energy over noise variance (dB), Cramer-Rao sd of f (Hz) and of ln T
 * @typedef {{ f: number, T: number, sf: number, sT: number, confident: boolean }} Estimate
 */

/** @returns {Map<string, True[]>} by `set snr seed` */
export function readTruth() {
  const text = readFileSync(new URL('./truth.tsv', import.meta.url), 'utf8');
  /** @type {Map<string, True[]>} */
  const sets = new Map();
  /** @type {True[]} */
  let modes = [];
  for (const line of text.trim().split('\n')) {
    const cells = line.split('\t');
    if (cells[0] === 'set') {
      modes = [];
      sets.set(cells.slice(1, 4).join(' '), modes);
    } else {
      const [f, T, rho, sf, sT] = cells.map((cell) => (cell === '-' ? Infinity : Number(cell)));
      modes.push({ f, T, rho, sf, sT });
    }
  }
  return sets;
}

/**
 * Resonances of the engine as estimates: hum and two-slopes make no claim of one mode.
 * @param {readonly { kind: string, frequencyHz: number, frequencySdHz: number, decayTimeSeconds: number | null, decayTimeSdSeconds: number | null }[]} resonances
 * @returns {Estimate[]}
 */
export function estimatesOf(resonances) {
  return resonances
    .filter(({ kind }) => kind !== 'hum')
    .map((r) => ({
      f: r.frequencyHz,
      T: r.decayTimeSeconds ?? Infinity,
      sf: r.frequencySdHz,
      sT: (r.decayTimeSdSeconds ?? 0) / (r.decayTimeSeconds ?? 1),
      confident: r.kind === 'resolved' && r.frequencyHz >= 18 && r.frequencyHz <= 200,
    }));
}

/**
 * @param {Estimate[]} all
 * @param {True[]} truth
 */
export function score(all, truth) {
  const estimates = all.filter(({ f }) => f >= 15 && f <= 205);
  const matchable = truth.filter(({ f, rho }) => f <= 215 && rho > 10);
  const inBand = truth.filter(({ f }) => f >= 17.5 && f <= 200.5);
  const identifiable = inBand.filter(({ sf, sT }) => sf <= 0.167 && sT <= 0.05);
  const cost = matchable.map((m) =>
    estimates.map((e) => Math.min(50, Math.hypot((e.f - m.f) / 0.5, Math.log(e.T / m.T) / 0.15))),
  );
  const hits = new Map();
  const near = new Map();
  const pairs = matchable.length > 0 && estimates.length > 0 ? munkres(cost) : [];
  for (const [a, b] of pairs) {
    const m = matchable[a];
    const e = estimates[b];
    if (Math.abs(e.f - m.f) <= 0.5 && Math.abs(e.T / m.T - 1) <= 0.15) hits.set(m, e);
    if (cost[a][b] < 6) near.set(m, e);
  }
  const hit = new Set(hits.values());
  const modeOf = new Map([...near].map(([m, e]) => [e, m]));
  const confident = estimates.filter((e) => e.confident);
  const found = identifiable.filter((m) => near.has(m));
  return {
    identifiable: identifiable.length,
    recalled: identifiable.filter((m) => hits.has(m)).length,
    strong: truth.filter(({ f, rho }) => f >= 15 && f <= 205 && rho > 10).length,
    reported: estimates.length,
    confident: confident.length,
    wrong: confident.filter((e) => !hit.has(e)).length,
    phantoms: confident.filter((e) => matchable.every((m) => Math.abs(e.f - m.f) > 1)).length,
    zf: found.map((m) => (near.get(m).f - m.f) / m.sf),
    zT: found.map((m) => Math.log(near.get(m).T / m.T) / m.sT),
    errorsT: found.map((m) => Math.log(near.get(m).T / m.T)),
    errorsF: found.map((m) => near.get(m).f - m.f),
    deviationsF: confident.map((e) => (modeOf.has(e) ? (e.f - modeOf.get(e).f) / e.sf : Infinity)),
    deviationsT: confident.map((e) => (modeOf.has(e) ? Math.log(e.T / modeOf.get(e).T) / e.sT : Infinity)),
    coveredF: confident.map((e) => modeOf.has(e) && Math.abs(e.f - modeOf.get(e).f) < 1.96 * e.sf),
    coveredT: confident.map((e) => modeOf.has(e) && Math.abs(Math.log(e.T / modeOf.get(e).T)) < 1.96 * e.sT),
    widthsF: found.filter((m) => near.get(m).confident).map((m) => near.get(m).sf / m.sf),
    widthsT: found.filter((m) => near.get(m).confident).map((m) => near.get(m).sT / m.sT),
  };
}

const sum = (values) => values.reduce((s, v) => s + v, 0);
const rms = (values) => Math.sqrt(sum(values.map((v) => v * v)) / Math.max(1, values.length));
export const median = (values) => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length === 0 ? NaN : sorted.length % 2 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
};
const share = (flags) => (flags.length === 0 ? 1 : sum(flags.map(Number)) / flags.length);

/**
 * Scores of one cell together; z is taken over |z| < 6, and what lies beyond is counted apart.
 * @param {ReturnType<typeof score>[]} scores
 */
export function together(scores) {
  const each = (key) => sum(scores.map((s) => s[key])) / scores.length;
  const all = (key) => scores.flatMap((s) => s[key]);
  const trimmed = (key) => all(key).filter((z) => Math.abs(z) < 6);
  return {
    identifiable: each('identifiable'),
    recall: sum(scores.map((s) => s.recalled)) / Math.max(1, sum(scores.map((s) => s.identifiable))),
    zf: rms(trimmed('zf')),
    zT: rms(trimmed('zT')),
    outliers: all('zf').filter((z, k) => Math.abs(z) >= 6 || Math.abs(all('zT')[k]) >= 6).length,
    judged: all('zf').length,
    rmsF: rms(all('errorsF')),
    rmsT: rms(all('errorsT')),
    biasT: median(all('errorsT')),
    reported: each('reported'),
    strong: each('strong'),
    confident: each('confident'),
    wrong: each('wrong'),
    phantoms: each('phantoms'),
    deviationsF: all('deviationsF'),
    deviationsT: all('deviationsT'),
    coverageF: share(all('coveredF')),
    coverageT: share(all('coveredT')),
    widthF: median(all('widthsF')),
    widthT: median(all('widthsT')),
  };
}
