import type { Job, Note } from '../signal/types.js';
import { fitBand, whitenTails, type BandFit } from './band-fit.js';
import { bandsOf, type Band } from './bands.js';
import { borderTwins } from './borders.js';
import { draftOf, type Told } from './classify.js';
import { defaultVolumeCubicMetres } from './density.js';
import { tailFloor } from './floor.js';
import { humLines } from './hum.js';
import { mergeCandidates } from './order.js';
import { bandwidth, join, ln1000, pick, polesOf, reachHz, type Poles } from './poles.js';
import { decayRangeDb, neededRangeDb } from './range.js';
import { resolvableBandwidths } from './resolution.js';
import { decimateBackwards, type Decimated, type FitRecording } from './reverse-decimation.js';
import { tellResonances } from './slopes.js';
import { medianOf } from './spectrum.js';
import type { FitParams, Resonance, ResonanceFit } from './types.js';
import { zoomEsprit } from './zoom-esprit.js';

/** The fit always covers this band; only what lies within the asked range is told. Hz. */
const bandFromHz = 16;
const bandToHz = 200;
/** Less than this holds no decay. s. */
const shortestSeconds = 0.06;

type Candidate = readonly [frequencyHz: number, decayRate: number];

const noiseSdOf = (decimated: readonly Decimated[]): number[] =>
  decimated.map(({ samples, sampleRate, peak, step }) => {
    return peak * Math.sqrt(tailFloor(samples, sampleRate) * step);
  });

function emptyFit(decimated: readonly Decimated[], notes: readonly Note[]): ResonanceFit {
  const from = Math.max(...decimated.map(({ leadSeconds }) => leadSeconds));
  return {
    resonances: [],
    fitFromSeconds: from,
    fitToSeconds: from + Math.min(...decimated.map(({ samples, sampleRate }) => samples.length / sampleRate)),
    explainedEnergy: 0,
    noiseSd: noiseSdOf(decimated),
    resolvableSpacingHz: null,
    notes,
  };
}

/** Start values of one band with the hum lines as undamped poles in place of what lies on them. */
function startOf(band: Band, candidates: readonly Candidate[], humHz: readonly number[]): Poles {
  const hears = (f: number) => Math.abs(f - band.centreHz) < reachHz;
  const merged = mergeCandidates(candidates.filter(([f]) => hears(f)));
  const lines = humHz.filter(hears);
  const free = [...merged.frequencyHz.keys()].filter((k) => {
    const rate = ln1000 / Math.exp(merged.logDecay[k]);
    return !lines.some((f) => Math.abs(f - merged.frequencyHz[k]) < 0.4 && rate < 2);
  });
  return join(
    pick(merged, free),
    polesOf(
      lines,
      lines.map(() => Math.log(1e4)),
    ),
  );
}

function spacingOf(resonances: readonly Resonance[]): number | null {
  const rooms = resonances.filter(({ kind }) => kind !== 'hum' && kind !== 'source');
  if (rooms.length === 0) return null;
  const widths = resolvableBandwidths(medianOf(rooms.map(({ rhoDb }) => rhoDb)));
  const decay = medianOf(rooms.map(({ decayTimeSeconds }) => decayTimeSeconds ?? 0));
  return widths === null ? null : widths * bandwidth(Math.log(decay));
}

/** Runs one part of the job and reports its steps between `from` and `to`, ever more slowly as their number is open. */
function* within<T>(job: Job<T>, from: number, to: number): Job<T> {
  let left = 1;
  for (;;) {
    const next = job.next();
    if (next.done) return next.value;
    left *= 0.97;
    yield { stage: next.value.stage, fraction: to - (to - from) * left };
  }
}

/**
 * Fits decaying sines to the bass of one recording, or of several of one room with poles in common and amplitudes apart.
 * Recordings must hold finite samples. Where none stands far enough above its own noise the fit is refused: no
 * resonances, and the note `no-range`.
 *
 * @param recordings At least one; peak level, rate (1 to 384 kHz) and length of each are its own.
 */
export function* fitResonances(recordings: readonly FitRecording[], params: FitParams): Job<ResonanceFit> {
  yield { stage: 'decimate', fraction: 0 };
  const decimated = recordings.map(decimateBackwards);
  const { sampleRate } = decimated[0];
  const fromHz = Math.max(params.fromHz, bandFromHz);
  const toHz = Math.min(params.toHz, bandToHz);
  const seconds = Math.min(...decimated.map(({ samples }) => samples.length / sampleRate));
  if (decimated.every(({ samples }) => samples.every((value) => value === 0))) return emptyFit(decimated, []);
  if (seconds < shortestSeconds) return emptyFit(decimated, [{ code: 'short', params: { seconds } }]);
  yield { stage: 'floor', fraction: 0.05 };
  const rangeDb = Math.max(
    ...decimated.map(({ samples }) => decayRangeDb(samples, sampleRate, fromHz, toHz)),
  );
  if (rangeDb < neededRangeDb) {
    const note: Note = { code: 'no-range', params: { rangeDb, neededDb: neededRangeDb, fromHz, toHz } };
    return emptyFit(decimated, [note]);
  }
  const humHz: number[] = [];
  for (const { samples } of decimated)
    for (const f of humLines(samples, sampleRate))
      if (!humHz.some((g) => Math.abs(f - g) < 0.2)) humHz.push(f);
  const rumbleToHz = Math.max(...decimated.map((one) => one.rumbleToHz));
  const bands = bandsOf(decimated);
  const tails = bands.map((band) => whitenTails(band, humHz));
  const candidates: Candidate[] = [];
  for (const [k, band] of bands.entries()) {
    const { data } = tails[k];
    const job = zoomEsprit(data, band.window.decaySeconds, band.ownFromHz, band.ownToHz);
    candidates.push(...(yield* within(job, 0.05 + 0.05 * k, 0.1 + 0.05 * k)));
  }
  const leads = decimated.map(({ leadSeconds }) => leadSeconds);
  const fits: BandFit[] = [];
  for (const [k, band] of bands.entries()) {
    const share = 0.8 / bands.length;
    const job = fitBand(band, tails[k], startOf(band, candidates, humHz), leads);
    fits.push(yield* within(job, 0.2 + share * k, 0.2 + share * (k + 1)));
  }
  const told: Told = {
    decimated,
    volumeCubicMetres: params.volumeCubicMetres ?? defaultVolumeCubicMetres,
    fitFromSeconds: Math.max(...leads),
    humHz,
  };
  const stretches = fits.flatMap((fit) => fit.stretches);
  const kept = borderTwins(stretches);
  const drafts = stretches.flatMap((fit, k) => kept[k].map((pole) => draftOf(fit, pole, told)));
  const asked = drafts.filter(({ frequencyHz: f }) => f >= params.fromHz && f <= params.toHz);
  const { resonances, notes } = tellResonances(asked);
  for (const { kind, frequencyHz } of resonances)
    if (kind === 'hum') notes.push({ code: 'hum', params: { frequencyHz } });
  if (rumbleToHz > params.fromHz) notes.push({ code: 'rumble', params: { toHz: rumbleToHz } });
  const energy = fits.reduce((sum, fit) => sum + fit.energy, 0);
  const left = fits.reduce((sum, fit) => sum + fit.left, 0);
  return {
    resonances,
    fitFromSeconds: told.fitFromSeconds,
    fitToSeconds:
      told.fitFromSeconds +
      Math.max(...stretches.map(({ whitened: { data } }) => data.count / data.sampleRate)),
    explainedEnergy: Math.min(1, Math.max(0, 1 - left / energy)),
    noiseSd: noiseSdOf(decimated),
    resolvableSpacingHz: spacingOf(resonances),
    notes,
  };
}
