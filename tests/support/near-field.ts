import { createRoom, synthesise, type Room } from '../../src/room/index.js';
import { rollOffSections } from '../../src/room/roll-off.js';
import { filterForwards } from '../../src/signal/filters.js';
import { recordingFromSamples, Rng, type PositionMetres, type Recording } from '../../src/signal/index.js';

/** What the source itself adds to everything that it plays: its peak re the rest, dB. */
export interface OwnTail {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
  readonly peakDb: number;
}

const sampleRate = 4000;

/** Through a source that rings: x + x * (a exp(-d t) sin(w t)), by the recurrence of the damped sine. */
export function throughTail(samples: Float64Array, tail: OwnTail | null): Float64Array {
  if (!tail) return samples;
  const damping = 6.9078 / tail.decayTimeSeconds;
  const w = (2 * Math.PI * tail.frequencyHz) / sampleRate;
  const gain = (10 ** (tail.peakDb / 20) * 2 * damping) / sampleRate;
  const decay = Math.exp(-damping / sampleRate);
  let [y1, y2, before] = [0, 0, 0];
  return samples.map((value) => {
    const y = 2 * decay * Math.cos(w) * y1 - decay * decay * y2 + decay * Math.sin(w) * before;
    [y2, y1, before] = [y1, y, value];
    return value + gain * y;
  });
}

export interface NearFieldScene {
  readonly room: Room;
  readonly source: PositionMetres;
  readonly seats: readonly Recording[];
  readonly near: Recording;
}

/**
 * An invented room with a source at its front wall, seats, and a microphone close to the source: the modal sum at its place and
 * the direct sound 1 / d of a point source. Modes are off by 1.5 %, their decays by 20 % and levels by 2 dB; noise 60 dB (near: 80)
 * below the peak.
 *
 * @param said Distance that the recording is marked with.
 */
export function nearFieldScene(
  seed: number,
  distanceMetres: number,
  tail: OwnTail | null,
  { said = distanceMetres, seatCount = 1 } = {},
): NearFieldScene {
  const rng = new Rng(100 * seed + 1);
  const [lengthMetres, widthMetres] = [4 + 3 * rng.uniform(), 3 + 2 * rng.uniform()];
  const room = createRoom({ size: { lengthMetres, widthMetres, heightMetres: 2.4 + 0.6 * rng.uniform() } });
  const source = { x: 0.3, y: 0.3 + (widthMetres - 0.6) * rng.uniform(), z: 0.3 };
  const places = Array.from({ length: seatCount }, () => ({
    x: lengthMetres * (0.3 + 0.5 * rng.uniform()),
    y: widthMetres * (0.2 + 0.6 * rng.uniform()),
    z: 1.2,
  }));
  const base = {
    ...{ room, source, sampleRate, seed, seconds: 1.5, absorption: 0.12 + 0.15 * rng.uniform() },
    spread: { frequencyFraction: 0.015, decayLog: 0.2, levelDb: 2 },
  };
  const seats = places.map((seat, k) => {
    const { samples } = synthesise({ ...base, seat, noiseDb: -60 });
    return recordingFromSamples(throughTail(samples, tail), sampleRate, {
      label: `seat ${k + 1}`,
      seat,
      source,
    });
  });
  const close = synthesise({ ...base, seat: { ...source, x: source.x + distanceMetres } });
  const direct = new Float64Array(close.samples.length);
  direct[Math.round(close.onsetSeconds * sampleRate)] = 1 / distanceMetres;
  const rollOff = { highPassHz: 22, highPassOrder: 4, lowPassHz: null, lowPassOrder: 4 } as const;
  filterForwards(direct, rollOffSections(rollOff, sampleRate));
  const sum = close.samples.map((value, k) => value + direct[k]);
  const noise = 1e-4 * sum.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const heard = throughTail(sum, tail).map((value) => value + noise * rng.gaussian());
  const near = recordingFromSamples(heard, sampleRate, { label: 'near', source, nearFieldMetres: said });
  return { room, source, seats, near };
}
