import { drain } from '../signal/drain.js';
import { refusal } from '../signal/error-codes.js';
import { highestSampleRate, lowestSampleRate, requireFits, shortestSeconds } from '../signal/limits.js';
import { Rng } from '../signal/random.js';
import type { Job, PositionMetres } from '../signal/types.js';
import { checkedSize } from './bounds.js';
import { decayConstant } from './damping.js';
import { addRingingModes, type RingingMode } from './modal-sum.js';
import { filterForwards } from '../signal/filters.js';
import { gainForDecay, rollOffSections, type SourceRollOff } from './roll-off.js';
import {
  prepareRoom,
  roomModeDamping,
  roomModeNorm,
  roomModes,
  roomModeShape,
  roomPosition,
  roomVolume,
  wallCount,
} from './room.js';
import type { Mode, Room } from './types.js';
import {
  absorptionBands,
  absorptionOverFrequency,
  referenceBandHz,
  type AbsorptionGiven,
} from './wall-absorption.js';
import * as maths from '../signal/maths.js';

/** Steady tones of the mains under a recording. */
export interface SynthHum {
  readonly mainsHz: number;
  /** Amplitude of the tone at one, two, three ... times `mainsHz`, dB re the peak of the response in its band. */
  readonly levelsDb: readonly number[];
}

/** How far real walls are from the rigid box: each value is one standard deviation. */
export interface SynthSpread {
  /** Of every mode's own frequency, as a fraction. */
  readonly frequencyFraction: number;
  /** Of the logarithm of every mode's decay time. */
  readonly decayLog: number;
  /** Of every mode's level. */
  readonly levelDb: number;
}

export interface SynthParams {
  readonly room: Room;
  readonly seat: PositionMetres;
  readonly source: PositionMetres;
  /** 48 kHz. */
  readonly sampleRate?: number;
  /** Length of the file, 2 s. */
  readonly seconds?: number;
  /** From the first sample to the emission; the onset lies later by the time of flight. 20 ms. */
  readonly leadSeconds?: number;
  /** Used instead of the room's own; 0.1 where neither is given. */
  readonly absorption?: AbsorptionGiven | null;
  /** 4th order at 22 Hz, no low-pass. */
  readonly rollOff?: Partial<SourceRollOff>;
  /** rms of white noise within 20 to 200 Hz, dB re the peak of the response in its band; null (default): none. */
  readonly noiseDb?: number | null;
  readonly hum?: SynthHum | null;
  readonly spread?: Partial<SynthSpread> | null;
  /** Of the noise and the spread. */
  readonly seed?: number;
  /** The modal sum ends here, fading from three quarters of it on; 400 Hz. */
  readonly toHz?: number;
}

/** A mode as it is in the samples: amplitude exp(-6.9078 t / decayTime) cos(2 pi f t + phase), t from the onset. */
export interface SynthMode extends Mode {
  readonly decayTimeSeconds: number;
  readonly amplitude: number;
  readonly phaseRadians: number;
}

export interface Synthesis {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  /** First arrival, from the first sample. */
  readonly onsetSeconds: number;
  /** Ascending frequency. */
  readonly modes: readonly SynthMode[];
}

const defaultRollOff: SourceRollOff = { highPassHz: 22, highPassOrder: 4, lowPassHz: null, lowPassOrder: 4 };
const defaultAbsorption = 0.1;
/** No source is a point: nearer than this its direct sound grows no louder. */
const nearestMetres = 0.1;

/**
 * Impulse response of a box from a source to a seat: the modal sum of the wave equation for a point source of
 * unit volume acceleration, 4 pi c^2 / V times the sum of norm shape(source) shape(seat) exp(-damping t) sin(w t) / w
 * (Morse and Ingard, Theoretical Acoustics, ch. 9; Kuttruff, Room Acoustics, ch. 3), with the damping of `modeDamping`.
 * In free field the same source gives 1 / r: a level of 1 is that at 1 m. Above the modal sum only the direct sound is
 * there, so that the response starts as sharply as a measured one; the two are split by a zero-phase raised cosine.
 * The uniform pressure of a closed room, order (0,0,0), is in it where the source has a high-pass.
 *
 * @throws RingdownError `room-side-bounds`, `place-outside`, `absorption-count`, `absorption-bounds`, `rate`,
 *   `too-short`, `too-long`
 */
export function* synthesiseJob(params: SynthParams): Job<Synthesis> {
  const { sampleRate = 48000, seconds = 2, leadSeconds = 0.02, seed = 1, toHz = 400 } = params;
  const length = checkedLength(seconds, sampleRate);
  const room = withWalls(params.room, params.absorption);
  checkedSize(room.size);
  const seat = roomPosition(params.seat, room);
  const source = roomPosition(params.source, room);
  const speed = room.speedOfSoundMetresPerSecond;
  const distance = maths.hypot(seat.x - source.x, seat.y - source.y, seat.z - source.z);
  const rollOff = { ...defaultRollOff, ...params.rollOff };
  const top = Math.min(toHz, 0.45 * sampleRate);
  const spread = { frequencyFraction: 0, decayLog: 0, levelDb: 0, ...params.spread };
  const rng = new Rng(seed);

  if (room.plan) yield* shortened(prepareRoom(room, top), 0.5);
  const scale = (4 * Math.PI * speed * speed) / (roomVolume(room) * sampleRate);
  const ringing: (RingingMode & { mode: Mode })[] = roomModes(room, top).map((mode) => {
    const [shift, longer, louder] = [rng.gaussian(), rng.gaussian(), rng.gaussian()];
    const undamped = mode.frequencyHz * (1 + spread.frequencyFraction * shift);
    const damping = roomModeDamping(mode.order, room, undamped)! * maths.exp(-spread.decayLog * longer);
    // Damped to less than one swing only where walls absorb almost all: no mode then, and no square root of less than 0.
    const frequencyHz = Math.sqrt(
      Math.max(1e-6, maths.square(undamped) - maths.square(damping / (2 * Math.PI))),
    );
    const shapes =
      roomModeNorm(mode.order, room) *
      roomModeShape(mode.order, room, seat) *
      roomModeShape(mode.order, room, source);
    const amplitude =
      ((scale * shapes * taper(frequencyHz, top)) / (2 * Math.PI * frequencyHz)) *
      maths.power(10, (spread.levelDb * louder) / 20);
    return { mode, frequencyHz, damping, amplitude, phaseRadians: 0 };
  });

  const samples = new Float64Array(length);
  const emission = leadSeconds * sampleRate;
  const before = room.plan ? 0.5 : 0;
  for (const fraction of addRingingModes(samples, sampleRate, emission, ringing))
    yield { stage: 'synth', fraction: before + (0.9 - before) * fraction };
  const sections = rollOffSections(rollOff, sampleRate);
  if (rollOff.highPassHz !== null)
    addUniformPressure(samples, sampleRate, emission, scale, roomModeDamping([0, 0, 0], room, 20)!);
  const onset = emission + (distance / speed) * sampleRate;
  const low = samples.slice();
  addDirectTreble(samples, sampleRate, onset, 1 / Math.max(distance, nearestMetres), top);
  filterForwards(samples, sections);
  filterForwards(low, sections);
  addDisturbances(samples, sampleRate, peakFrom(low, Math.floor(onset)), params, rng);

  const flight = distance / speed;
  const modes = ringing.map(({ mode, frequencyHz, damping, amplitude }): SynthMode => {
    const through = gainForDecay(sections, frequencyHz, damping, sampleRate);
    const signed = amplitude * through.gain * maths.exp(-damping * flight);
    return {
      ...mode,
      frequencyHz,
      decayTimeSeconds: decayConstant / damping,
      amplitude: Math.abs(signed),
      phaseRadians: wrapped(
        2 * Math.PI * frequencyHz * flight + through.phaseRadians - Math.PI / 2 + (signed < 0 ? Math.PI : 0),
      ),
    };
  });
  return {
    samples,
    sampleRate,
    onsetSeconds: onset / sampleRate,
    modes: modes.sort((a, b) => a.frequencyHz - b.frequencyHz),
  };
}

/** The room with the walls that are to count. */
function withWalls(room: Room, given: AbsorptionGiven | null | undefined): Room {
  if (!given) return room.absorption ? room : withWalls(room, defaultAbsorption);
  const count = wallCount(room);
  return {
    ...room,
    absorption: absorptionOverFrequency(given, count)(referenceBandHz),
    absorptionBands: absorptionBands(given, count),
  };
}

function* shortened(job: Job<void>, share: number): Job<void> {
  for (;;) {
    const step = job.next();
    if (step.done) return;
    yield { ...step.value, fraction: share * step.value.fraction };
  }
}

/** `synthesiseJob` at once. */
export function synthesise(params: SynthParams): Synthesis {
  return drain(synthesiseJob(params));
}

function checkedLength(seconds: number, sampleRate: number): number {
  if (!(sampleRate >= lowestSampleRate && sampleRate <= highestSampleRate))
    throw refusal('rate', { rate: sampleRate, lowest: lowestSampleRate, highest: highestSampleRate });
  const samples = Math.round(seconds * sampleRate);
  if (!(seconds >= shortestSeconds))
    throw refusal('too-short', { seconds, samples, neededSeconds: shortestSeconds });
  requireFits(samples, 1, sampleRate);
  return samples;
}

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** cos^2 from three quarters of `topHz` to it. */
function taper(frequencyHz: number, topHz: number): number {
  const share = Math.min(1, Math.max(0, (frequencyHz / topHz - 0.75) * 4));
  return maths.square(maths.cos((Math.PI / 2) * share));
}

/** Order (0,0,0): the pressure that a source leaves in a closed box, scale (1 - exp(-2 d t)) / (2 d). */
function addUniformPressure(
  samples: Float64Array,
  sampleRate: number,
  from: number,
  scale: number,
  damping: number,
): void {
  // Order (0,0,0) has no two modes of the pair to its norm: its factor is 1, and its frequency 0.
  const rate = Math.max(2 * damping, 1e-3);
  for (let n = Math.max(0, Math.ceil(from)); n < samples.length; n++)
    samples[n] += (scale * -maths.expm1((-rate * (n - from)) / sampleRate)) / rate;
}

/** The direct sound above the modal sum: an impulse less the raised-cosine pulse that the sum already holds. */
function addDirectTreble(
  samples: Float64Array,
  sampleRate: number,
  onset: number,
  gain: number,
  topHz: number,
): void {
  const at = Math.round(onset);
  if (at < samples.length) samples[at] += gain;
  // Raised-cosine spectrum with its middle at 7/8 and half its width 1/8 of the top; written with time in samples.
  const middle = (0.875 * topHz) / sampleRate;
  const half = (0.125 * topHz) / sampleRate;
  const reach = Math.ceil(6 / half);
  for (let n = Math.max(0, at - reach); n <= Math.min(samples.length - 1, at + reach); n++) {
    const t = n - at;
    const x = 2 * middle * t;
    const pole = 1 - maths.square(4 * half * t);
    const swing = Math.abs(pole) < 1e-9 ? Math.PI / 4 : maths.cos(2 * Math.PI * half * t) / pole;
    const sinc = t === 0 ? 1 : maths.sin(Math.PI * x) / (Math.PI * x);
    samples[n] -= gain * 2 * middle * sinc * swing;
  }
}

function peakFrom(samples: Float64Array, from: number): number {
  let peak = 0;
  for (let n = Math.max(0, from); n < samples.length; n++) peak = Math.max(peak, Math.abs(samples[n]));
  return peak;
}

function addDisturbances(
  samples: Float64Array,
  sampleRate: number,
  peak: number,
  { noiseDb = null, hum = null }: SynthParams,
  rng: Rng,
): void {
  if (noiseDb !== null) {
    // 180 Hz of the half of the sample rate over which white noise is spread.
    const deviation = (peak * maths.power(10, noiseDb / 20)) / Math.sqrt(180 / (sampleRate / 2));
    for (let n = 0; n < samples.length; n++) samples[n] += deviation * rng.gaussian();
  }
  hum?.levelsDb.forEach((level, index) => {
    const amplitude = peak * maths.power(10, level / 20);
    const w = (2 * Math.PI * hum.mainsHz * (index + 1)) / sampleRate;
    const phase = 2 * Math.PI * rng.uniform();
    for (let n = 0; n < samples.length; n++) samples[n] += amplitude * maths.sin(w * n + phase);
  });
}
