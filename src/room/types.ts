import type { PositionMetres } from '../signal/types.js';

export interface RoomSize {
  readonly lengthMetres: number;
  readonly widthMetres: number;
  readonly heightMetres: number;
}

export type ModeOrder = readonly [number, number, number];
export type ModeKind = 'axial' | 'tangential' | 'oblique';

export interface Mode {
  readonly order: ModeOrder;
  readonly kind: ModeKind;
  readonly frequencyHz: number;
  /** From wall absorption; null where none was given. */
  readonly decayTimeSeconds: number | null;
}

/** Absorption coefficients of the walls x=0, x=L, y=0, y=W, z=0 (floor), z=H (ceiling). */
export type WallAbsorption = readonly [number, number, number, number, number, number];

/** Absorption of the six walls in one third-octave, by its centre. */
export interface AbsorptionBand {
  readonly frequencyHz: number;
  readonly absorption: WallAbsorption;
}

export interface Room {
  readonly size: RoomSize;
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
  readonly volumeCubicMetres: number;
  readonly surfaceSquareMetres: number;
  /** 2000 sqrt(T/V); null where no decay time is known. A soft band, never a cliff. */
  readonly transitionFrequencyHz: number | null;
  /** Ascending frequency; equal modes one by one. */
  readonly modes: readonly Mode[];
}

export type { PositionMetres };
