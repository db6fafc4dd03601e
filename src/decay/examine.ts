import { within } from '../signal/job.js';
import type { Job, Note } from '../signal/types.js';
import { bandDecays, type BandDecay } from './band-decay.js';
import { bandEnvelopes, rangesOf, type BandEnvelopes } from './band-range.js';
import { boundaryDip } from './boundary.js';
import { clipping, cutOff, endsEarly, lateEnergy, stillFalling } from './checks.js';
import type { GridSource } from './grid.js';
import { fallsBetweenSteps } from './quantised.js';
import { recordingTrace, type RecordingTrace } from './trace.js';
import type { BandRange } from './types.js';

/** What samples alone say of a recording, before anything is fitted: whether it is fit to be read. */
export interface Examination {
  readonly trace: RecordingTrace;
  /** Usable decay range per third-octave. */
  readonly ranges: readonly BandRange[];
  /** Decay times and usable length per third-octave, with what refuses them; the same bands. */
  readonly decays: readonly BandDecay[];
  /** From the onset to where the last third-octave meets its noise, or the end of the file. */
  readonly usableSeconds: number;
  /** Those that samples alone give. */
  readonly notes: readonly Note[];
}

export interface ExamineParams {
  readonly fromHz: number;
  readonly toHz: number;
}

/** A band with less range than this is read with doubt (35 dB for T20 after ISO 3382, value from memory). */
const doubtfulRangeDb = 35;
/** The lowest third-octave that is read: below it no bass source plays enough to be judged. */
const lowestBandHz = 25;
/** The trace and single dips are of the range of modes. */
const highestModeHz = 200;

/**
 * Looks through one recording for what misleads: `clipped`, `quantised`, `truncated`, `short`, `late-energy`, `noisy`, `boundary`,
 * `two-slopes`. What rests on fitted resonances (`no-range`, `hum`, `rate-suspect`, two slopes of one resonance) is told
 * where these are known.
 *
 * @param params Of the third-octaves, 20 to 250 Hz unless said; the trace ends at 200 Hz.
 */
export function* examine(source: GridSource, params: Partial<ExamineParams> = {}): Job<Examination> {
  const { fromHz = 20, toHz = 250 } = params;
  const trace = recordingTrace(source, fromHz, Math.min(toHz, highestModeHz));
  yield { stage: 'bands', fraction: 0.15 };
  const lowestHz = Math.max(fromHz, lowestBandHz);
  const envelopes = bandEnvelopes(source, lowestHz, toHz);
  const ranges = rangesOf(envelopes);
  const notes: Note[] = [];
  const clipped = clipping(source);
  if (clipped) notes.push({ code: 'clipped', params: { ...clipped } });
  const coarse = fallsBetweenSteps(source);
  if (coarse) notes.push({ code: 'quantised', params: { ...coarse } });
  const cut = coarse ? null : cutOff(source);
  if (cut) notes.push({ code: 'truncated', params: { ...cut } });
  const short = cut ? null : endsEarly(source, envelopes);
  if (short) notes.push({ code: 'short', params: { seconds: short.seconds, fallDb: short.fallDb } });
  yield { stage: 'bands', fraction: 0.3 };
  const late = lateEnergy(source);
  if (late) notes.push({ code: 'late-energy', params: { ...late } });
  // Of a decay that the file cuts while it is loud, no band has reached its noise.
  if (!short?.unfinished) notes.push(...noisyBands(ranges, short ? envelopes : null));
  const dip = boundaryDip(source, fromHz, Math.min(toHz, highestModeHz));
  if (dip) notes.push(dip);
  yield { stage: 'bands', fraction: 0.5 };
  const decays = yield* within(bandDecays(source, { fromHz: lowestHz, toHz }), 0.5, 1);
  notes.push(...bentBands(decays));
  const usableSeconds = decays.reduce((most, band) => Math.max(most, band.usableSeconds), 0);
  return { trace, ranges, decays, usableSeconds, notes };
}

/** Runs of neighbouring bands that share a property. */
function runsOf<T>(bands: readonly T[], has: (band: T) => boolean): T[][] {
  const runs: T[][] = [];
  let open = false;
  for (const band of bands) {
    if (!has(band)) open = false;
    else if (open) runs[runs.length - 1].push(band);
    else {
      runs.push([band]);
      open = true;
    }
  }
  return runs;
}

/**
 * One `noisy` note per run of neighbouring bands with too little range; `rangeDb` is that of the worst.
 *
 * @param cut Of a recording that ends early: a band that is still falling there has no noise, but a lost end.
 */
function noisyBands(ranges: readonly BandRange[], cut: BandEnvelopes | null): Note[] {
  const list = ranges.map((range, i) => ({
    ...range,
    noisy:
      range.rangeDb < doubtfulRangeDb &&
      !(cut && stillFalling(cut.bands[i].power, cut.onsetIndex, cut.sampleRate)),
  }));
  return runsOf(list, ({ noisy }) => noisy).map((run) => ({
    code: 'noisy',
    params: {
      fromHz: run[0].fromHz,
      toHz: run[run.length - 1].toHz,
      rangeDb: Math.min(...run.map(({ rangeDb }) => rangeDb)),
      neededDb: doubtfulRangeDb,
    },
  }));
}

/** A bend below this touches no reading of ISO 3382, whose T30 ends here. */
const lowestKneeDb = -35;

/**
 * One `two-slopes` note per run of neighbouring bands whose decay bends, with the numbers of the band whose late slope
 * rests on most decibels: both times, and the stretch of level that each was read from.
 */
const bentBands = (bands: readonly BandDecay[]): Note[] =>
  runsOf(bands, ({ twoSlopes }) => twoSlopes !== null && twoSlopes.kneeDb >= lowestKneeDb).map((run) => {
    const span = ({ twoSlopes }: BandDecay): number => twoSlopes!.kneeDb - twoSlopes!.toDb;
    const clearest = run.reduce((best, band) => (span(band) > span(best) ? band : best));
    const { earlySeconds, lateSeconds, kneeDb, toDb } = clearest.twoSlopes!;
    return {
      code: 'two-slopes',
      params: {
        ...{ fromHz: run[0].fromHz, toHz: run[run.length - 1].toHz, bandHz: clearest.centreHz },
        ...{
          earlySeconds,
          lateSeconds,
          earlyFromDb: 0,
          earlyToDb: kneeDb,
          lateFromDb: kneeDb,
          lateToDb: toDb,
        },
      },
    };
  });
