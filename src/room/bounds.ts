import { RingdownError } from '../signal/errors.js';
import { sidesOf } from './box.js';
import type { RoomSize } from './types.js';

/**
 * Shortest and longest side, m. A side under 1 m holds no listener; over 60 m its modes lie less than 3 Hz apart and a
 * list of them names nothing.
 */
export const sideBounds = [1, 60] as const;

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
