import type { Resonance } from '../resonance/types.js';
import { roomModeNorm, roomModeShape } from '../room/room.js';
import { decayConstant } from '../room/damping.js';
import type { Mode, Room } from '../room/types.js';
import type { PositionMetres, Recording } from '../signal/types.js';
import * as maths from '../signal/maths.js';

/** Where a recording was made, as far as it is known. */
export type Place = Pick<Recording, 'seat' | 'source' | 'onsetSeconds' | 'timeReference'>;

/** Fewer places than this have no shape: two numbers lie near any other two. */
const fewestPlaces = 3;

/** Product of the shape at what is known of seat and source; an unknown one counts as 1. */
const shapeAt = (mode: Mode, room: Room, { seat, source }: Place): number =>
  (seat ? roomModeShape(mode.order, room, seat) : 1) * (source ? roomModeShape(mode.order, room, source) : 1);

/**
 * How strongly a mode is expected to be heard, re the mean over all places in the room: rms over the recordings.
 *
 * @returns 1 where no place is known
 */
export function excitation(mode: Mode, room: Room, places: readonly Place[]): number {
  const known = places.filter(({ seat, source }) => seat || source);
  if (known.length === 0) return 1;
  const sum = known.reduce((all, place) => {
    const factors = (place.seat ? 1 : 0) + (place.source ? 1 : 0);
    // The mean square of a shape over the room is 1 / norm.
    return (
      all + maths.power(roomModeNorm(mode.order, room), factors) * maths.square(shapeAt(mode, room, place))
    );
  }, 0);
  return Math.sqrt(sum / known.length);
}

/** Measured complex amplitudes over the places, and whether their phases may be compared. */
export interface MeasuredShape {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Share of the amplitudes' energy that is no uncertainty, 0 to 1. */
  readonly certainty: number;
  readonly signed: boolean;
}

/** What of a resonance has a shape. */
export type ShapeSource = Pick<
  Resonance,
  'frequencyHz' | 'decayTimeSeconds' | 'amplitudes' | 'amplitudeSd' | 'phasesRadians'
>;

const distanceOf = (a: PositionMetres, b: PositionMetres): number =>
  maths.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/**
 * The shape of a resonance across recordings whose places are known. Amplitudes are taken back from each onset to the
 * emission: by the time of flight where seat and source are known, by the onsets where they share a time zero; else
 * only their magnitudes count.
 *
 * @returns null for fewer than three places
 */
export function measuredShape(
  resonance: ShapeSource,
  room: Room,
  places: readonly Place[],
): MeasuredShape | null {
  const known = [...places.keys()].filter((i) => places[i].seat || places[i].source);
  if (known.length < fewestPlaces || known.length !== places.length) return null;
  const flights = known.map((i) => {
    const { seat, source, onsetSeconds, timeReference } = places[i];
    if (seat && source) return distanceOf(seat, source) / room.speedOfSoundMetresPerSecond;
    return timeReference === 'common' ? onsetSeconds : null;
  });
  const signed = flights.every((flight) => flight !== null);
  const { frequencyHz, decayTimeSeconds, amplitudes, phasesRadians, amplitudeSd } = resonance;
  const damping = decayTimeSeconds === null ? 0 : decayConstant / decayTimeSeconds;
  const re = new Float64Array(known.length);
  const im = new Float64Array(known.length);
  let energy = 0;
  let doubt = 0;
  known.forEach((i, k) => {
    const flight = flights[k] ?? 0;
    const amplitude = amplitudes[i] * maths.exp(damping * flight);
    const phase = signed ? phasesRadians[i] - 2 * Math.PI * frequencyHz * flight : 0;
    re[k] = amplitude * maths.cos(phase);
    im[k] = amplitude * maths.sin(phase);
    energy += maths.square(amplitude);
    doubt += maths.square(amplitudeSd[i] * maths.exp(damping * flight));
  });
  return energy > 0 ? { re, im, certainty: energy / (energy + doubt), signed } : null;
}

/**
 * Modal assurance criterion of a measured shape and a mode's at the same places: 1 where one is a multiple of the
 * other, 0 where they have nothing in common (R. J. Allemang and D. L. Brown, IMAC 1982; from memory).
 */
export function shapeMatch(
  measured: MeasuredShape,
  mode: Mode,
  room: Room,
  places: readonly Place[],
): number {
  let [xr, xi, aa, ss] = [0, 0, 0, 0];
  places.forEach((place, k) => {
    const shape = shapeAt(mode, room, place);
    const s = measured.signed ? shape : Math.abs(shape);
    xr += measured.re[k] * s;
    xi += measured.im[k] * s;
    aa += maths.square(measured.re[k]) + maths.square(measured.im[k]);
    ss += s * s;
  });
  return aa > 0 && ss > 0 ? (xr * xr + xi * xi) / (aa * ss) : 0;
}

/**
 * Mean and sd of the match of the right mode's shape where levels are off by 3 dB; of the strongest mode of a cluster,
 * whose amplitudes are sums. Measured over invented rooms.
 */
const right = { mean: 0.88, sd: 0.07 };
const rightOfCluster = { mean: 0.72, sd: 0.22 };
/** No shape speaks more strongly than this for or against a mode: the room is not the box. */
const mostOdds = 200;

/**
 * Odds that a match speaks for its mode, against what matches by chance: the other shapes of the same room at the same
 * places, as a beta distribution of their mean and spread.
 *
 * @param match From `shapeMatch`; `certainty` of the measured shape; `chance`: matches of modes that cannot be meant.
 */
export function shapeOdds(
  match: number,
  { certainty, chance, cluster }: { certainty: number; chance: readonly number[]; cluster: boolean },
): number {
  const mean = chance.reduce((sum, value) => sum + value, 0) / chance.length;
  const variance = chance.reduce((sum, value) => sum + maths.square(value - mean), 0) / chance.length;
  const expected = cluster ? rightOfCluster : right;
  const meant = betaDensity(
    match,
    expected.mean * certainty,
    maths.square(expected.sd) + maths.square(1 - certainty) / 4,
  );
  const wrong = betaDensity(match, mean, Math.max(variance, 1e-3));
  return Math.min(mostOdds, Math.max(1 / mostOdds, meant / Math.max(wrong, 1e-9)));
}

function betaDensity(value: number, mean: number, variance: number): number {
  const m = Math.min(0.98, Math.max(0.02, mean));
  const sum = Math.max(1.2, (m * (1 - m)) / variance - 1);
  const [a, b] = [m * sum, (1 - m) * sum];
  const x = Math.min(0.995, Math.max(0.005, value));
  return maths.exp(
    (a - 1) * maths.log(x) + (b - 1) * maths.log(1 - x) + logGamma(sum) - logGamma(a) - logGamma(b),
  );
}

/** Stirling's series above 8, the recurrence below. */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  for (; z < 8; z++) shift -= maths.log(z);
  return (
    shift +
    (z - 0.5) * maths.log(z) -
    z +
    0.5 * maths.log(2 * Math.PI) +
    1 / (12 * z) -
    1 / (360 * maths.cube(z))
  );
}
