import { RingdownError } from '../signal/errors.js';
import type { Job } from '../signal/types.js';
import { airBounds, speedOfSound, within } from './air.js';
import { checkedSize } from './bounds.js';
import { transitionFrequency } from './box.js';
import { planMeshError } from './plan-room.js';
import type { Plan } from './plan.js';
import {
  prepareRoom,
  roomModeCount,
  roomModes,
  roomSurface,
  roomVolume,
  sabineTime,
  wallCount,
  withDecay,
} from './room.js';
import type { Room, RoomPrediction, RoomSize } from './types.js';
import {
  absorptionBands,
  absorptionOverFrequency,
  referenceBandHz,
  type AbsorptionGiven,
} from './wall-absorption.js';

/** More predicted modes than this would be a list that no ridge can be told from. */
const mostModes = 20000;

export interface RoomParams {
  /** Of a box. */
  readonly size?: RoomSize;
  /** Instead of `size`; from `createPlan`. */
  readonly plan?: Plan | null;
  /** Used as it is where given; else from temperature and humidity. */
  readonly speedOfSoundMetresPerSecond?: number | null;
  /** 20 °C where not given. */
  readonly temperatureCelsius?: number | null;
  readonly humidityPercent?: number | null;
  /** One coefficient for all walls, or one each, as `WallAbsorption` says; or such over frequency. From 0 to 1. */
  readonly absorption?: AbsorptionGiven | null;
}

/**
 * A room from what is known of it.
 *
 * @throws RingdownError `room-side-bounds`, `temperature-bounds`, `humidity-bounds`, `speed-bounds`,
 *   `absorption-count`, `absorption-bounds`
 */
export function createRoom(params: RoomParams): Room {
  const plan = params.plan ?? null;
  const size = checkedSize(plan ? enclosing(plan) : params.size!);
  const given = params.speedOfSoundMetresPerSecond ?? null;
  const humidityPercent = params.humidityPercent ?? null;
  if (given !== null) within('speed-bounds', given, airBounds.speedOfSoundMetresPerSecond);
  const temperatureCelsius = params.temperatureCelsius ?? (given === null ? 20 : null);
  // Checked also where a given speed makes it unused: a wrong figure is still a slip of the pen.
  const computed = temperatureCelsius === null ? null : speedOfSound(temperatureCelsius, humidityPercent);
  return {
    size,
    ...(plan ? { plan } : {}),
    speedOfSoundMetresPerSecond: given ?? computed!,
    temperatureCelsius,
    humidityPercent,
    ...absorptionOf(params.absorption ?? null, wallCount({ plan })),
  };
}

/** The box that a plan fits into. */
const enclosing = ({ corners, heightMetres }: Plan): RoomSize => ({
  lengthMetres: Math.max(...corners.map(({ x }) => x)),
  widthMetres: Math.max(...corners.map(({ y }) => y)),
  heightMetres,
});

function absorptionOf(
  given: AbsorptionGiven | null,
  walls: number,
): Pick<Room, 'absorption' | 'absorptionBands'> {
  if (given === null) return { absorption: null };
  const bands = absorptionBands(given, walls);
  const absorption = absorptionOverFrequency(given, walls)(referenceBandHz);
  return bands ? { absorption, absorptionBands: bands } : { absorption };
}

/**
 * Modes of the room with rigid walls, with decay times from its absorption where that is known.
 *
 * @throws RingdownError `room-side-bounds`; `mode-count`, `plan-modes` where there are too many to name
 */
export function predictRoom(room: Room, params: { readonly toHz: number }): RoomPrediction {
  checkedSize(room.size);
  const { toHz } = params;
  const expected = Math.round(roomModeCount(room, toHz));
  if (expected > mostModes) throw new RingdownError('mode-count', { count: expected, most: mostModes, toHz });
  const volumeCubicMetres = roomVolume(room);
  const modes = roomModes(room, toHz).map((mode) => withDecay(mode, room));
  const sabine = sabineTime(room, referenceBandHz);
  return {
    room,
    volumeCubicMetres,
    surfaceSquareMetres: roomSurface(room),
    transitionFrequencyHz: sabine === null ? null : transitionFrequency(sabine, volumeCubicMetres),
    modes,
    meshError: room.plan ? planMeshError(room.plan, room.speedOfSoundMetresPerSecond, toHz) : null,
  };
}

/** `predictRoom` as a job: a room given by a plan takes a second. */
export function* predictRoomJob(room: Room, params: { readonly toHz: number }): Job<RoomPrediction> {
  checkedSize(room.size);
  yield* prepareRoom(room, params.toHz);
  return predictRoom(room, params);
}
