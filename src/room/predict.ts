import { RingdownError } from '../signal/errors.js';
import { airBounds, speedOfSound, within } from './air.js';
import { boxModes, modeCount, sidesOf, surfaceOf, transitionFrequency, volumeOf } from './box.js';
import { modeDecayTime, sabineDecayTime } from './damping.js';
import type { Mode, Room, RoomPrediction, RoomSize } from './types.js';
import {
  absorptionAt,
  absorptionBands,
  absorptionOverFrequency,
  referenceBandHz,
  type AbsorptionGiven,
} from './wall-absorption.js';

/**
 * Shortest and longest side, m. A side under 1 m holds no listener; over 60 m its modes lie less than 3 Hz apart and a
 * list of them names nothing.
 */
export const sideBounds = [1, 60] as const;

/** More predicted modes than this would be a list that no ridge can be told from. */
const mostModes = 20000;

export interface RoomParams {
  readonly size: RoomSize;
  /** Used as it is where given; else from temperature and humidity. */
  readonly speedOfSoundMetresPerSecond?: number | null;
  /** 20 °C where not given. */
  readonly temperatureCelsius?: number | null;
  readonly humidityPercent?: number | null;
  /** One coefficient for all walls, or six: x=0, x=L, y=0, y=W, floor, ceiling; or such over frequency. From 0 to 1. */
  readonly absorption?: AbsorptionGiven | null;
}

/**
 * A room from what is known of it.
 *
 * @throws RingdownError `room-side-bounds`, `temperature-bounds`, `humidity-bounds`, `speed-bounds`,
 *   `absorption-count`, `absorption-bounds`
 */
export function createRoom(params: RoomParams): Room {
  const size = checkedSize(params.size);
  const given = params.speedOfSoundMetresPerSecond ?? null;
  const humidityPercent = params.humidityPercent ?? null;
  if (given !== null) within('speed-bounds', given, airBounds.speedOfSoundMetresPerSecond);
  const temperatureCelsius = params.temperatureCelsius ?? (given === null ? 20 : null);
  // Checked also where a given speed makes it unused: a wrong figure is still a slip of the pen.
  const computed = temperatureCelsius === null ? null : speedOfSound(temperatureCelsius, humidityPercent);
  return {
    size,
    speedOfSoundMetresPerSecond: given ?? computed!,
    temperatureCelsius,
    humidityPercent,
    ...absorptionOf(params.absorption ?? null),
  };
}

function absorptionOf(given: AbsorptionGiven | null): Pick<Room, 'absorption' | 'absorptionBands'> {
  if (given === null) return { absorption: null };
  const bands = absorptionBands(given);
  const absorption = absorptionOverFrequency(given)(referenceBandHz);
  return bands ? { absorption, absorptionBands: bands } : { absorption };
}

/** @throws RingdownError `room-side-bounds` with `side` (`length`, `width`, `height`), `value`, `from`, `to` */
export function checkedSize(size: RoomSize): RoomSize {
  const names = ['length', 'width', 'height'] as const;
  const [from, to] = sideBounds;
  sidesOf(size).forEach((value, axis) => {
    if (!(value >= from && value <= to))
      throw new RingdownError('room-side-bounds', { side: names[axis], value, from, to });
  });
  return size;
}

/** A mode with the decay time that the walls let expect at its frequency. */
export function withDecay(mode: Mode, room: Room): Mode {
  const walls = absorptionAt(room, mode.frequencyHz);
  if (!walls) return mode;
  const { size, speedOfSoundMetresPerSecond: speed } = room;
  return { ...mode, decayTimeSeconds: modeDecayTime(mode.order, size, speed, walls) };
}

/**
 * Modes of the room as a box with rigid walls, with decay times from its absorption where that is known.
 *
 * @throws RingdownError `room-side-bounds`; `mode-count` where there are too many to name
 */
export function predictRoom(room: Room, params: { readonly toHz: number }): RoomPrediction {
  const { speedOfSoundMetresPerSecond: speed, absorption } = room;
  const size = checkedSize(room.size);
  const volumeCubicMetres = volumeOf(size);
  const expected = Math.round(modeCount(size, speed, params.toHz));
  if (expected > mostModes)
    throw new RingdownError('mode-count', { count: expected, most: mostModes, toHz: params.toHz });
  const sabine = absorption && sabineDecayTime(size, speed, absorption);
  const modes = boxModes(size, speed, params.toHz).map((mode) => withDecay(mode, room));
  return {
    room,
    volumeCubicMetres,
    surfaceSquareMetres: surfaceOf(size),
    transitionFrequencyHz: sabine === null ? null : transitionFrequency(sabine, volumeCubicMetres),
    modes,
  };
}
