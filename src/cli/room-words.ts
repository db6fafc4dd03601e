import {
  airBounds,
  checkedPosition,
  createRoom,
  parsePosition,
  parseRoomSize,
  type Room,
} from '../room/index.js';
import { RingdownError } from '../signal/index.js';
import type { PositionMetres } from '../signal/index.js';
import type { OptionSpecs, Words } from './options.js';

/** The options that say what is known of a room and its air. */
export const roomOptions: OptionSpecs = { room: {}, temperature: {}, humidity: {}, speed: {} };

/** @throws RingdownError those of `createRoom`, `option-both` */
export function readRoom(words: Words, withAbsorption = false): Room | null {
  const { temperatureCelsius, humidityPercent, speedOfSoundMetresPerSecond } = airBounds;
  for (const other of ['temperature', 'humidity']) {
    if (words.has('speed') && words.has(other))
      throw new RingdownError('option-both', { name: 'speed', other });
  }
  const air = {
    temperatureCelsius: words.number('temperature', ...temperatureCelsius),
    humidityPercent: words.number('humidity', ...humidityPercent),
    speedOfSoundMetresPerSecond: words.number('speed', ...speedOfSoundMetresPerSecond),
  };
  const absorption = withAbsorption ? words.list('absorption') : null;
  const size = words.text('room');
  return size === null ? null : createRoom({ size: parseRoomSize(size), ...air, absorption });
}

/** The room of a command that means nothing without one. */
export function requireRoom(words: Words): Room {
  words.required('room');
  return readRoom(words, true)!;
}

/** @throws RingdownError `place-form`, `place-outside` */
export function readPlace(text: string, room: Room | null): PositionMetres {
  const position = parsePosition(text);
  return room ? checkedPosition(position, room.size) : position;
}
