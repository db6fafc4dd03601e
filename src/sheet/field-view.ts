import { indexAt, kindAt, sampleField } from '../draw/field.js';
import type { AxisMark, Curtain, Field, FieldView, Flag } from '../draw/types.js';
import { aboveWindowDb, sinkLimit } from '../study/grid-limits.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { ridgeName } from './ridge-name.js';
import { orderText } from './ridges.js';

type Grid = NonNullable<StudySnapshot['grid']>;

/**
 * Noise scatters: the power of one window of it exceeds its mean by 6 dB in one cell of fifty (exponential distribution,
 * e^-4). What stands no higher than that above the mean is drawn as noise.
 */
const noiseMarginDb = 6;

const fields = new WeakMap<Grid, Field>();

/** The grid as a field to draw: the same levels, no copy; one field per grid, so that pictures can tell new data. */
export function fieldOf(grid: Grid): Field {
  let field = fields.get(grid);
  if (!field) {
    field = {
      columns: grid.frequenciesHz.length,
      rows: grid.timesSeconds.length,
      values: grid.levelsDb,
      columnPositions: grid.frequenciesHz,
      rowPositions: grid.timesSeconds,
      columnFloor: grid.limits.noiseFloorDb.map((level) => level + noiseMarginDb),
      rowEnd: grid.limits.dataEndSeconds,
      rowLowest: grid.limits.lowestHz,
      aboveWindow: aboveWindowDb(grid),
    };
    fields.set(grid, field);
  }
  return field;
}

/** Steps of the level's top: fixed limits unless something is louder than the first slice. */
const topStepDb = 5;

const tops = new WeakMap<Grid, number>();
function topOf(grid: Grid): number {
  let top = tops.get(grid);
  if (top === undefined) {
    let loudest = -Infinity;
    for (const level of grid.levelsDb) if (level > loudest) loudest = level;
    top = loudest > 0.5 ? Math.ceil(loudest / topStepDb) * topStepDb : 0;
    tops.set(grid, top);
  }
  return top;
}

/** A beat may hide a ridge for so long without its having sunk, s. */
const longestBeatSeconds = 0.12;

/** Where a ridge sinks into the noise or below the range shown; `sinks` is false where the picture or the data end first. */
function sinkOf(field: Field, positionHz: number, bottomDb: number): { until: number; sinks: boolean } {
  const column = Math.round(indexAt(field.columnPositions, positionHz));
  const floor = Math.max(bottomDb, field.columnFloor?.[column] ?? -Infinity);
  let last = 0;
  for (let row = 0; row < field.rows; row += 1) {
    const time = field.rowPositions[row];
    if (time > field.rowEnd) return { until: field.rowPositions[last], sinks: false };
    if (field.values[row * field.columns + column] > floor) last = row;
    else if (time > field.rowPositions[last] + longestBeatSeconds) break;
  }
  return { until: field.rowPositions[last], sinks: last < field.rows - 1 };
}

function flagsOf(snapshot: StudySnapshot, field: Field, bottomDb: number, speaker: Speaker): Flag[] {
  const ridges = snapshot.diagnosis?.ridges ?? [];
  const worst = Math.max(...ridges.map(({ excess }) => excess ?? 1), 1);
  return ridges.map((ridge, index) => {
    const name = ridgeName(ridge, speaker);
    return {
      position: ridge.frequencyHz,
      label: [
        speaker.n.hertz(ridge.frequencyHz),
        ...(ridge.decayTimeSeconds === null ? [] : [speaker.n.seconds(ridge.decayTimeSeconds)]),
        ...(name === null ? [] : [name]),
      ].join('\n'),
      ...sinkOf(field, ridge.frequencyHz, bottomDb),
      selected: snapshot.selectedRidge === index,
      weight: Math.min(1, (ridge.excess ?? 1) / worst),
    };
  });
}

function curtainOf(
  snapshot: StudySnapshot,
  field: Field,
  bottomDb: number,
  speaker: Speaker,
): Curtain | null {
  const floorDb = Float32Array.from(field.columnPositions, (_, f) =>
    Math.max(bottomDb, field.columnFloor?.[f] ?? -Infinity),
  );
  const limit = sinkLimit(snapshot, floorDb);
  return (
    limit && {
      ...limit,
      label: speaker.view('curtain', { limit: speaker.term('limits', snapshot.choices.limit) }),
    }
  );
}

const strokes = { axial: 1, tangential: 2, oblique: 3, plan: 2, mixed: 3 } as const;

/** How many strokes stand for a mode: as many as pairs of walls take part. */
export const strokesOf = (kind: keyof typeof strokes): 1 | 2 | 3 => strokes[kind];

export function marksOf({ diagnosis, choices }: StudySnapshot, speaker: Speaker): AxisMark[] {
  return (diagnosis?.room?.modes ?? [])
    .filter(({ frequencyHz }) => frequencyHz >= choices.fromHz && frequencyHz <= choices.toHz)
    .map(({ order, kind, frequencyHz }) => ({
      position: frequencyHz,
      strokes: strokes[kind],
      title: speaker.view('mode-mark', {
        order: orderText(order),
        kind: speaker.term('modeKinds', kind),
        frequencyHz,
      }),
    }));
}

interface Made {
  readonly from: readonly unknown[];
  readonly view: FieldView;
}

const made = new WeakMap<Grid, Made>();

/**
 * What the pictures of a study show; null without a grid. Made once for all pictures of it, and again only where
 * something changed that they show: a picture sees by identity that it need not draw.
 */
export function fieldViewOf(snapshot: StudySnapshot, speaker: Speaker): FieldView | null {
  const { grid, choices, cursor, diagnosis, selectedRidge } = snapshot;
  if (!grid || grid.timesSeconds.length < 2 || grid.frequenciesHz.length < 2) return null;
  const from = [speaker, choices, diagnosis, selectedRidge];
  let known = made.get(grid);
  if (!known || known.from.some((part, k) => part !== from[k])) {
    known = { from, view: makeView(grid, snapshot, speaker) };
    made.set(grid, known);
  }
  return { ...known.view, cursor: cursor && { column: cursor.frequencyHz, row: cursor.timeSeconds } };
}

function makeView(grid: Grid, snapshot: StudySnapshot, speaker: Speaker): FieldView {
  const field = fieldOf(grid);
  const top = topOf(grid);
  const bottom = top - snapshot.choices.rangeDb;
  return {
    field,
    columnScale: snapshot.choices.axis,
    columnRange: [grid.frequenciesHz[0], grid.frequenciesHz[field.columns - 1]],
    rowRange: [grid.timesSeconds[0], grid.timesSeconds[field.rows - 1]],
    valueRange: [bottom, top],
    flags: flagsOf(snapshot, field, bottom, speaker),
    marks: marksOf(snapshot, speaker),
    curtain: curtainOf(snapshot, field, bottom, speaker),
    cursor: null,
    columnLabel: speaker.view('frequency-axis'),
    rowLabel: speaker.view('time-axis'),
    valueLabel: speaker.view('level-axis'),
    formatNumber: (value, digits) => speaker.n.number(value, digits),
    formatColumn: (frequencyHz) => speaker.n.hertz(frequencyHz),
  };
}

/** What a point of the picture says: its level, or why there is none. */
export function readout(snapshot: StudySnapshot, speaker: Speaker): string {
  const { grid, cursor } = snapshot;
  if (!grid || !cursor) return speaker.view('readout-none');
  const field = fieldOf(grid);
  const { frequencyHz, timeSeconds } = cursor;
  const levelDb = sampleField(field, frequencyHz, timeSeconds);
  const kind = kindAt(field, frequencyHz, timeSeconds, levelDb);
  return speaker.view(kind === 'signal' ? 'readout' : `readout-${kind}`, {
    frequencyHz,
    timeSeconds,
    levelDb,
  });
}
