import type { RecordingChart } from '../../draw/recording-chart.js';
import { notesOf, rangeBoundsDb, rangeState } from '../../study/readings.js';
import { kept } from '../../sheet/kept.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';

export type Examination = NonNullable<StudySnapshot['examinations'][number]>;
export type TimeShown = 'file' | 'first';

/** The scale of ranges goes at least so far, dB, so that a poor recording looks poor. */
const leastBarTopDb = 60;
/** Part of the file before the onset that is shown with the first seconds. */
const leadSeconds = 0.05;

const upTo = (value: number, step: number): number => Math.ceil(value / step) * step;

/** The picture of one examined recording; times from its onset. */
export function recordingChart(
  snapshot: StudySnapshot,
  index: number,
  examination: Examination,
  timeShown: TimeShown,
  speaker: Speaker,
): RecordingChart {
  const { trace, ranges } = examination;
  const { choices, cursor } = snapshot;
  const first = -trace.onsetSeconds;
  const dataEnd = trace.durationSeconds - trace.onsetSeconds;
  const usableEnd = trace.usableEndSeconds === null ? null : trace.usableEndSeconds - trace.onsetSeconds;
  let peak = 0;
  for (const values of [trace.lowest, trace.highest])
    for (const value of values) peak = Math.max(peak, Math.abs(value));
  const bottom = -Math.max(choices.rangeDb, trace.noiseDb === null ? 0 : upTo(8 - trace.noiseDb, 10));
  const bars = ranges.map(({ fromHz, toHz, rangeDb }) => ({
    from: fromHz,
    to: toHz,
    value: rangeDb,
    state: rangeState(rangeDb),
  }));
  const edges: [number, number] = [bars[0]?.from ?? choices.fromHz, bars.at(-1)?.to ?? choices.toHz];
  const { doubtful, least } = rangeBoundsDb;
  const marks = [{ at: 0, label: speaker.view('mark-onset') }];
  if (usableEnd !== null && usableEnd < dataEnd - trace.stepSeconds)
    marks.push({ at: usableEnd, label: speaker.view('mark-usable', { seconds: usableEnd }) });
  for (const { code, params } of notesOf(snapshot, index))
    if ((code === 'truncated' || code === 'late-energy') && typeof params.atSeconds === 'number')
      marks.push({
        at: params.atSeconds,
        label: speaker.view(code === 'truncated' ? 'mark-cut' : 'mark-late'),
      });
  return {
    timeRange: timeShown === 'file' ? [first, dataEnd] : [Math.max(first, -leadSeconds), choices.spanSeconds],
    first,
    step: trace.stepSeconds,
    lowest: trace.lowest,
    highest: trace.highest,
    peak: peak || 1,
    levels: trace.levelsDb,
    levelRange: [bottom, 0],
    noise: trace.noiseDb,
    usable: usableEnd === null ? null : [0, usableEnd],
    dataEnd,
    marks,
    bars,
    barRange: [0, Math.max(leastBarTopDb, ...bars.map(({ value }) => Math.min(120, upTo(value, 20))))],
    barLimits: [
      { value: doubtful, label: speaker.view('range-limit-read', { rangeDb: doubtful }) },
      { value: least, label: speaker.view('range-limit-least', { rangeDb: least }) },
    ],
    bandScale: choices.axis,
    bandRange: edges,
    cursor: cursor && { time: cursor.timeSeconds, frequency: cursor.frequencyHz },
    labels: {
      waveform: speaker.view('waveform-axis'),
      level: speaker.view('band-level-axis'),
      time: speaker.view('onset-time-axis'),
      range: speaker.view('range-axis'),
      frequency: speaker.view('frequency-axis'),
      noise: speaker.view('noise-area'),
    },
    formatNumber: (value, digits) => speaker.n.number(value, digits),
  };
}

/** Level and range under the cursor, in words. */
export function recordingReadout(
  snapshot: StudySnapshot,
  { trace, ranges }: Examination,
  speaker: Speaker,
): string {
  const { cursor } = snapshot;
  if (!cursor) return speaker.view('readout-none');
  const { timeSeconds, frequencyHz } = cursor;
  const at = timeSeconds + trace.onsetSeconds;
  const column = Math.floor(at / trace.stepSeconds);
  const kind =
    at > trace.durationSeconds
      ? '-past-end'
      : timeSeconds < 0
        ? '-before'
        : trace.usableEndSeconds === null || at > trace.usableEndSeconds
          ? '-noise'
          : '';
  const level = speaker.view(`recording-readout${kind}`, {
    timeSeconds,
    levelDb: trace.levelsDb[Math.min(trace.levelsDb.length - 1, Math.max(0, column))],
  });
  const band = ranges.find(({ fromHz, toHz }) => frequencyHz >= fromHz && frequencyHz < toHz);
  return band
    ? `${level}; ${speaker.view('band-readout', { centreHz: band.centreHz, rangeDb: band.rangeDb })}`
    : level;
}

/** Points of a small picture of the level, in a box of 100 by 20: what decays, and the whole. */
export const sparkline = kept(({ trace }: Examination): { whole: string; usable: string } => {
  const points = 100;
  const bottom = Math.min(-30, trace.noiseDb ?? -60);
  const at = (k: number): string => {
    const from = Math.floor((k / points) * trace.levelsDb.length);
    const to = Math.max(from + 1, Math.floor(((k + 1) / points) * trace.levelsDb.length));
    const level = Math.max(...trace.levelsDb.subarray(from, to));
    return `${k},${(20 * Math.min(1, level / bottom)).toFixed(1)}`;
  };
  const all = Array.from({ length: points }, (_, k) => at(k));
  const place = (seconds: number): number => Math.floor((seconds / trace.durationSeconds) * points);
  const end = trace.usableEndSeconds === null ? 0 : place(trace.usableEndSeconds);
  return { whole: all.join(' '), usable: all.slice(place(trace.onsetSeconds), end + 1).join(' ') };
});
