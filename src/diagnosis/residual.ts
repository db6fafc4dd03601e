import { inaudibleDb } from './ridges.js';
import { computeGrid, logFrequencies } from '../decay/index.js';
import type { Grid, GridParams } from '../decay/types.js';
import type { Resonance } from '../resonance/types.js';
import { decayConstant } from '../room/damping.js';
import { addRingingModes } from '../room/modal-sum.js';
import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import type { Job, Recording } from '../signal/types.js';
import * as maths from '../signal/maths.js';

/** A band that rings on although no resonance explains it. */
export interface UnexplainedBand {
  readonly frequencyHz: number;
  readonly fromHz: number;
  readonly toHz: number;
  /** Of the recording's late decay in this band, by regression over the slices. */
  readonly decayTimeSeconds: number;
  readonly decayTimeSdSeconds: number;
}

export interface ResidualParams {
  readonly fromHz: number;
  readonly toHz: number;
  /** Decay time from which a band hangs; null where nothing decides. */
  readonly limitSeconds: (frequencyHz: number) => number | null;
}

const windowSeconds = 0.3;
const stepSeconds = 0.02;
const longestSpanSeconds = 2;
const perOctave = 24;
/** Power is averaged over this many columns to each side, a twelfth of an octave: beats of neighbours are no decay. */
const halfBand = 2;
/** Levels nearer to the noise floor than this are not read as decay (ISO 3382 asks for as much; common practice). */
const aboveFloorDb = 10;
/** The late decay is read over at most this long before the level meets the floor, and over at least so long. */
const longestLateSeconds = 0.4;
const shortestLateSeconds = 0.2;
/** Shares of the late power that the resonances must leave over for a band to count as unexplained. */
const unexplainedShare = 0.5;
/** A level that falls more slowly than this is noise or hum, not decay. */
const longestDecaySeconds = 8;

/** Bass of one recording at a rate of its own. */
interface Bass {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  readonly onsetSeconds: number;
}

/** The samples that the resonances of a fit make in one recording, from its onset on. */
export function remake(
  { samples, sampleRate, onsetSeconds }: Bass,
  resonances: readonly Resonance[],
  index: number,
): Float64Array {
  const made = new Float64Array(samples.length);
  const modeOf = (
    frequencyHz: number,
    decaySeconds: number | null,
    amplitudes: readonly number[],
    phases: readonly number[],
  ) => ({
    frequencyHz,
    damping: decaySeconds === null ? 0 : decayConstant / decaySeconds,
    amplitude: amplitudes[index],
    // The fit states cosines, the sum adds sines.
    phaseRadians: phases[index] + Math.PI / 2,
  });
  const modes = resonances.flatMap((r) => [
    modeOf(r.frequencyHz, r.decayTimeSeconds, r.amplitudes, r.phasesRadians),
    ...(r.early
      ? [modeOf(r.early.frequencyHz, r.decayTimeEarlySeconds, r.early.amplitudes, r.early.phasesRadians)]
      : []),
  ]);
  const job = addRingingModes(made, sampleRate, onsetSeconds * sampleRate, modes);
  while (!job.next().done);
  return made;
}

/** Decimated once for all that follows: what is above the range does not matter here. */
function bassOf(recording: Recording, topHz: number): Bass {
  const { samples, sampleRate, onsetSeconds } = recording;
  const reduced = decimate(withoutOffset(samples, sampleRate), sampleRate, topHz);
  return {
    samples: reduced.samples,
    sampleRate: reduced.sampleRate,
    onsetSeconds: onsetSeconds - reduced.firstIndex / reduced.sampleRate,
  };
}

/**
 * Compares one recording with what its resonances remake. A band is unexplained where its late decay, well above the
 * noise floor, is beyond doubt longer than the limit, while the resonances account for less than half of the late power.
 */
export function* unexplainedBands(
  recording: Recording,
  resonances: readonly Resonance[],
  index: number,
  params: ResidualParams,
): Job<UnexplainedBand[]> {
  const seconds = recording.samples.length / recording.sampleRate - recording.onsetSeconds;
  const spanSeconds = Math.min(longestSpanSeconds, seconds - windowSeconds / 2);
  const topHz = Math.min(params.toHz, 0.4 * recording.sampleRate);
  if (spanSeconds < windowSeconds / 2 + shortestLateSeconds || topHz <= params.fromHz * 1.2) return [];
  const frequenciesHz = logFrequencies(params.fromHz, topHz, perOctave);
  const grid: GridParams = { method: 'sliding', windowSeconds, stepSeconds, spanSeconds, frequenciesHz };
  const bass = bassOf(recording, topHz);
  yield { stage: 'diagnose', fraction: 0.2 };
  const made = remake(bass, resonances, index);
  const left = { ...bass, samples: bass.samples.map((value, n) => value - made[n]) };
  const recorded = smoothPower(yield* computeGrid(bass, grid));
  yield { stage: 'diagnose', fraction: 0.6 };
  const rest = smoothPower(yield* computeGrid(left, grid));
  // Beyond the file there is only silence, whatever the padded ringing of the filter holds.
  const limits = Array.from(frequenciesHz, params.limitSeconds);
  return joinBands(
    limits.map((limit, column) => lateDecay(recorded, rest, column, limit, seconds - windowSeconds / 2)),
  );
}

interface Column {
  readonly frequencyHz: number;
  /** Of what the resonances leave over, in the first slice that lies wholly after the onset. */
  readonly levelDb: number;
  readonly decayTimeSeconds: number;
  readonly sdSeconds: number;
}

const inDb = (power: number): number => 10 * maths.log10(Math.max(power, 1e-30));

/** A grid's power, averaged over the columns about each, re full scale. */
interface Power {
  readonly grid: Grid;
  /** values[row * columns + column] */
  readonly values: Float64Array;
  readonly columns: number;
}

function smoothPower(grid: Grid): Power {
  const columns = grid.frequenciesHz.length;
  const values = new Float64Array(grid.levelsDb.length);
  const sums = new Float64Array(columns + 1);
  for (let row = 0; row < grid.levelsDb.length; row += columns) {
    for (let f = 0; f < columns; f++)
      sums[f + 1] = sums[f] + maths.power(10, (grid.levelsDb[row + f] + grid.referenceDbFs) / 10);
    for (let f = 0; f < columns; f++) {
      const [from, to] = [Math.max(0, f - halfBand), Math.min(columns, f + halfBand + 1)];
      values[row + f] = (sums[to] - sums[from]) / (to - from);
    }
  }
  return { grid, values, columns };
}

/** The column as an unexplained one, or null. */
function lateDecay(
  { grid, values, columns }: Power,
  rest: Power,
  column: number,
  limit: number | null,
  lastSeconds: number,
): Column | null {
  if (limit === null) return null;
  const { timesSeconds } = grid;
  // What is too faint to be heard hangs unnoticed: 0 dB is the loudest point of the first slice.
  const floorDb =
    Math.max(grid.limits.noiseFloorDb[column] + aboveFloorDb, -inaudibleDb) + grid.referenceDbFs;
  const first = timesSeconds.findIndex((t) => t >= windowSeconds / 2);
  let end = first;
  while (
    end < timesSeconds.length &&
    timesSeconds[end] <= lastSeconds &&
    inDb(values[end * columns + column]) > floorDb
  )
    end++;
  const begin = Math.max(first, end - Math.round(longestLateSeconds / stepSeconds));
  if (end - begin < shortestLateSeconds / stepSeconds) return null;
  const times: number[] = [];
  const levels: number[] = [];
  let share = 0;
  for (let row = begin; row < end; row++) {
    const power = values[row * columns + column];
    times.push(timesSeconds[row]);
    levels.push(inDb(power));
    share += rest.values[row * columns + column] / Math.max(power, 1e-30) / (end - begin);
  }
  if (share < unexplainedShare) return null;
  const { slope, slopeSd } = regression(times, levels);
  const decayTimeSeconds = -60 / slope;
  const sdSeconds = (decayTimeSeconds * slopeSd) / -slope;
  if (!(slope < 0 && decayTimeSeconds - 2 * sdSeconds > limit && decayTimeSeconds < longestDecaySeconds))
    return null;
  const levelDb = inDb(rest.values[first * columns + column]);
  return { frequencyHz: grid.frequenciesHz[column], levelDb, decayTimeSeconds, sdSeconds };
}

/** Straight line through levels; the sd of its slope counts only slices that do not share their window. */
function regression(times: readonly number[], levels: readonly number[]): { slope: number; slopeSd: number } {
  const n = times.length;
  const meanT = times.reduce((sum, t) => sum + t, 0) / n;
  const meanL = levels.reduce((sum, l) => sum + l, 0) / n;
  let tt = 0;
  let tl = 0;
  times.forEach((t, i) => {
    tt += maths.square(t - meanT);
    tl += (t - meanT) * (levels[i] - meanL);
  });
  const slope = tl / tt;
  const scatter = times.reduce((sum, t, i) => sum + maths.square(levels[i] - meanL - slope * (t - meanT)), 0);
  const overlap = windowSeconds / 2 / stepSeconds;
  return { slope, slopeSd: Math.sqrt((scatter / Math.max(1, n - 2) / tt) * overlap) };
}

/** Neighbouring columns are one band, named after its loudest. */
function joinBands(columns: readonly (Column | null)[]): UnexplainedBand[] {
  const bands: Column[][] = [];
  columns.forEach((column, i) => {
    if (!column) return;
    if (i > 0 && columns[i - 1]) bands[bands.length - 1].push(column);
    else bands.push([column]);
  });
  return bands.map((band) => {
    const loudest = band.reduce((best, column) => (column.levelDb > best.levelDb ? column : best));
    return {
      frequencyHz: loudest.frequencyHz,
      fromHz: band[0].frequencyHz,
      toHz: band[band.length - 1].frequencyHz,
      decayTimeSeconds: loudest.decayTimeSeconds,
      decayTimeSdSeconds: loudest.sdSeconds,
    };
  });
}
