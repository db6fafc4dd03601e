/** Levels, filters and decays with and without filters over all sources, ready to be drawn. */
import { indexAt } from '../draw/field.js';
import type { LegendItem } from '../draw/legend.js';
import type { RemedyChart } from '../draw/remedy-chart.js';
import { levelsOfSeat, remedyReading, ridgesAfter } from '../study/remedy-readings.js';
import type { SystemSnapshot } from '../study/system-types.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { seatNames } from './point-name.js';

const rangeDb = 45;
const levelStepDb = 5;
/** The scale of the gains grows with what is set, by such steps; boosts end at 4 dB. dB. */
const leastCutDb = -15;
const highestGainDb = 6;
const gainStepDb = 6;
const longestShownSeconds = 6;

/** Which curves are shown: those of one seat by its index in the grid, or the mean of all. */
export type RemedySeat = number | null;

export const remedySeatName = (system: SystemSnapshot, seat: RemedySeat, speaker: Speaker): string =>
  seat === null ? speaker.view('choose-mean') : seatNames(system, speaker)[seat];

interface Levels {
  readonly before: Float64Array;
  readonly after: Float64Array;
}

function levelsShown(system: SystemSnapshot, seat: RemedySeat): Levels {
  const { before, after } = remedyReading(system)!;
  return seat === null
    ? { before: before.meanDb, after: after.meanDb }
    : { before: levelsOfSeat(before, seat), after: levelsOfSeat(after, seat) };
}

/** The scale of the gains, the same while a handle is dragged within it. */
export function gainRangeOf({ design }: SystemSnapshot): [number, number] {
  const deepest = Math.min(leastCutDb, ...design.bands.map(({ gainDb }) => gainDb - 1));
  return [Math.floor(deepest / gainStepDb) * gainStepDb, highestGainDb];
}

/** @param held Index of the band that has the focus; null for none. */
export function remedyChart(
  study: StudySnapshot,
  system: SystemSnapshot,
  shown: { readonly seat: RemedySeat; readonly held: number | null },
  speaker: Speaker,
): RemedyChart {
  const reading = remedyReading(system)!;
  const { fromHz, toHz } = system.design;
  const { before, after } = levelsShown(system, shown.seat);
  // One scale for every seat and for both curves.
  const loudest = Math.max(...reading.before.levelsDb, ...reading.after.levelsDb);
  const top = Math.ceil(loudest / levelStepDb) * levelStepDb;
  const rows = (ridgesAfter(system) ?? []).filter(
    ({ ridge }) => ridge.frequencyHz >= fromHz && ridge.frequencyHz <= toHz,
  );
  const filtered = system.design.bands.length > 0;
  const decays = rows.map(({ ridge, expectedSeconds, fitted }) => ({
    position: ridge.frequencyHz,
    before: ridge.decayTimeSeconds,
    beforeSd: ridge.decayTimeSdSeconds,
    after: filtered ? (fitted?.afterSeconds ?? expectedSeconds) : null,
    afterSd: fitted?.afterSdSeconds ?? null,
    fitted: typeof fitted?.afterSeconds === 'number',
    limit: ridge.limitSeconds,
  }));
  const longest = Math.max(
    0.5,
    ...decays.map((one) => Math.max(one.before ?? 0, one.after ?? 0, one.limit ?? 0)),
  );
  const seats = reading.after.seatLevelDb.length;
  return {
    columnScale: study.choices.axis,
    columnRange: [fromHz, toHz],
    levelRange: [top - rangeDb, top],
    gainRange: gainRangeOf(system),
    decayRange: [0, Math.min(longestShownSeconds, Math.ceil(longest * 2.2) / 2)],
    columnLabel: speaker.view('frequency-axis'),
    levelLabel: speaker.view('response-axis'),
    gainLabel: speaker.view('gain-axis'),
    decayLabel: speaker.view('remedy-decay-axis'),
    beforeLabel: speaker.view('remedy-before'),
    afterLabel: speaker.view('remedy-after'),
    positions: system.matrix!.frequenciesHz,
    before,
    after,
    spread: seats > 1 ? { low: reading.after.lowestDb, high: reading.after.highestDb } : null,
    gainPositions: reading.frequenciesHz,
    gain: reading.gainDb,
    bandGains: reading.bandGainsDb,
    held: shown.held,
    decays,
    cursor: study.cursor && study.cursor.frequencyHz,
    formatNumber: (value, digits) => speaker.n.number(value, digits),
  };
}

export function remedyKey(system: SystemSnapshot, speaker: Speaker): LegendItem[] {
  const item = (sign: LegendItem['sign'], code: string): LegendItem => ({ sign, text: speaker.view(code) });
  return [
    item('text-dash', 'key-remedy-before'),
    item('accent-line', 'key-remedy-after'),
    item('faint-line', 'key-remedy-limit'),
    ...(system.grid.seats.length > 1 ? [item('grey', 'key-remedy-spread')] : []),
  ];
}

export const remedyCaption = (system: SystemSnapshot, seat: RemedySeat, speaker: Speaker): string => {
  const where = remedySeatName(system, seat, speaker);
  const { fromHz, toHz } = system.design;
  return speaker.view('remedy-caption', { where: where[0].toUpperCase() + where.slice(1), fromHz, toHz });
};

/** Level without and with the filters, and their gain, at the cursor. */
export function remedyReadout(
  study: StudySnapshot,
  system: SystemSnapshot,
  seat: RemedySeat,
  speaker: Speaker,
): string {
  const reading = remedyReading(system);
  if (!study.cursor || !reading) return speaker.view('readout-none');
  const { frequencyHz } = study.cursor;
  const { frequenciesHz } = system.matrix!;
  if (frequencyHz < frequenciesHz[0] * 0.999 || frequencyHz > frequenciesHz[frequenciesHz.length - 1] * 1.001)
    return speaker.view('readout-beyond', { frequencyHz });
  const at = Math.round(indexAt(frequenciesHz, frequencyHz));
  const { before, after } = levelsShown(system, seat);
  const gainDb = reading.gainDb[Math.round(indexAt(reading.frequenciesHz, frequencyHz))];
  return speaker.view('remedy-readout', {
    ...{ frequencyHz, gainDb, beforeDb: before[at], afterDb: after[at] },
  });
}
