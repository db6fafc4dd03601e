import { computeResponse } from '../decay/response.js';
import { fitResonances } from '../resonance/index.js';
import type { FitParams, Resonance, ResonanceFit } from '../resonance/types.js';
import { decayConstant } from '../room/damping.js';
import { nearFieldModesDb } from '../room/near-field.js';
import type { Room } from '../room/types.js';
import { within } from '../signal/job.js';
import type { Job, PositionMetres, Recording } from '../signal/types.js';
import { wallCut } from './evidence.js';
import { rings } from './ridges.js';
import type { Evidence } from './types.js';
import * as maths from '../signal/maths.js';

/** One resonance agrees with another within so many standard deviations, in frequency and in the logarithm of decay. */
const agreeSd = 3;
/** Agreement says little where either is hardly known: sd as a share of the frequency, and of the decay time. */
const knownShare = 0.01;
const knownDecay = 0.2;
/** A resonance of the source stands above the most that modes of the room could add there by this, dB. */
const marginDb = 3;
/** And above the other resonances of that recording, each held against the same: a distance that is wrong moves all. dB. */
const standsOutDb = 10;
/** Fewer others than this say nothing on that. */
const fewestOthers = 3;
/** Half the width of the band whose median is the direct sound, octaves. */
const directOctaves = 0.5;
/** Two places of a source are one where they are this close, m. */
const samePlaceMetres = 0.05;

/** One resonance of a near-field recording. */
export interface NearFieldResonance {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  readonly decayTimeSeconds: number;
  readonly decayTimeSdSeconds: number;
  /** Its peak in the response, dB re the direct sound: the median of the response over an octave. */
  readonly aboveDirectDb: number;
}

/** What a recording close to a source says: what rings there, and how loud beside the direct sound. */
export interface NearField {
  readonly label: string;
  readonly hash: string;
  readonly distanceMetres: number;
  readonly source: PositionMetres | null;
  readonly sourceName: string | null;
  readonly resonances: readonly NearFieldResonance[];
}

/** Recordings at seats, and those close to a source, which are none. All are seats where there is nothing else. */
export function partNearField<T extends Pick<Recording, 'nearFieldMetres'>>(
  recordings: readonly T[],
): { readonly seats: readonly T[]; readonly near: readonly T[] } {
  const near = recordings.filter(({ nearFieldMetres }) => nearFieldMetres !== undefined);
  return near.length < recordings.length
    ? { seats: recordings.filter((one) => !near.includes(one)), near }
    : { seats: recordings, near: [] };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

/**
 * Reads a recording made close to a source. Its direct sound drowns the room but for the strongest modes, so that the median
 * of its response over an octave is the direct sound's level.
 */
export function* readNearField(recording: Recording, params: FitParams): Job<NearField> {
  const fit = yield* within(fitResonances([recording], params), 0, 0.9);
  const { label, hash, nearFieldMetres, source, sourceName } = recording;
  const resonances = fit.resonances.length > 0 ? yield* aboveDirect(recording, fit, params) : [];
  return {
    ...{ label, hash, source, resonances },
    distanceMetres: nearFieldMetres ?? 0,
    sourceName: sourceName ?? null,
  };
}

function* aboveDirect(
  recording: Recording,
  { resonances }: ResonanceFit,
  { fromHz, toHz }: FitParams,
): Job<NearFieldResonance[]> {
  const { sampleRate } = recording;
  const edge = maths.power(2, directOctaves);
  const span = { fromHz: fromHz / edge, toHz: Math.min(toHz * edge, 0.4 * sampleRate) };
  const response = yield* within(computeResponse(recording, { ...span, smoothing: 'none' }), 0.9, 1);
  const directDb = (frequencyHz: number): number =>
    median(
      [...response.levelsDb].filter(
        (_, k) => Math.abs(maths.log2(response.frequenciesHz[k] / frequencyHz)) <= directOctaves,
      ),
    );
  return resonances.flatMap((resonance): NearFieldResonance[] => {
    const { frequencyHz, frequencySdHz, decayTimeSeconds, decayTimeSdSeconds, amplitudes } = resonance;
    if (!rings(resonance) || !decayTimeSeconds || !decayTimeSdSeconds) return [];
    const damping = decayConstant / decayTimeSeconds;
    // The sum over all samples of a decaying tone, at its own frequency.
    const peakDb = 20 * maths.log10((amplitudes[0] * sampleRate) / (2 * damping));
    const aboveDirectDb = peakDb - directDb(frequencyHz);
    return [{ frequencyHz, frequencySdHz, decayTimeSeconds, decayTimeSdSeconds, aboveDirectDb }];
  });
}

/** Whether a near-field recording is of a source that plays in these; where either does not say, it may be. */
export function concerns(
  { source, sourceName }: Pick<NearField, 'source' | 'sourceName'>,
  recordings: readonly Pick<Recording, 'source' | 'sourceName'>[],
): boolean {
  return recordings.some((other) => {
    if (sourceName && other.sourceName) return sourceName === other.sourceName;
    if (!source || !other.source) return true;
    const [dx, dy, dz] = (['x', 'y', 'z'] as const).map((axis) => source[axis] - other.source![axis]);
    return maths.hypot(dx, dy, dz) <= samePlaceMetres;
  });
}

type Known = Pick<Resonance, 'frequencyHz' | 'frequencySdHz' | 'decayTimeSeconds' | 'decayTimeSdSeconds'>;

const isKnown = ({ frequencyHz, frequencySdHz, decayTimeSeconds, decayTimeSdSeconds }: Known): boolean =>
  frequencySdHz <= knownShare * frequencyHz &&
  (decayTimeSdSeconds ?? 0) <= knownDecay * (decayTimeSeconds ?? 0);

function agrees(resonance: Resonance, near: NearFieldResonance): boolean {
  const { frequencyHz, frequencySdHz, decayTimeSeconds, decayTimeSdSeconds } = resonance;
  if (!decayTimeSeconds || !isKnown(resonance) || !isKnown(near)) return false;
  const hertz = maths.hypot(frequencySdHz, near.frequencySdHz);
  const log = maths.hypot(
    (decayTimeSdSeconds ?? 0) / decayTimeSeconds,
    near.decayTimeSdSeconds / near.decayTimeSeconds,
  );
  return (
    Math.abs(frequencyHz - near.frequencyHz) <= agreeSd * hertz &&
    Math.abs(maths.log(decayTimeSeconds / near.decayTimeSeconds)) <= agreeSd * log
  );
}

/** How far each resonance stands above the most that modes of the room could add at that distance, dB. */
const surplusDb = (room: Room, near: NearField, one: NearFieldResonance): number =>
  one.aboveDirectDb - nearFieldModesDb(room, near, one, wallCut);

/**
 * What near-field recordings say of a resonance that is heard at seats. A mode of the room sounds close to the source too,
 * with the same frequency and decay, so that agreement alone shows nothing: what shows that the source itself rings is a level
 * re its direct sound that no mode reaches at that distance. `near-field` where there is such; `not-near-field` where nothing
 * rings there at this frequency; null where the recordings decide nothing, and without a room, whose size the level depends on.
 *
 * @param near Those that concern the sources in question; see `concerns`.
 */
export function nearFieldEvidence(
  resonance: Resonance,
  near: readonly NearField[],
  room: Room | null,
): Evidence | null {
  if (!room || !rings(resonance) || !resonance.decayTimeSeconds) return null;
  for (const one of near) {
    const met = one.resonances.find((candidate) => agrees(resonance, candidate));
    if (!met) continue;
    const surplus = surplusDb(room, one, met);
    const others = one.resonances
      .filter((other) => other !== met)
      .map((other) => surplusDb(room, one, other));
    if (surplus < marginDb) continue;
    if (others.length >= fewestOthers && surplus < median(others) + standsOutDb) continue;
    return {
      kind: 'near-field',
      params: {
        metres: one.distanceMetres,
        ...{ frequencyHz: met.frequencyHz, frequencySdHz: met.frequencySdHz },
        ...{ decayTimeSeconds: met.decayTimeSeconds, decayTimeSdSeconds: met.decayTimeSdSeconds },
        aboveDirectDb: met.aboveDirectDb,
        mostDb: met.aboveDirectDb - surplus,
      },
    };
  }
  const rung = near.some(({ resonances }) => resonances.some((one) => lies(resonance, one)));
  if (near.length === 0 || rung || near.some(({ resonances }) => resonances.length === 0)) return null;
  return { kind: 'not-near-field', params: { metres: near[0].distanceMetres } };
}

/** A resonance this close in frequency may be the same, whatever its decay. */
const lies = ({ frequencyHz, frequencySdHz }: Resonance, near: NearFieldResonance): boolean =>
  Math.abs(frequencyHz - near.frequencyHz) <=
  Math.max(0.01 * frequencyHz, agreeSd * maths.hypot(frequencySdHz, near.frequencySdHz));
