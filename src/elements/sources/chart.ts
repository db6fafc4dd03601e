import { indexAt } from '../../draw/field.js';
import type { SourcesChart } from '../../draw/sources-chart.js';
import {
  designedMatrix,
  levelsAtSeat,
  phasesAtSeat,
  plainSetting,
  sourcePhases,
} from '../../study/source-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { sourceNames } from '../../sheet/point-name.js';

const rangeDb = 45;
const stepDb = 5;

export function sourcesChart(
  study: StudySnapshot,
  system: SystemSnapshot,
  seat: number,
  reference: number,
  speaker: Speaker,
): SourcesChart {
  const matrix = designedMatrix(system)!;
  const { sources, sum } = levelsAtSeat(matrix, seat);
  const phases = phasesAtSeat(matrix, reference, seat);
  const shared = sourcePhases(matrix, reference, [seat]);
  // The scale is that of the sources as measured: turning one down must be seen.
  const loudest = Math.max(
    ...levelsAtSeat(system.matrix!, seat).sources.flatMap((levels) => [...levels]),
    ...sum,
  );
  const highest = Math.ceil(loudest / stepDb) * stepDb;
  const names = sourceNames(system, speaker);
  const { fromHz, toHz } = system.design;
  return {
    columnScale: study.choices.axis,
    columnRange: [fromHz, toHz],
    levelRange: [highest - rangeDb, highest],
    columnLabel: speaker.view('frequency-axis'),
    levelLabel: speaker.view('response-axis'),
    phaseLabel: speaker.view('phase-axis', { name: names[reference] }),
    sumLabel: speaker.view('sum'),
    positions: matrix.frequenciesHz,
    sources: names.map((label, k) => ({
      label,
      levels: sources[k],
      phase: k === reference ? null : phases[k],
      band: shared[k].band && ([shared[k].band.fromHz, shared[k].band.toHz] as const),
      quiet: settingOf(system, k).muted,
    })),
    sum,
    cursor: study.cursor && study.cursor.frequencyHz,
    formatNumber: (value, digits) => speaker.n.number(value, digits),
  };
}

/** The setting of one of the grid's sources, without the filters over all. */
export const settingOf = ({ design, arrangement, grid }: SystemSnapshot, source: number) =>
  design.settings[keyOf({ arrangement, grid }, source)] ?? plainSetting;

export const keyOf = (
  { arrangement, grid }: Pick<SystemSnapshot, 'arrangement' | 'grid'>,
  source: number,
): string => arrangement.sources[grid.sources[source]].key;

export function sourcesReadout(
  study: StudySnapshot,
  system: SystemSnapshot,
  seat: number,
  reference: number,
  speaker: Speaker,
): string {
  const { cursor } = study;
  const matrix = designedMatrix(system);
  if (!cursor || !matrix) return speaker.view('readout-none');
  const { frequencyHz } = cursor;
  const { frequenciesHz } = matrix;
  if (frequencyHz < frequenciesHz[0] * 0.999 || frequencyHz > frequenciesHz[frequenciesHz.length - 1] * 1.001)
    return speaker.view('readout-beyond', { frequencyHz });
  const at = Math.round(indexAt(frequenciesHz, frequencyHz));
  const { sources, sum } = levelsAtSeat(matrix, seat);
  const phases = phasesAtSeat(matrix, reference, seat);
  const parts = sourceNames(system, speaker).map((name, k) =>
    speaker.view(k === reference ? 'source-readout' : 'source-readout-phase', {
      ...{ name, levelDb: sources[k][at], degrees: phases[k][at] },
    }),
  );
  return speaker.view('sources-readout', { frequencyHz, sumDb: sum[at], parts: parts.join('; ') });
}
