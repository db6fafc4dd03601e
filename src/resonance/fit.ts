import type { Job, Note } from '../signal/types.js';
import { fitBand, whitenTails, type BandFit, type StretchFit } from './band-fit.js';
import { bandsOf, type Band } from './bands.js';
import { belongingOf } from './belonging.js';
import { borderTwins } from './borders.js';
import { draftOf, type Told } from './classify.js';
import { defaultVolumeCubicMetres } from './density.js';
import { beginAlone, firstLook, type Begun } from './first-answer.js';
import { tailFloor } from './floor.js';
import { humLines } from './hum.js';
import { mergeCandidates } from './order.js';
import { bandwidth, join, ln1000, pick, polesOf, reachHz, type Poles } from './poles.js';
import { decayRangeDb, neededRangeDb } from './range.js';
import { resolvableBandwidths } from './resolution.js';
import { decimateBackwards, type Decimated, type FitRecording } from './reverse-decimation.js';
import { tellResonances } from './slopes.js';
import { medianOf } from './spectrum.js';
import { atRate, withoutStretch } from './stretch.js';
import type { FitParams, Resonance, ResonanceFit } from './types.js';
import { zoomEsprit } from './zoom-esprit.js';
import * as maths from '../signal/maths.js';

/** The fit always covers this band; only what lies within the asked range is told. Hz. */
const bandFromHz = 16;
const bandToHz = 200;
/** Level of a resonance in a recording that was left out. */
const absentDb = -300;
/** Less than this holds no decay. s. */
const shortestSeconds = 0.06;

/** A first answer misses the truth by so many times what its Fisher information says (1.4 to 2.9 on the benchmark). */
const firstSpread = 2;

/** A predicted mode is tried where no start value lies nearer than this (Hz), with an ordinary decay of 0.45 s. */
const predictedApartHz = 1;
const predictedRate = ln1000 / 0.45;

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
    residualWhiteness: 0,
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
    const rate = ln1000 / maths.exp(merged.logDecay[k]);
    return !lines.some((f) => Math.abs(f - merged.frequencyHz[k]) < 0.4 && rate < 2);
  });
  return join(
    pick(merged, free),
    polesOf(
      lines,
      lines.map(() => maths.log(1e4)),
    ),
  );
}

/** Mean whiteness of what is left between two frequencies, each stretch by its width there. */
function whitenessWithin(stretches: readonly StretchFit[], fromHz: number, toHz: number): number {
  let sum = 0;
  let width = 0;
  for (const { ownFromHz, ownToHz, whiteness } of stretches) {
    const share = Math.max(0, Math.min(ownToHz, toHz) - Math.max(ownFromHz, fromHz));
    sum += share * whiteness;
    width += share;
  }
  return width > 0 ? sum / width : 0;
}

function spacingOf(resonances: readonly Resonance[]): number | null {
  const rooms = resonances.filter(({ kind }) => kind !== 'hum' && kind !== 'source');
  if (rooms.length === 0) return null;
  const widths = resolvableBandwidths(medianOf(rooms.map(({ rhoDb }) => rhoDb)));
  const decay = medianOf(rooms.map(({ decayTimeSeconds }) => decayTimeSeconds ?? 0));
  return widths === null ? null : widths * bandwidth(maths.log(decay));
}

const commonRate = (all: readonly Decimated[]): Decimated[] =>
  all.map((one) => atRate(one, all[0].sampleRate));

interface OneRoom {
  /** Indices of the recordings that are fitted. */
  readonly members: readonly number[];
  /** Theirs, on one time scale. */
  readonly decimated: readonly Decimated[];
  readonly bands: readonly Band[];
  /** On those that were left out or stretched; `recording` counts from 1. */
  readonly notes: readonly Note[];
}

/** Leaves out what does not belong with the others, and brings the rest to one time scale. */
function* ofOneRoom(all: readonly Decimated[]): Job<OneRoom> {
  const bands = bandsOf(all);
  const everyone = [...all.keys()];
  if (all.length < 2) return { members: everyone, decimated: all, bands, notes: [] };
  const belonging = yield* belongingOf(bands[0]);
  const members = everyone.filter((c) => belonging[c].belongs);
  const decimated = members.map((c) => withoutStretch(all[c], belonging[c].stretch));
  const notes = belonging.flatMap(({ belongs, stretch }, c): Note[] => {
    if (!belongs) return [{ code: 'other-room', params: { recording: c + 1 } }];
    const percent = 100 * stretch;
    return stretch === 0 ? [] : [{ code: 'aligned', params: { recording: c + 1, percent } }];
  });
  return { members, decimated, bands: notes.length > 0 ? bandsOf(decimated) : bands, notes };
}

/** Nothing of a resonance is told in the recordings that were left out: amplitude 0, level -300 dB. */
function toldOfAll(one: Resonance, members: readonly number[], count: number): Resonance {
  if (members.length === count) return one;
  const spread = (values: readonly number[], absent: number): number[] =>
    Array.from({ length: count }, (_, c) => {
      const k = members.indexOf(c);
      return k < 0 ? absent : values[k];
    });
  const { early } = one;
  return {
    ...one,
    levelsDb: spread(one.levelsDb, absentDb),
    amplitudes: spread(one.amplitudes, 0),
    phasesRadians: spread(one.phasesRadians, 0),
    amplitudeSd: spread(one.amplitudeSd, 0),
    phaseSdRadians: spread(one.phaseSdRadians, 0),
    early: early && {
      ...early,
      amplitudes: spread(early.amplitudes, 0),
      phasesRadians: spread(early.phasesRadians, 0),
    },
  };
}

/** Runs one part of the job and reports its steps between `from` and `to`, ever more slowly as their number is open. */
function* within<T>(job: Job<T>, from: number, to: number): Job<T> {
  let left = 1;
  for (;;) {
    const next = job.next();
    if (next.done) return next.value;
    left *= 0.97;
    yield { ...next.value, fraction: to - (to - from) * left };
  }
}

/** Poles of all stretches as resonances of the asked range. */
function tellAll(
  stretches: readonly StretchFit[],
  decimated: readonly Decimated[],
  humHz: readonly number[],
  { fromHz, toHz, volumeCubicMetres }: FitParams,
): Pick<ResonanceFit, 'resonances' | 'notes' | 'fitFromSeconds' | 'fitToSeconds' | 'resolvableSpacingHz'> {
  const told: Told = {
    decimated,
    volumeCubicMetres: volumeCubicMetres ?? defaultVolumeCubicMetres,
    fitFromSeconds: Math.max(...decimated.map(({ leadSeconds }) => leadSeconds)),
    humHz,
  };
  const kept = borderTwins(stretches);
  const drafts = stretches.flatMap((fit, k) => kept[k].map((pole) => draftOf(fit, pole, told)));
  const asked = drafts.filter(({ frequencyHz: f }) => f >= fromHz && f <= toHz);
  const { resonances, notes } = tellResonances(asked);
  return {
    resonances,
    notes,
    fitFromSeconds: told.fitFromSeconds,
    fitToSeconds:
      told.fitFromSeconds +
      Math.max(...stretches.map(({ whitened: { data } }) => data.count / data.sampleRate)),
    resolvableSpacingHz: spacingOf(resonances),
  };
}

/** The first answer, from what the fit has before its search; of several recordings from the one of the widest range. */
function firstAnswer(
  begun: Begun,
  decimated: readonly Decimated[],
  humHz: readonly number[],
  params: FitParams,
): ResonanceFit {
  const leads = decimated.map(({ leadSeconds }) => leadSeconds);
  const answer = tellAll(firstLook(begun, leads), decimated, humHz, params);
  const resonances = answer.resonances.map((one): Resonance => ({
    ...one,
    frequencySdHz: firstSpread * one.frequencySdHz,
    decayTimeSdSeconds: one.decayTimeSdSeconds && firstSpread * one.decayTimeSdSeconds,
  }));
  return { ...answer, resonances, explainedEnergy: 0, residualWhiteness: 0, noiseSd: noiseSdOf(decimated) };
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
  const all = commonRate(recordings.map(decimateBackwards));
  const { sampleRate } = all[0];
  const fromHz = Math.max(params.fromHz, bandFromHz);
  const toHz = Math.min(params.toHz, bandToHz);
  const seconds = Math.min(...all.map(({ samples }) => samples.length / sampleRate));
  if (all.every(({ samples }) => samples.every((value) => value === 0))) return emptyFit(all, []);
  if (seconds < shortestSeconds) return emptyFit(all, [{ code: 'short', params: { seconds } }]);
  yield { stage: 'floor', fraction: 0.02 };
  const ranges = all.map(({ samples }) => decayRangeDb(samples, sampleRate, fromHz, toHz));
  const rangeDb = Math.max(...ranges);
  if (rangeDb < neededRangeDb) {
    const note: Note = { code: 'no-range', params: { rangeDb, neededDb: neededRangeDb, fromHz, toHz } };
    return emptyFit(all, [note]);
  }
  if (params.draft && all.length > 1) {
    const best = [all[ranges.indexOf(rangeDb)]];
    const draft = firstAnswer(beginAlone(best[0]), best, [], params);
    yield { stage: 'floor', fraction: 0.02, draft };
  }
  const { members, decimated, bands, notes: about } = yield* within(ofOneRoom(all), 0.02, 0.05);
  const humHz: number[] = [];
  for (const { samples } of decimated)
    for (const f of humLines(samples, sampleRate))
      if (!humHz.some((g) => Math.abs(f - g) < 0.2)) humHz.push(f);
  const rumbleToHz = Math.max(...decimated.map((one) => one.rumbleToHz));
  const tails = bands.map((band) => whitenTails(band, humHz));
  const candidates: Candidate[] = [];
  for (const [k, band] of bands.entries()) {
    const { data } = tails[k];
    const job = zoomEsprit(data, band.window.decaySeconds, band.ownFromHz, band.ownToHz);
    candidates.push(...(yield* within(job, 0.05 + 0.05 * k, 0.1 + 0.05 * k)));
  }
  if (params.draft && all.length === 1)
    yield {
      stage: 'fit',
      fraction: 0.2,
      draft: firstAnswer({ bands, tails, candidates }, decimated, humHz, params),
    };
  for (const f of params.predictedHz ?? [])
    if (!candidates.some(([g]) => Math.abs(g - f) < predictedApartHz)) candidates.push([f, predictedRate]);
  const leads = decimated.map(({ leadSeconds }) => leadSeconds);
  const fits: BandFit[] = [];
  for (const [k, band] of bands.entries()) {
    const share = 0.8 / bands.length;
    const job = fitBand(band, tails[k], startOf(band, candidates, humHz), leads);
    fits.push(yield* within(job, 0.2 + share * k, 0.2 + share * (k + 1)));
  }
  const stretches = fits.flatMap((fit) => fit.stretches);
  const energy = fits.reduce((sum, fit) => sum + fit.energy, 0);
  const left = fits.reduce((sum, fit) => sum + fit.left, 0);
  const answer = tellAll(stretches, decimated, humHz, params);
  const notes = [...about, ...answer.notes];
  for (const { kind, frequencyHz } of answer.resonances)
    if (kind === 'hum') notes.push({ code: 'hum', params: { frequencyHz } });
  if (rumbleToHz > params.fromHz) notes.push({ code: 'rumble', params: { toHz: rumbleToHz } });
  return {
    ...answer,
    resonances: answer.resonances.map((one) => toldOfAll(one, members, all.length)),
    explainedEnergy: Math.min(1, Math.max(0, 1 - left / energy)),
    residualWhiteness: whitenessWithin(stretches, fromHz, toHz),
    noiseSd: noiseSdOf(all),
    notes,
  };
}
