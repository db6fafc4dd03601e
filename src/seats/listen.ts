/** What is heard of a room: material dry, through a response, through filters behind it, and through one mode alone. */
import { ln1000 } from '../resonance/poles.js';
import { convolveJob } from '../signal/convolve.js';
import { withoutOffset } from '../signal/dc.js';
import { filterForwards, type Sections } from '../signal/filters.js';
import { interpolate } from '../signal/interpolate.js';
import { within } from '../signal/job.js';
import { decibels, limitSoftly, matchedGains, rmsOf } from '../signal/limiter.js';
import { listenMaterial, type MaterialKind, type MaterialNote } from '../signal/listen-material.js';
import { peakOf } from '../signal/level.js';
import type { Job, Recording } from '../signal/types.js';
import { sectionsOf, type Band } from './biquad.js';
import * as maths from '../signal/maths.js';

export type HeardKind = 'dry' | 'room' | 'treated' | 'mode';
export const heardKinds: readonly HeardKind[] = ['dry', 'room', 'treated', 'mode'];

/** One mode as a filter: it rings with its frequency and decay when something excites it. */
export interface ModeAlone {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
}

export interface ListenParams {
  readonly material: MaterialKind;
  /** What the material goes about, Hz. */
  readonly centreHz: number;
  /** Null: only what needs no response. */
  readonly response: Pick<Recording, 'samples' | 'sampleRate' | 'onsetSeconds' | 'reduced'> | null;
  /** Of the response from its onset; what comes later is noise. Null: all of it. */
  readonly untilSeconds: number | null;
  /** Filters over the source; none: nothing is treated. */
  readonly bands: readonly Band[];
  readonly mode: ModeAlone | null;
}

export interface Heard {
  readonly kind: HeardKind;
  readonly samples: Float32Array;
  /** Mean power and highest sample, dB re full scale. */
  readonly meanDb: number;
  readonly peakDb: number;
  /** Gain that brought it to the mean power of the others, dB. */
  readonly matchDb: number;
  /** How far the limiter lowered its highest peak, dB. */
  readonly limitedDb: number;
  /** From the end of the last note until it lies 30 dB below its loudest for good, s. */
  readonly ringsSeconds: number;
  /** Level of each block, dB re the loudest block of all sounds. */
  readonly blocksDb: Float32Array;
}

export interface Listened {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly blockSeconds: number;
  readonly notes: readonly MaterialNote[];
  /** Everything is heard up to here only, Hz; null where the response reaches as far as its file. */
  readonly toHz: number | null;
  /** Of the response, s; null without one. */
  readonly responseSeconds: number | null;
  readonly heard: readonly Heard[];
}

/** A page plays this rate; the samples of a saved study have far fewer. Hz. */
const playedRate = 12000;
const lowestPlayedRate = 8000;
const plainRate = 48000;
/** Where nothing is heard any more, times the frequency up to which a low-frequency copy is exact. */
const stopShare = 1.6;
/** Longer responses are faded out here: nothing of the bass lasts longer, and a page holds all sounds at once. s. */
const longestResponseSeconds = 4;
/** Kept before the onset, so that the first arrival is not cut. s. */
const leadSeconds = 0.003;
/** Silence after the material in which a room is heard alone. s. */
const tailSeconds = 1.5;
const blockSeconds = 0.025;
const ringDb = -30;

/** A response as it is convolved with: from just before its onset, faded out where it ends, at a rate that can be played. */
function prepared(response: NonNullable<ListenParams['response']>, untilSeconds: number | null) {
  const { sampleRate, onsetSeconds, reduced } = response;
  const whole = withoutOffset(response.samples, sampleRate);
  const lead = reduced ? 0.01 : leadSeconds;
  const from = Math.max(0, Math.floor((onsetSeconds - lead) * sampleRate));
  const most = lead + Math.min(longestResponseSeconds, Math.max(0.1, untilSeconds ?? Infinity));
  const samples = whole.slice(from, from + Math.ceil(most * sampleRate));
  const fade = Math.ceil(0.1 * samples.length);
  for (let k = 0; k < fade; k++)
    samples[samples.length - 1 - k] *= maths.square(maths.sin((0.5 * Math.PI * (k + 0.5)) / fade));
  const seconds = samples.length / sampleRate - lead;
  if (sampleRate >= lowestPlayedRate && Number.isInteger(sampleRate))
    return { samples, sampleRate, seconds, toHz: null };
  const toHz = Math.min(reduced?.toHz ?? Infinity, 0.35 * sampleRate);
  const stopHz = Math.min(stopShare * toHz, sampleRate - toHz);
  const raised = interpolate(samples, sampleRate, playedRate, toHz, stopHz);
  return { samples: raised, sampleRate: playedRate, seconds, toHz };
}

/** A click that holds nothing above a frequency: what the dry sound goes through so that it reaches as far as the others. */
function bandPulse(sampleRate: number, toHz: number): Float64Array {
  const click = new Float64Array(Math.ceil(0.1 * sampleRate));
  click[click.length >> 1] = 1;
  return interpolate(click, sampleRate, sampleRate, toHz, stopShare * toHz);
}

/** The two poles of one mode: impulse response exp(-d t) sin(2 pi f t). */
function modeSection({ frequencyHz, decayTimeSeconds }: ModeAlone, sampleRate: number): Sections {
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  const r = maths.exp(-ln1000 / (decayTimeSeconds * sampleRate));
  return Float64Array.of(0, r * maths.sin(w), 0, -2 * r * maths.cos(w), r * r);
}

function blockPowers(samples: Float64Array, length: number): Float64Array {
  const powers = new Float64Array(Math.floor(samples.length / length));
  for (let k = 0; k < powers.length; k++)
    powers[k] = maths.square(rmsOf(samples.subarray(k * length, (k + 1) * length)));
  return powers;
}

/** See `Heard.ringsSeconds`. */
function ringsAfter(powers: Float64Array, endSeconds: number): number {
  const least = Math.max(...powers) * maths.power(10, ringDb / 10);
  let last = powers.length - 1;
  while (last >= 0 && powers[last] <= least) last--;
  return Math.max(0, (last + 1) * blockSeconds - endSeconds);
}

/**
 * Renders what can be heard. All sounds have one length and one mean power, and none passes the ceiling of the limiter.
 *
 * @throws RingdownError `band-value`
 */
export function* listenJob(params: ListenParams): Job<Listened> {
  const { material: kind, centreHz, mode, bands, untilSeconds } = params;
  yield { stage: 'listen', fraction: 0 };
  const response = params.response && prepared(params.response, untilSeconds);
  const sampleRate = response?.sampleRate ?? plainRate;
  const toHz = response?.toHz ?? null;
  const material = listenMaterial(kind, centreHz, sampleRate);
  const length = material.samples.length + Math.ceil(tailSeconds * sampleRate);
  yield { stage: 'listen', fraction: 0.05 };
  let dry = new Float64Array(length);
  dry.set(material.samples);
  if (toHz !== null) {
    const pulse = bandPulse(sampleRate, toHz);
    const through = yield* within(convolveJob(dry, pulse, length + pulse.length), 0.05, 0.15);
    dry = through.slice(pulse.length >> 1).slice(0, length);
  }
  const sounds: { kind: HeardKind; samples: Float64Array }[] = [{ kind: 'dry', samples: dry }];
  if (response) {
    const room = yield* within(convolveJob(material.samples, response.samples, length), 0.15, 0.8);
    sounds.push({ kind: 'room', samples: room });
    if (bands.length > 0) {
      const treated = room.slice();
      filterForwards(treated, sectionsOf(bands, sampleRate));
      sounds.push({ kind: 'treated', samples: treated });
    }
    yield { stage: 'listen', fraction: 0.85 };
  }
  if (mode) {
    const alone = dry.slice();
    filterForwards(alone, modeSection(mode, sampleRate));
    sounds.push({ kind: 'mode', samples: alone });
    yield { stage: 'listen', fraction: 0.9 };
  }
  const gains = matchedGains(sounds.map(({ samples }) => samples));
  const block = Math.round(blockSeconds * sampleRate);
  const last = material.notes[material.notes.length - 1];
  const limited = sounds.map(({ kind, samples }, k) => {
    for (let n = 0; n < samples.length; n++) samples[n] *= gains[k];
    return {
      kind,
      samples,
      matchDb: decibels(gains[k]),
      limitedDb: limitSoftly(samples),
      powers: blockPowers(samples, block),
    };
  });
  yield { stage: 'listen', fraction: 0.95 };
  const loudest = Math.max(1e-24, ...limited.flatMap(({ powers }) => [...powers]));
  return {
    sampleRate,
    seconds: length / sampleRate,
    blockSeconds: block / sampleRate,
    notes: material.notes,
    toHz,
    responseSeconds: response?.seconds ?? null,
    heard: limited.map(({ powers, samples, ...one }) => ({
      ...one,
      samples: Float32Array.from(samples),
      meanDb: decibels(rmsOf(samples)),
      peakDb: decibels(peakOf(samples)),
      ringsSeconds: ringsAfter(powers, last.startSeconds + last.seconds),
      blocksDb: Float32Array.from(powers, (power) => 10 * maths.log10(Math.max(1e-12, power / loudest))),
    })),
  };
}
