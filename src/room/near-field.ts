import { decayConstant } from './damping.js';
import { roomModeNorm, roomModes, roomModeShape, roomVolume } from './room.js';
import type { Mode, Room } from './types.js';
import type { PositionMetres } from '../signal/types.js';
import * as maths from '../signal/maths.js';

/** A tangential mode in a corner: the least that is allowed for, since the mode that is meant may lie elsewhere. */
const leastFactor = 4;
/** Where the source is not known it is taken to stand in a corner, where every mode is loudest. */
const cornerShape = 1;

export interface NearFieldPlace {
  /** Where the source stands; null where nobody said. */
  readonly source: PositionMetres | null;
  /** From the microphone to the source. */
  readonly distanceMetres: number;
}

/**
 * The most that modes of a room add at a microphone close to their source, at the peak of the response and re the direct sound
 * there, dB. One mode adds c^2 N s^2 d / (V f delta): N its norm, s its shape at the source, d the distance, delta = 6.9078 / T
 * (the modal sum for a point source against its free field, 1 / d: Morse and Ingard, Theoretical Acoustics, ch. 9). All modes
 * that walls may move to this frequency are added up, as if in phase.
 *
 * @param apart Share of its frequency by which a mode may lie elsewhere than predicted.
 */
export function nearFieldModesDb(
  room: Room,
  { source, distanceMetres }: NearFieldPlace,
  { frequencyHz, decayTimeSeconds }: { readonly frequencyHz: number; readonly decayTimeSeconds: number },
  apart: number,
): number {
  const factorOf = ({ order }: Mode): number =>
    roomModeNorm(order, room) * maths.square(source ? roomModeShape(order, room, source) : cornerShape);
  const factor = roomModes(room, frequencyHz * (1 + apart) + 1)
    .filter((mode) => Math.abs(frequencyHz / mode.frequencyHz - 1) <= apart)
    .reduce((sum, mode) => sum + factorOf(mode), 0);
  const damping = decayConstant / decayTimeSeconds;
  const share =
    (maths.square(room.speedOfSoundMetresPerSecond) * Math.max(leastFactor, factor) * distanceMetres) /
    (roomVolume(room) * frequencyHz * damping);
  return 20 * maths.log10(share);
}
