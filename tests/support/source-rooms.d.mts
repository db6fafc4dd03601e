import type { PositionMetres, Recording, RoomSize, SharedRidge, TransferMatrix } from '../../src/engine.js';
import type * as Engine from '../../src/engine.js';

export interface SourceRoom {
  readonly size: RoomSize;
  readonly absorption: readonly number[];
  readonly sources: readonly PositionMetres[];
  readonly seats: readonly PositionMetres[];
}

export function sourceRoom(
  engine: Pick<typeof Engine, 'Rng'>,
  seed: number,
  sourceCount?: number,
  seatCount?: number,
): SourceRoom;

export function sourceMatrix(
  engine: typeof Engine,
  room: SourceRoom,
  frequenciesHz: Float64Array,
  options?: { noiseDb?: number; seed?: number },
): {
  readonly matrix: TransferMatrix;
  readonly ridges: readonly SharedRidge[];
  readonly recordings: readonly Recording[];
  readonly indices: readonly (readonly number[])[];
};
