/** What pictures are made of: plain arrays and strings. Nothing here knows an element or acoustics. */

export type AxisScale = 'linear' | 'log';

/** Colours as CSS strings, read by the caller from custom properties. */
export interface DrawTheme {
  readonly dark: boolean;
  readonly background: string;
  readonly text: string;
  readonly faint: string;
  readonly line: string;
  readonly accent: string;
  readonly fontFamily: string;
  /** Colour scale name, see `colours.ts`. */
  readonly scale: 'dusk' | 'dawn' | 'clear';
}

/** A height field: value[t * columns + f], with its two axes. */
export interface Field {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
  /** Ascending positions of the columns (frequency, Hz) and rows (time, s). */
  readonly columnPositions: Float64Array;
  readonly rowPositions: Float64Array;
  /** Per column: below this the field is not the signal (noise floor); may be -Infinity. */
  readonly columnFloor: Float32Array | null;
  /** Rows past this position rest on no data. */
  readonly rowEnd: number;
  /** Per row: columns below this position mean nothing; null if all do. */
  readonly rowLowest: Float32Array | null;
  /** Per cell, like `values`: height above what the view's own window would leave; at 0 and below it says nothing. */
  readonly aboveWindow?: Float32Array | null;
}

/** A line along the field at one column position, with a label. */
export interface Flag {
  readonly position: number;
  readonly label: string;
  /** Row position to which it is drawn. */
  readonly until: number;
  /** Whether it ends there, instead of going on past what is shown or known; by default it does not. */
  readonly sinks?: boolean;
  readonly selected: boolean;
  /** 'worst' ... the emphasis, 0 to 1. */
  readonly weight: number;
}

/** Marks on the frequency axis: predicted modes, told apart by one, two or three strokes. */
export interface AxisMark {
  readonly position: number;
  readonly strokes: 1 | 2 | 3;
  readonly title: string;
}

/**
 * A limit as a curtain upon the floor: whatever still stands in front of it exceeds the limit. Per column of the field,
 * the row position by which the field must have sunk; NaN where there is no limit.
 */
export interface Curtain {
  readonly at: Float32Array;
  /** A second, later limit, where the first is the start of a band; NaN or null where there is none. */
  readonly further: Float32Array | null;
  readonly label: string;
}

/** What all field pictures share. */
export interface FieldView {
  readonly field: Field;
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly rowRange: readonly [number, number];
  /** Values drawn: [bottom, top]. */
  readonly valueRange: readonly [number, number];
  readonly flags: readonly Flag[];
  readonly marks: readonly AxisMark[];
  readonly curtain?: Curtain | null;
  /** Rows of labels, and lines in each, for which a surface keeps room: as many in pictures that are to have one scale. */
  readonly labelRoom?: { readonly rows: number; readonly lines: number };
  readonly cursor: { readonly column: number; readonly row: number } | null;
  readonly columnLabel: string;
  readonly rowLabel: string;
  readonly valueLabel: string;
  /** Numbers by locale. */
  readonly formatNumber: (value: number, digits: number) => string;
  /** A column's position with its unit. */
  readonly formatColumn?: (column: number) => string;
}

/** Spherical orbit about the middle of the box, radians; zoom 1 fits. */
export interface OrbitView {
  readonly azimuthRadians: number;
  readonly elevationRadians: number;
  readonly zoom: number;
}
