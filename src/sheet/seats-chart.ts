import { indexAt } from '../draw/field.js';
import type { ResponseChart } from '../draw/response-chart.js';
import { afterSpreadOf, spreadsOf } from '../study/system-readings.js';
import type { SystemSnapshot } from '../study/system-types.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { marksOf } from './field-view.js';
import { pointName, seatNames } from './point-name.js';

/** All sources alike as measured, through the design, or a later stage as measured. */
export type Shown = 'before' | 'designed' | 'after';

export type SeatSpread = NonNullable<ReturnType<typeof spreadsOf>>['before'];

/** A range that shows every seat and no null to its bottom, dB. */
const rangeDb = 45;
const stepDb = 5;

const afters = new WeakMap<object, SeatSpread | null>();

export function spreadShown(system: SystemSnapshot, shown: Shown): SeatSpread | null {
  if (shown !== 'after') return spreadsOf(system)?.[shown] ?? null;
  if (!system.afterMatrix) return null;
  if (!afters.has(system.afterMatrix)) afters.set(system.afterMatrix, afterSpreadOf(system));
  return afters.get(system.afterMatrix)!;
}

export const stagesShown = (system: SystemSnapshot): Shown[] => [
  'before',
  ...(spreadsOf(system)?.designed.meanDb === undefined || isAsMeasured(system)
    ? []
    : (['designed'] as const)),
  ...(system.afterMatrix ? (['after'] as const) : []),
];

/** Whether the design leaves everything as it was measured. */
export function isAsMeasured(system: SystemSnapshot): boolean {
  const spreads = spreadsOf(system);
  if (!spreads) return true;
  const { before, designed } = spreads;
  return before.levelsDb.every((level, k) => level === designed.levelsDb[k]);
}

/** What the shown stage is called. */
export function stageName(system: SystemSnapshot, shown: Shown, speaker: Speaker): string {
  if (shown === 'designed') return speaker.view('stage-designed');
  const stage = system.arrangement.stages[shown === 'after' ? (system.afterStage ?? 0) : system.stage];
  return stage ? speaker.view('stage-measured-named', { stage }) : speaker.view('stage-measured');
}

/** Seats of the later stage are its own: named as many as there are levels. */
function namesFor(system: SystemSnapshot, count: number, speaker: Speaker): string[] {
  const names = seatNames(system, speaker);
  return Array.from({ length: count }, (_, k) => names[k] ?? speaker.view('seat-number', { number: k + 1 }));
}

export function frequenciesShown(system: SystemSnapshot, shown: Shown): Float64Array {
  return (shown === 'after' ? system.afterMatrix : system.matrix)!.frequenciesHz;
}

export const levelsOfSeat = ({ levelsDb, meanDb }: SeatSpread, seat: number): Float64Array =>
  levelsDb.subarray(seat * meanDb.length, (seat + 1) * meanDb.length);

/** Where the scale ends, the same for every stage: what was measured and what is designed are on one scale. */
function rangeOf(system: SystemSnapshot): [number, number] {
  let loudest = -Infinity;
  for (const shown of ['before', 'designed', 'after'] as const)
    for (const level of spreadShown(system, shown)?.levelsDb ?? []) loudest = Math.max(loudest, level);
  const top = Math.ceil(loudest / stepDb) * stepDb;
  return [top - rangeDb, top];
}

export function seatsChart(
  study: StudySnapshot,
  system: SystemSnapshot,
  shown: Shown,
  speaker: Speaker,
): ResponseChart {
  const spread = spreadShown(system, shown)!;
  const positions = frequenciesShown(system, shown);
  const { fromHz, toHz } = system.design;
  const names = namesFor(system, spread.seatLevelDb.length, speaker);
  return {
    columnScale: study.choices.axis,
    columnRange: [fromHz, toHz],
    valueRange: rangeOf(system),
    columnLabel: speaker.view('frequency-axis'),
    valueLabel: speaker.view('response-axis'),
    marks: marksOf(study, speaker).filter(({ position }) => position >= fromHz && position <= toHz),
    cursor: study.cursor && study.cursor.frequencyHz,
    formatNumber: (value, digits) => speaker.n.number(value, digits),
    curves: [
      ...names.map((label, seat) => ({
        ...{ label, positions, values: levelsOfSeat(spread, seat), main: false },
      })),
      { label: speaker.view('mean'), positions, values: spread.meanDb, main: true },
    ],
    spread: { positions, low: spread.lowestDb, high: spread.highestDb },
    tolerance: null,
    extremes: [],
  };
}

/** Mean, spread, and which seats are the quietest and the loudest at the cursor. */
export function seatsReadout(
  study: StudySnapshot,
  system: SystemSnapshot,
  shown: Shown,
  speaker: Speaker,
): string {
  const { cursor } = study;
  const spread = spreadShown(system, shown);
  if (!cursor || !spread) return speaker.view('readout-none');
  const positions = frequenciesShown(system, shown);
  const { frequencyHz } = cursor;
  if (frequencyHz < positions[0] * 0.999 || frequencyHz > positions[positions.length - 1] * 1.001)
    return speaker.view('readout-beyond', { frequencyHz });
  const at = Math.round(indexAt(positions, frequencyHz));
  const names = namesFor(system, spread.seatLevelDb.length, speaker);
  const levels = names.map((_, seat) => levelsOfSeat(spread, seat)[at]);
  const place = (choose: (...values: number[]) => number): string => names[levels.indexOf(choose(...levels))];
  return speaker.view(names.length > 1 ? 'seats-readout' : 'response-readout', {
    ...{ frequencyHz, levelDb: spread.meanDb[at], meanDb: spread.meanDb[at] },
    deviationDb: spread.deviationDb[at],
    lowest: place(Math.min),
    lowestDb: Math.min(...levels),
    highest: place(Math.max),
    highestDb: Math.max(...levels),
  });
}

export interface GridCell {
  readonly count: number;
}

/** Recordings of the designed stage by source and seat, with names; what is missing has none. */
export function pointGrid({ arrangement, stage }: SystemSnapshot, speaker: Speaker) {
  const rows = arrangement.cells[stage] ?? [];
  return {
    seats: arrangement.seats.map((seat) => pointName(seat, 'seat', speaker)),
    sources: arrangement.sources.map((source, k) => ({
      name: pointName(source, 'source', speaker),
      counts: (rows[k] ?? []).map((indices) => indices.length),
    })),
  };
}
