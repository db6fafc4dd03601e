/** Two stages of a study as pictures on one scale, with their difference: in words and plain arrays. */
import {
  differenceAt,
  differenceKinds,
  type DifferenceField,
  type DifferenceView,
} from '../draw/difference.js';
import { floorAt, indexAt, kindAt, sampleField } from '../draw/field.js';
import type { PairForm, PairPicture } from '../draw/pair-picture.js';
import type { Field, FieldView } from '../draw/types.js';
import type { PairSnapshot, PairStage } from '../study/pair.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { fieldViewOf } from './field-view.js';

type Grid = NonNullable<PairStage['grid']>;

/** The colours of a difference run so far to each side, dB, for every pair: what is printed can be laid side by side. */
export const differenceReachDb = 20;

/**
 * By how much the second's levels stand higher than its own reference says, in the first's: levels of the same files, or of
 * calibrated ones, are brought to one reference; others each keep their own. dB.
 */
export function levelOffsetDb({ first, second, levels }: PairSnapshot): number {
  if (!first?.grid || !second?.grid || levels === 'relative') return 0;
  const of = ({ grid, recording }: PairStage): number =>
    grid!.referenceDbFs + (levels === 'calibrated' ? (recording?.fullScaleDb ?? 0) : 0);
  return of(second) - of(first);
}

const moved = new WeakMap<Grid, { readonly offsetDb: number; readonly grid: Grid }>();

/** The same grid with its levels told from another reference. */
function movedGrid(grid: Grid, offsetDb: number): Grid {
  if (offsetDb === 0) return grid;
  const known = moved.get(grid);
  if (known?.offsetDb === offsetDb) return known.grid;
  const made: Grid = {
    ...grid,
    levelsDb: grid.levelsDb.map((level) => level + offsetDb),
    limits: { ...grid.limits, noiseFloorDb: grid.limits.noiseFloorDb.map((level) => level + offsetDb) },
  };
  moved.set(grid, { offsetDb, grid: made });
  return made;
}

/** The two as fields on one range of levels; null where one of them is still made. */
export function pairViews(
  study: StudySnapshot,
  pair: PairSnapshot,
  speaker: Speaker,
): readonly [FieldView, FieldView] | null {
  const { first, second } = pair;
  if (!first?.grid || !second?.grid) return null;
  const offsetDb = levelOffsetDb(pair);
  const view = (stage: PairStage, grid: Grid): FieldView | null =>
    fieldViewOf({ ...study, grid, diagnosis: stage.diagnosis, selectedRidge: null }, speaker);
  const [a, b] = [view(first, first.grid), view(second, movedGrid(second.grid, offsetDb))];
  if (!a || !b) return null;
  const top = Math.max(a.valueRange[1], b.valueRange[1]);
  const valueRange = [top - study.choices.rangeDb, top] as const;
  const marks = a.marks.length > 0 ? a.marks : b.marks;
  return [
    { ...a, valueRange, marks },
    { ...b, valueRange, marks },
  ];
}

const differences = new WeakMap<
  Field,
  { readonly of: Field; readonly bottom: number; readonly field: DifferenceField }
>();

/**
 * Second less first, cell by cell. Where only one of them shows something the other counts as its noise or as the bottom of
 * the range: the difference is then at least what is drawn. Where neither does there is none.
 */
export function differenceField([a, b]: readonly [FieldView, FieldView]): DifferenceField {
  const [one, other] = [a.field, b.field];
  const bottom = a.valueRange[0];
  const known = differences.get(one);
  if (known?.of === other && known.bottom === bottom) return known.field;
  const columns = Math.min(one.columns, other.columns);
  const rows = Math.min(one.rows, other.rows);
  const values = new Float32Array(columns * rows);
  const kinds = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const at = row * columns + column;
      const read = [one, other].map((field) => {
        const level = field.values[row * field.columns + column];
        const kind = kindAt(field, field.columnPositions[column], field.rowPositions[row], level);
        const floor = Math.max(bottom, floorAt(field, column));
        return { level: Math.max(level, floor), kind, quiet: kind !== 'signal' || level <= floor };
      });
      const lost = read.some(({ kind }) => kind === 'past-end' || kind === 'unresolved');
      kinds[at] = lost ? 2 : read.every(({ quiet }) => quiet) ? 1 : 0;
      values[at] = read[1].level - read[0].level;
    }
  const { columnPositions, rowPositions } = one;
  const field = { columns, rows, values, kinds, columnPositions, rowPositions };
  differences.set(one, { of: other, bottom, field });
  return field;
}

export interface PairTitles {
  readonly first: string;
  readonly second: string;
}

/** Everything that is drawn; null where one of the two is still made. */
export function pairPicture(
  study: StudySnapshot,
  pair: PairSnapshot,
  titles: PairTitles,
  { form, difference }: { readonly form: PairForm; readonly difference: boolean },
  speaker: Speaker,
): PairPicture | null {
  const views = pairViews(study, pair, speaker);
  if (!views) return null;
  const [a, b] = views;
  const view: DifferenceView | null = difference
    ? {
        field: differenceField(views),
        columnScale: a.columnScale,
        columnRange: a.columnRange,
        rowRange: a.rowRange,
        reach: differenceReachDb,
        cursor: a.cursor,
        columnLabel: a.columnLabel,
        rowLabel: a.rowLabel,
        valueLabel: speaker.view('difference-axis'),
        formatNumber: a.formatNumber,
      }
    : null;
  return {
    form,
    first: { title: titles.first, view: a },
    second: { title: titles.second, view: b },
    difference: view && { title: speaker.view('difference-title'), view },
  };
}

/** Rows of a table of differences per octave, and its times. */
const rowsPerOctave = 6;
const tableSeconds = [0, 0.05, 0.1, 0.2, 0.3, 0.5, 0.8];

export interface DifferenceTable {
  readonly frequenciesHz: readonly number[];
  readonly timesSeconds: readonly number[];
  /** Per frequency and time; null where neither of the two shows anything, or there is no data. */
  readonly differencesDb: readonly (readonly (number | null)[])[];
}

/** The difference at a few times and frequencies. */
export function differenceTable(field: DifferenceField): DifferenceTable {
  const { columnPositions, rowPositions } = field;
  const [from, to] = [columnPositions[0], columnPositions[field.columns - 1]];
  const count = Math.floor(Math.log2(to / from) * rowsPerOctave + 1e-6);
  const frequenciesHz = Array.from({ length: count + 1 }, (_, k) => from * 2 ** (k / rowsPerOctave));
  const last = rowPositions[field.rows - 1];
  const timesSeconds = tableSeconds.filter((seconds) => seconds <= last + 1e-9);
  return {
    frequenciesHz,
    timesSeconds,
    differencesDb: frequenciesHz.map((frequency) =>
      timesSeconds.map((seconds) => differenceValue(field, frequency, seconds).decibels),
    ),
  };
}

/** The difference at a point: its dB, or null with the kind of nothing that is there. */
export function differenceValue(
  field: DifferenceField,
  frequencyHz: number,
  timeSeconds: number,
): { readonly decibels: number | null; readonly kind: (typeof differenceKinds)[number] } {
  const column = indexAt(field.columnPositions, frequencyHz);
  const row = indexAt(field.rowPositions, timeSeconds);
  const { value, kind } = differenceAt(field, { column, row });
  return { decibels: kind === 0 ? value : null, kind: differenceKinds[kind] };
}

/** Both levels and their difference under the cursor. */
export function pairReadout(study: StudySnapshot, pair: PairSnapshot, speaker: Speaker): string {
  const views = pairViews(study, pair, speaker);
  if (!study.cursor || !views) return speaker.view('readout-none');
  const { frequencyHz, timeSeconds } = study.cursor;
  const { decibels, kind } = differenceValue(differenceField(views), frequencyHz, timeSeconds);
  const [firstDb, secondDb] = views.map(({ field }) => sampleField(field, frequencyHz, timeSeconds));
  const where = { frequencyHz, timeSeconds };
  if (kind === 'neither') return speaker.view('comparison-readout-neither', where);
  if (kind === 'past-end') return speaker.view('comparison-readout-past', where);
  return speaker.view('comparison-readout', { ...where, firstDb, secondDb, changeDb: decibels });
}
