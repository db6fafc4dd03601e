/** An invented field: decaying resonances over a falling noise floor, computed, so that every value is known. */
import type { DrawTheme, Field, FieldView } from '../../src/draw/types.js';
import { Rng } from '../../src/signal/random.js';

export interface Resonance {
  readonly frequencyHz: number;
  readonly decaySeconds: number;
  readonly levelDb: number;
}

export const resonances: readonly Resonance[] = [
  { frequencyHz: 24.3, decaySeconds: 1.9, levelDb: -6 },
  { frequencyHz: 48.2, decaySeconds: 1.3, levelDb: 0 },
  { frequencyHz: 72.8, decaySeconds: 1.1, levelDb: -2 },
  { frequencyHz: 131, decaySeconds: 0.6, levelDb: -6 },
];

export function inventedField(columns = 120, rows = 60, options: { readonly rowEnd?: number } = {}): Field {
  const random = new Rng(7);
  const columnPositions = Float64Array.from({ length: columns }, (_, k) => 20 * 10 ** (k / (columns - 1)));
  const rowPositions = Float64Array.from({ length: rows }, (_, k) => k / (rows - 1));
  const columnFloor = Float32Array.from(columnPositions, (f) => -44 - 6 * Math.log2(f / 20));
  const values = new Float32Array(columns * rows);
  for (let r = 0; r < rows; r += 1)
    for (let c = 0; c < columns; c += 1) {
      const [f, t] = [columnPositions[c], rowPositions[r]];
      let power = 10 ** (columnFloor[c] / 10) * 0.5 * random.uniform();
      for (const { frequencyHz, decaySeconds, levelDb } of resonances)
        power +=
          (10 ** (levelDb / 10) * 10 ** ((-6 * t) / decaySeconds)) /
          (1 + ((f - frequencyHz) / (0.9 + 0.5 / decaySeconds)) ** 2);
      values[r * columns + c] = 10 * Math.log10(power);
    }
  return {
    columns,
    rows,
    values,
    columnPositions,
    rowPositions,
    columnFloor,
    rowEnd: options.rowEnd ?? 0.9,
    rowLowest: null,
  };
}

export const lightTheme: DrawTheme = {
  dark: false,
  background: '#fbfaf7',
  text: '#23211d',
  faint: '#6b675e',
  line: '#d9d5ca',
  accent: '#0b6e8a',
  fontFamily: 'sans-serif',
  scale: 'dawn',
};

export const darkTheme: DrawTheme = {
  dark: true,
  background: '#14171c',
  text: '#e8e6df',
  faint: '#a09d94',
  line: '#3a3f47',
  accent: '#ffb066',
  fontFamily: 'sans-serif',
  scale: 'dusk',
};

export const formatNumber = (value: number, digits: number): string => value.toFixed(digits);

export function inventedView(over: Partial<FieldView> = {}): FieldView {
  return {
    field: inventedField(),
    columnScale: 'log',
    columnRange: [20, 200],
    rowRange: [0, 1],
    valueRange: [-60, 0],
    flags: resonances.map(({ frequencyHz, decaySeconds }, k) => ({
      position: frequencyHz,
      label: `${frequencyHz} Hz\n${decaySeconds} s`,
      until: 0.7,
      selected: k === 1,
      weight: 1 - k / 10,
    })),
    marks: [
      { position: 25, strokes: 1, title: 'first' },
      { position: 60, strokes: 2, title: 'second' },
      { position: 120, strokes: 3, title: 'third' },
    ],
    cursor: null,
    columnLabel: 'Frequency, Hz',
    rowLabel: 'Time, s',
    valueLabel: 'Level, dB',
    formatNumber,
    ...over,
  };
}
