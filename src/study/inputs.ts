import {
  createPlan,
  createRoom,
  parseCorners,
  parseHeight,
  parsePosition,
  parseRoomSize,
  roomPosition,
  wallCount,
  wallsFromNames,
} from '../room/index.js';
import type { Room } from '../room/index.js';
import { nearFieldBounds, nearFieldMetres } from '../signal/limits.js';
import { smoothings } from '../decay/smoothing.js';
import { RingdownError } from '../signal/errors.js';
import type { PositionMetres } from '../signal/types.js';

/** A room as people write it, for elements and forms. */
export interface RoomText {
  /** "5.3x4.1x2.7", "5,3 × 4,1 × 2,7 m", "16x12x8 ft". */
  readonly size?: string | null;
  /** Instead of a size: corners as "0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5", and the height as "2.4". */
  readonly plan?: string | null;
  readonly height?: string | null;
  readonly temperatureCelsius?: number | null;
  readonly humidityPercent?: number | null;
  readonly speedOfSoundMetresPerSecond?: number | null;
  readonly absorption?: readonly number[] | null;
  /** Instead: what the walls are made of, one name for all or one each, as "plaster-on-brick, carpet". */
  readonly walls?: string | null;
}

/**
 * @throws RingdownError those of `parseRoomSize`, `parseCorners`, `parseHeight`, `createPlan`, `wallsFromNames` and
 *   `createRoom`; `plan-height` where a plan has no height
 */
export function roomFromText({ size, plan: corners, height, walls, ...rest }: RoomText): Room {
  if (corners && !height) throw new RingdownError('plan-height', {});
  const plan = corners ? createPlan(parseCorners(corners), parseHeight(height!)) : null;
  const names = walls?.trim() ? walls.split(',') : null;
  return createRoom({
    ...rest,
    ...(plan ? { plan } : { size: parseRoomSize(size ?? '') }),
    absorption: names ? wallsFromNames(names, wallCount({ plan })) : rest.absorption,
  });
}

/** @throws RingdownError `place-form`, and `place-outside` where the room is known */
export function positionFromText(text: string, room: Room | null = null): PositionMetres {
  const position = parsePosition(text);
  return room ? roomPosition(position, room) : position;
}

export { nearFieldBounds, nearFieldMetres, RingdownError, smoothings };
