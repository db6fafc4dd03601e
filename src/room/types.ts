import type { PositionMetres } from '../signal/types.js';
import type { Plan } from './plan.js';

export interface RoomSize {
  readonly lengthMetres: number;
  readonly widthMetres: number;
  readonly heightMetres: number;
}

/**
 * Numbers of nodal planes along x, y and z. In a room given by a plan: the number of the plan's wave, 0, and that of
 * nodal planes in height.
 */
export type ModeOrder = readonly [number, number, number];
/**
 * In a box: along one, two or all three axes. In a room given by a plan: `plan`, the same at every height, `mixed`, of
 * plan and height; what stands between floor and ceiling alone is axial there too.
 */
export type ModeKind = 'axial' | 'tangential' | 'oblique' | 'plan' | 'mixed';

export interface Mode {
  readonly order: ModeOrder;
  readonly kind: ModeKind;
  readonly frequencyHz: number;
  /** From wall absorption; null where none was given. */
  readonly decayTimeSeconds: number | null;
}

/**
 * Absorption coefficients of the walls, then of floor and ceiling. In a box: x=0, x=L, y=0, y=W, z=0 (floor), z=H
 * (ceiling). In a plan: the walls in turn, each from its corner to the next.
 */
export type WallAbsorption = readonly number[];

/** Absorption of the walls in one third-octave, by its centre. */
export interface AbsorptionBand {
  readonly frequencyHz: number;
  readonly absorption: WallAbsorption;
}

export interface Room {
  /** Of a room given by a plan: the box that it fits into. */
  readonly size: RoomSize;
  /** Absent or null: the room is a box. */
  readonly plan?: Plan | null;
  /** As given, or from temperature and humidity. */
  readonly speedOfSoundMetresPerSecond: number;
  readonly temperatureCelsius: number | null;
  readonly humidityPercent: number | null;
  /** The same at all frequencies; where `absorptionBands` are given, theirs at 63 Hz. Null: nothing is known. */
  readonly absorption: WallAbsorption | null;
  /** Ascending frequency; absent or null where the absorption does not change with frequency. */
  readonly absorptionBands?: readonly AbsorptionBand[] | null;
}

export interface RoomPrediction {
  readonly room: Room;
  /** Of a room given by a plan: how far frequencies may be off for the fineness of the mesh, as a fraction; else null. */
  readonly meshError?: number | null;
  readonly volumeCubicMetres: number;
  readonly surfaceSquareMetres: number;
  /** 2000 sqrt(T/V); null where no decay time is known. A soft band, never a cliff. */
  readonly transitionFrequencyHz: number | null;
  /** Ascending frequency; equal modes one by one. */
  readonly modes: readonly Mode[];
}

export type { PositionMetres };
