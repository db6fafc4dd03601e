/** Every table as plain rows, and as CSV for other programs: a point for decimals, commas between, units in the heads. */
import type { Diagnosis } from '../diagnosis/types.js';
import type { SeatSpread } from '../seats/index.js';
import { plainSetting } from '../seats/index.js';
import { afterSpreadOf, pairRidges, spreadsOf } from './system-readings.js';
import { optionsOf, ridgesAfter } from './remedy-readings.js';
import type { SystemSnapshot } from './system-types.js';
import type { StudySnapshot } from './types.js';

export type Cell = string | number | boolean | null;

export interface Table {
  /** Stem of the file. */
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Six significant digits: more than any of these figures deserves, and short. */
function cellText(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(Number(value.toPrecision(6))) : '';
  const text = String(value);
  // RFC 4180. A text that a spreadsheet could run as a formula begins with an apostrophe, also after blanks and where the
  // sign is a wide one (OWASP, CSV Injection).
  const safe = typeof value === 'string' && /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) || safe !== text ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** @returns RFC 4180, with a line feed behind each row */
export const csvText = ({ columns, rows }: Table): string =>
  [columns, ...rows].map((row) => `${row.map(cellText).join(',')}\n`).join('');

export function ridgesTable(diagnosis: Diagnosis): Table {
  return {
    name: 'ridges',
    columns: [
      ...[
        'frequency_hz',
        'decay_time_s',
        'decay_time_sd_s',
        'q',
        'limit_s',
        'times_limit',
        'limit',
        'audible',
      ],
      ...['cause', 'candidates', 'recordings', 'remedies'],
    ],
    rows: diagnosis.ridges.map((ridge) => [
      ridge.frequencyHz,
      ridge.decayTimeSeconds,
      ridge.decayTimeSdSeconds,
      ridge.resonance === null ? null : diagnosis.resonances[ridge.resonance].q,
      ridge.limitSeconds,
      ridge.excess,
      ridge.limitName,
      ridge.audible,
      ridge.cause,
      ridge.candidates.map(({ order, weight }) => `${order.join(' ')}: ${weight.toFixed(2)}`).join('; '),
      ridge.seats.map((index) => diagnosis.files[index].label || String(index + 1)).join('; '),
      ridge.remedies.map(({ kind }) => kind).join('; '),
    ]),
  };
}

export const resonancesTable = ({ resonances }: Diagnosis): Table => ({
  name: 'resonances',
  columns: ['frequency_hz', 'frequency_sd_hz', 'decay_time_s', 'decay_time_sd_s', 'q', 'level_db', 'kind'],
  rows: resonances.map((one) => [
    ...[one.frequencyHz, one.frequencySdHz, one.decayTimeSeconds, one.decayTimeSdSeconds, one.q, one.levelDb],
    one.kind,
  ]),
});

export const recordingsTable = ({ recordings }: StudySnapshot): Table => ({
  name: 'recordings',
  columns: [
    ...['label', 'source', 'seat', 'stage', 'x_m', 'y_m', 'z_m', 'source_x_m', 'source_y_m', 'source_z_m'],
    ...['time_reference', 'sample_rate_hz', 'seconds', 'onset_s', 'channel', 'sha256'],
  ],
  rows: recordings.map((one) => [
    ...[one.label, one.sourceName ?? '', one.seatName ?? '', one.stage],
    ...[one.seat?.x ?? null, one.seat?.y ?? null, one.seat?.z ?? null],
    ...[one.source?.x ?? null, one.source?.y ?? null, one.source?.z ?? null],
    one.timeReference,
    one.reduced?.sampleRate ?? one.sampleRate,
    one.reduced?.seconds ?? one.samples.length / one.sampleRate,
    one.onsetSeconds + (one.reduced?.startSeconds ?? 0),
    one.channel,
    one.hash,
  ]),
});

const seatNames = ({ arrangement, grid }: SystemSnapshot): string[] =>
  grid.seats.map((seat) => arrangement.seats[seat].name || arrangement.seats[seat].key);

/** Levels over frequency: mean, spread and every seat, all sources alike and through the design. */
export function levelsTable(snapshot: SystemSnapshot): Table | null {
  const spreads = spreadsOf(snapshot);
  if (!spreads || !snapshot.matrix) return null;
  const names = seatNames(snapshot);
  const of = ({ meanDb, deviationDb, levelsDb }: SeatSpread, f: number): number[] => [
    meanDb[f],
    deviationDb[f],
    ...names.map((_, seat) => levelsDb[seat * meanDb.length + f]),
  ];
  const heads = (stage: string): string[] =>
    ['mean', 'deviation', ...names].map((name) => `${stage}_${name.replace(/\s+/g, '_')}_db`);
  return {
    name: 'levels',
    columns: ['frequency_hz', ...heads('before'), ...heads('designed')],
    rows: Array.from(snapshot.matrix.frequenciesHz, (frequency, f) => [
      frequency,
      ...of(spreads.before, f),
      ...of(spreads.designed, f),
    ]),
  };
}

/** One row per seat. */
export function seatsTable(snapshot: SystemSnapshot): Table | null {
  const spreads = spreadsOf(snapshot);
  if (!spreads) return null;
  const { arrangement, grid, design } = snapshot;
  return {
    name: 'seats',
    columns: [
      ...['seat', 'x_m', 'y_m', 'z_m', 'weight', 'level_before_db', 'level_designed_db'],
      ...['deviation_before_db', 'deviation_designed_db'],
    ],
    rows: grid.seats.map((seat, k) => {
      const { key, name, at } = arrangement.seats[seat];
      return [
        ...[name || key, at?.x ?? null, at?.y ?? null, at?.z ?? null, design.weights[key] ?? 1],
        ...[spreads.before.seatLevelDb[k], spreads.designed.seatLevelDb[k]],
        ...[spreads.before.seatDeviationDb[k], spreads.designed.seatDeviationDb[k]],
      ];
    }),
  };
}

export const sourcesTable = ({ arrangement, grid, design }: SystemSnapshot): Table => ({
  name: 'sources',
  columns: ['source', 'x_m', 'y_m', 'z_m', 'gain_db', 'delay_ms', 'polarity', 'muted', 'filters'],
  rows: grid.sources.map((source) => {
    const { key, name, at } = arrangement.sources[source];
    const { gainDb, delaySeconds, inverted, muted, bands } = design.settings[key] ?? plainSetting;
    return [
      ...[name || key, at?.x ?? null, at?.y ?? null, at?.z ?? null, gainDb, 1000 * delaySeconds],
      ...[inverted ? 'inverted' : 'normal', muted],
      bands.map((band) => `${band.kind} ${band.frequencyHz} Hz ${band.gainDb} dB Q ${band.q}`).join('; '),
    ];
  }),
});

export const comparisonTable = (before: Diagnosis, after: Diagnosis): Table => ({
  name: 'comparison',
  columns: [
    ...['frequency_hz', 'before_s', 'before_sd_s', 'after_s', 'after_sd_s', 'change_s', 'change_sd_s'],
    ...['larger_than_uncertainty', 'limit_s', 'ridge_after'],
  ],
  rows: pairRidges(before, after).map((pair) => [
    (pair.before ?? pair.after)!.frequencyHz,
    pair.before?.decayTimeSeconds ?? null,
    pair.before?.decayTimeSdSeconds ?? null,
    ...[pair.afterSeconds, pair.afterSdSeconds, pair.changeSeconds, pair.changeSdSeconds, pair.sure],
    (pair.before ?? pair.after)!.limitSeconds,
    pair.after !== null,
  ]),
});

/** Everything that can be done about every ridge, with what is expected after it. */
export const optionsTable = (snapshot: SystemSnapshot): Table => ({
  name: 'options',
  columns: [
    ...['frequency_hz', 'decay_time_s', 'option', 'standing', 'against', 'expected_s', 'expected_change_db'],
    'side_effects',
  ],
  rows: (snapshot.before?.diagnosis.ridges ?? []).flatMap((ridge, index) =>
    optionsOf(snapshot, index).map((option) => [
      ...[ridge.frequencyHz, ridge.decayTimeSeconds, option.kind, option.standing, option.against],
      ...[option.expectedSeconds, option.expectedDb],
      option.sideEffects
        .map((effect) =>
          effect.on === 'ridge'
            ? `${effect.frequencyHz.toFixed(1)} Hz ${(effect.changeDb ?? 0).toFixed(1)} dB`
            : `seat ${effect.seat + 1} ${effect.standingDb.toFixed(1)} dB re its mean`,
        )
        .join('; '),
    ]),
  ),
});

/** Differences in level of two stages, second less first; empty where neither shows anything. */
export const differencesTable = (table: {
  readonly frequenciesHz: readonly number[];
  readonly timesSeconds: readonly number[];
  readonly differencesDb: readonly (readonly (number | null)[])[];
}): Table => ({
  name: 'difference',
  columns: ['frequency_hz', ...table.timesSeconds.map((seconds) => `at_${seconds}_s_db`)],
  rows: table.frequenciesHz.map((frequency, f) => [frequency, ...table.differencesDb[f]]),
});

/** Each ridge without the filters, as expected with them, and as fitted through them. */
export const remedyTable = (snapshot: SystemSnapshot): Table => ({
  name: 'remedy',
  columns: [
    ...['frequency_hz', 'limit_s', 'before_s', 'before_sd_s', 'expected_s', 'expected_change_db'],
    ...['fitted_s', 'fitted_sd_s', 'larger_than_uncertainty'],
  ],
  rows: (ridgesAfter(snapshot) ?? []).map(({ ridge, expectedSeconds, expectedDb, fitted }) => [
    ...[ridge.frequencyHz, ridge.limitSeconds, ridge.decayTimeSeconds, ridge.decayTimeSdSeconds],
    ...[expectedSeconds, expectedDb, fitted?.afterSeconds ?? null, fitted?.afterSdSeconds ?? null],
    fitted?.sure ?? null,
  ]),
});

/** Figures of the spread, as measured, as designed and as measured later. */
export function spreadTable(snapshot: SystemSnapshot): Table | null {
  const spreads = spreadsOf(snapshot);
  if (!spreads) return null;
  const after = afterSpreadOf(snapshot);
  const row = (stage: string, one: SeatSpread): Cell[] => [
    ...[stage, one.meanSpatialVariance, one.meanOutputLevelDb, one.within3Db, one.within5Db],
  ];
  return {
    name: 'spread',
    columns: [
      'stage',
      'mean_spatial_variance_db2',
      'mean_output_level_db',
      'share_within_3_db',
      'share_within_5_db',
    ],
    rows: [
      row('before', spreads.before),
      row('designed', spreads.designed),
      ...(after ? [row('after', after)] : []),
    ],
  };
}
