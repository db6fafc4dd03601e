import type { HeardChart, HeardCurve } from '../../draw/heard-chart.js';
import type { LegendItem } from '../../draw/legend.js';
import type { HeardKind, Listened } from '../../study/listen.js';
import type { Speaker } from '../../words/index.js';

/** Levels shown, dB below the loudest. */
const rangeDb = 50;

/** How each sound is drawn while another is heard. */
const lines: Readonly<Record<HeardKind, HeardCurve['line']>> = {
  dry: 'dots',
  room: 'solid',
  treated: 'dash',
  mode: 'faint',
};

const signs = { solid: 'text-line', dash: 'text-dash', dots: 'dots', faint: 'faint-line' } as const;

/** Level over time of every sound, the one that is heard in front. */
export const heardChart = (
  { seconds, notes, heard }: Listened,
  chosen: HeardKind,
  speaker: Speaker,
): HeardChart => ({
  ...{ seconds, notes, lowestDb: -rangeDb },
  curves: heard.map(({ kind, blocksDb }) => ({
    levels: blocksDb,
    line: lines[kind],
    chosen: kind === chosen,
  })),
  timeLabel: speaker.view('time-axis'),
  levelLabel: speaker.view('listen-level-axis'),
  formatNumber: (value, digits) => speaker.n.number(value, digits),
});

export const heardKey = ({ heard }: Listened, chosen: HeardKind, speaker: Speaker): LegendItem[] => [
  ...heard.map(({ kind }): LegendItem => ({
    sign: kind === chosen ? 'accent-line' : signs[lines[kind]],
    text: speaker.view(`heard-${kind}`),
  })),
  { sign: 'grey', text: speaker.view('key-note') },
];
