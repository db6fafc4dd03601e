import { checkedPosition, createRoom, parsePosition, parseRoomSize } from '../room/index.js';
import type { Room } from '../room/index.js';
import { smoothings } from '../decay/smoothing.js';
import { RingdownError } from '../signal/errors.js';
import type { PositionMetres } from '../signal/types.js';

/** A room as people write it, for elements and forms. */
export interface RoomText {
  /** "5.3x4.1x2.7", "5,3 × 4,1 × 2,7 m", "16x12x8 ft". */
  readonly size: string;
  readonly temperatureCelsius?: number | null;
  readonly humidityPercent?: number | null;
  readonly speedOfSoundMetresPerSecond?: number | null;
  readonly absorption?: readonly number[] | null;
}

/** @throws RingdownError those of `parseRoomSize` and `createRoom` */
export function roomFromText({ size, ...rest }: RoomText): Room {
  return createRoom({ size: parseRoomSize(size), ...rest });
}

/** @throws RingdownError `place-form`, and `place-outside` where the room is known */
export function positionFromText(text: string, room: Room | null = null): PositionMetres {
  const position = parsePosition(text);
  return room ? checkedPosition(position, room.size) : position;
}

export { RingdownError, smoothings };
