import {
  airBounds,
  createPlan,
  createRoom,
  parseCorners,
  parseHeight,
  parsePosition,
  parseRoomSize,
  roomPosition,
  wallCount,
  wallsFromNames,
  type Room,
} from '../room/index.js';
import { RingdownError } from '../signal/index.js';
import type { PositionMetres } from '../signal/index.js';
import type { OptionSpecs, Words } from './options.js';

/** The options that say what is known of a room and its air. */
export const roomOptions: OptionSpecs = {
  ...{ room: {}, plan: {}, height: {} },
  ...{ temperature: {}, humidity: {}, speed: {} },
};

function readAir(words: Words, withAbsorption: boolean) {
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
  if (words.has('walls') && words.has('absorption'))
    throw new RingdownError('option-both', { name: 'walls', other: 'absorption' });
  const walls = withAbsorption ? words.text('walls') : null;
  const coefficients = withAbsorption ? words.list('absorption') : null;
  return { air, walls, coefficients };
}

/**
 * The room that is given by its sides or by a plan.
 *
 * @throws RingdownError those of `createRoom`, `createPlan`, `option-both`, `option-needs`
 */
export function readRoom(words: Words, withAbsorption = false): Room | null {
  const { air, walls, coefficients } = readAir(words, withAbsorption);
  const size = words.text('room');
  const corners = words.text('plan');
  const height = words.text('height');
  if (size !== null && corners !== null)
    throw new RingdownError('option-both', { name: 'room', other: 'plan' });
  if (corners !== null && height === null)
    throw new RingdownError('option-needs', { name: 'plan', other: 'height' });
  if (corners === null && height !== null)
    throw new RingdownError('option-needs', { name: 'height', other: 'plan' });
  if (size === null && corners === null) return null;
  const plan = corners === null ? null : createPlan(parseCorners(corners), parseHeight(height!));
  const absorption = walls ? wallsFromNames(walls.split(','), wallCount({ plan })) : coefficients;
  return createRoom({ ...(plan ? { plan } : { size: parseRoomSize(size!) }), ...air, absorption });
}

/** The room of a command that means nothing without one. */
export function requireRoom(words: Words): Room {
  if (!words.has('plan')) words.required('room');
  return readRoom(words, true)!;
}

/** @throws RingdownError `place-form`, `place-outside` */
export function readPlace(text: string, room: Room | null): PositionMetres {
  const position = parsePosition(text);
  return room ? roomPosition(position, room) : position;
}
