import { indexAt } from '../draw/field.js';
import { shareWithin } from '../draw/response-chart.js';
import type { LegendItem } from '../draw/legend.js';
import type { ResponseChart, ResponseCurve } from '../draw/response-chart.js';
import { overNoiseDb } from '../study/readings.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { marksOf } from './field-view.js';
import { kept } from './kept.js';

export type Response = NonNullable<StudySnapshot['responses'][number]>;

/** A window of levels: half its height, its middle, and the range of frequencies it covers. */
export interface Tolerance {
  readonly halfDb: number;
  readonly levelDb: number;
  readonly fromHz: number;
  readonly toHz: number;
}

/** The scale's top steps with the loudest, dB. */
const topStepDb = 5;
/** Peaks and dips that are marked; the table has the others. */
const mostMarked = 10;
/** Steps in which the best place of a window is looked for, dB. */
const placeStepDb = 0.1;
const belowMeanDb = 10;

export interface Seat {
  readonly index: number;
  readonly label: string;
  /** Whether levels are dB re 20 µPa for a sine at full scale, and not re the file's scale. */
  readonly calibrated: boolean;
  readonly response: Response;
}

/** The recordings that are overlaid: the shown one, and the others of its stage; with what they are called. */
export function seatsOf(snapshot: StudySnapshot, all: boolean, speaker: Speaker): Seat[] {
  const { recordings, responses, active } = snapshot;
  const stage = recordings[active]?.stage;
  const shown = recordings.flatMap(({ label, stage: own, fullScaleDb = null }, index) => {
    const response = responses[index];
    if (!response || (index !== active && (!all || own !== stage))) return [];
    return [{ index, label: label || speaker.view('this-recording'), response, fullScaleDb }];
  });
  // One scale for all that are shown: re 20 µPa only where each is calibrated.
  const calibrated = shown.every(({ fullScaleDb }) => fullScaleDb !== null);
  return shown.map(({ response, fullScaleDb, ...seat }) => ({
    ...seat,
    calibrated,
    response: calibrated ? raised(response, fullScaleDb!) : response,
  }));
}

const raised = kept((response: Response, byDb: number): Response => ({
  ...response,
  levelsDb: response.levelsDb.map((level) => level + byDb),
  noiseDb: response.noiseDb.map((level) => level + byDb),
}));

export interface Spread {
  readonly positions: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly medianDb: number;
  readonly mostDb: number;
  readonly mostHz: number;
}

/** Lowest and highest of the seats; null for one alone. The engine gives every recording the same frequencies. */
export function spreadOf(seats: readonly Seat[]): Spread | null {
  if (seats.length < 2) return null;
  const positions = seats[0].response.frequenciesHz;
  const of = (choose: (...values: number[]) => number): Float64Array =>
    positions.map((_, k) => choose(...seats.map(({ response }) => response.levelsDb[k])));
  const [low, high] = [of(Math.min), of(Math.max)];
  const widths = high.map((value, k) => value - low[k]);
  const most = widths.reduce((best, width, k) => (width > widths[best] ? k : best), 0);
  return {
    ...{ positions, low, high },
    medianDb: widths.slice().sort()[widths.length >> 1],
    mostDb: widths[most],
    mostHz: positions[most],
  };
}

/** How much of the window's range lies within it, 0 to 1; null where there is nothing. */
export const shareOf = ({ frequenciesHz, levelsDb }: Response, tolerance: Tolerance): number | null =>
  shareWithin(frequenciesHz, levelsDb, {
    from: tolerance.fromHz,
    to: tolerance.toHz,
    low: tolerance.levelDb - tolerance.halfDb,
    high: tolerance.levelDb + tolerance.halfDb,
  });

/**
 * The middle at which most lies within a window; the lowest of equals, since levels are cut and not raised. Looked for no
 * further than 10 dB below the mean power of the range: the flat floor below the source's reach is no response to hold.
 */
export const bestLevel = kept((response: Response, window: Omit<Tolerance, 'levelDb'>): number => {
  const { frequenciesHz, levelsDb } = response;
  let power = 0;
  let width = 0;
  let highest = -Infinity;
  for (let k = 0; k + 1 < frequenciesHz.length; k += 1) {
    const f = frequenciesHz[k];
    if (f < window.fromHz || f > window.toHz || !Number.isFinite(levelsDb[k])) continue;
    const step = Math.log(frequenciesHz[k + 1] / f);
    power += step * 10 ** (levelsDb[k] / 10);
    width += step;
    highest = Math.max(highest, levelsDb[k]);
  }
  if (!(width > 0 && power > 0)) return 0;
  const lowest = 10 * Math.log10(power / width) - belowMeanDb;
  let best = { levelDb: lowest, share: -1 };
  for (let step = Math.ceil(lowest / placeStepDb); step <= Math.ceil(highest / placeStepDb); step += 1) {
    const levelDb = step * placeStepDb;
    const share = shareWithin(frequenciesHz, levelsDb, {
      from: window.fromHz,
      to: window.toHz,
      low: levelDb - window.halfDb,
      high: levelDb + window.halfDb,
    });
    if ((share ?? 0) > best.share + 1e-9) best = { levelDb, share: share ?? 0 };
  }
  return Math.round(best.levelDb * 10) / 10;
});

/** Levels shown: the loudest rounded up, and the study's range below it. */
export function levelRange(seats: readonly Seat[], rangeDb: number): [number, number] {
  let loudest = -Infinity;
  for (const { response } of seats)
    for (const level of response.levelsDb) if (level > loudest) loudest = level;
  const top = Math.ceil(loudest / topStepDb) * topStepDb;
  return [top - rangeDb, top];
}

export function responseChart(
  snapshot: StudySnapshot,
  seats: readonly Seat[],
  tolerance: Tolerance | null,
  speaker: Speaker,
): ResponseChart {
  const { choices, cursor, active } = snapshot;
  const main = seats.find(({ index }) => index === active)!;
  const { frequenciesHz, levelsDb, noiseDb, extremes } = main.response;
  const spread = spreadOf(seats);
  const curves = seats.map(({ index, label, response }): ResponseCurve => ({
    label,
    positions: response.frequenciesHz,
    values: response.levelsDb,
    main: index === active,
    floor: index === active ? noiseDb.map((level) => level + overNoiseDb) : null,
  }));
  return {
    columnScale: choices.axis,
    columnRange: [choices.fromHz, choices.toHz],
    valueRange: levelRange(seats, choices.rangeDb),
    columnLabel: speaker.view('frequency-axis'),
    valueLabel: speaker.view(main.calibrated ? 'response-axis-calibrated' : 'response-axis'),
    marks: marksOf(snapshot, speaker),
    cursor: cursor && cursor.frequencyHz,
    formatNumber: (value, digits) => speaker.n.number(value, digits),
    curves,
    spread: spread && { positions: spread.positions, low: spread.low, high: spread.high },
    tolerance: tolerance && {
      from: tolerance.fromHz,
      to: tolerance.toHz,
      low: tolerance.levelDb - tolerance.halfDb,
      high: tolerance.levelDb + tolerance.halfDb,
      label: toleranceText(main.response, tolerance, speaker),
    },
    extremes: extremes.slice(0, mostMarked).map(({ index, kind }) => ({
      position: frequenciesHz[index],
      value: levelsDb[index],
      kind,
      label: speaker.n.hertz(frequenciesHz[index]),
    })),
  };
}

/** "63 % within ±2.5 dB". */
export function toleranceText(response: Response, tolerance: Tolerance, speaker: Speaker): string {
  const share = shareOf(response, tolerance);
  return speaker.view('tolerance-share', {
    share,
    halfDb: speaker.n.significant(tolerance.halfDb, 3),
  });
}

/** The level at a frequency, as drawn. */
export function levelAt({ frequenciesHz, levelsDb }: Response, frequencyHz: number): number {
  const at = indexAt(frequenciesHz, frequencyHz);
  const low = Math.floor(at);
  const high = Math.min(frequenciesHz.length - 1, low + 1);
  return levelsDb[low] + (at - low) * (levelsDb[high] - levelsDb[low]);
}

export function responseReadout(snapshot: StudySnapshot, seats: readonly Seat[], speaker: Speaker): string {
  const { cursor, active } = snapshot;
  const main = seats.find(({ index }) => index === active)?.response;
  if (!cursor || !main) return speaker.view('readout-none');
  const { frequencyHz } = cursor;
  const levelDb = levelAt(main, frequencyHz);
  const noiseDb = main.noiseDb[Math.round(indexAt(main.frequenciesHz, frequencyHz))];
  const noise = levelDb <= noiseDb + overNoiseDb;
  const text = speaker.view(noise ? 'response-readout-noise' : 'response-readout', { frequencyHz, levelDb });
  if (seats.length < 2) return text;
  const levels = seats.map(({ response }) => levelAt(response, frequencyHz));
  return `${text}; ${speaker.view('response-readout-spread', { spreadDb: Math.max(...levels) - Math.min(...levels) })}`;
}

/** What the lines mean; `main` is the seat that is shown. */
export function responseKey(
  seats: readonly Seat[],
  { label, response }: Seat,
  speaker: Speaker,
): LegendItem[] {
  const { levelsDb, noiseDb } = response;
  const noisy = levelsDb.some((level, k) => level <= noiseDb[k] + overNoiseDb);
  const others: readonly LegendItem[] = [
    { sign: 'text-dash', text: speaker.view('other-seats') },
    { sign: 'grey', text: speaker.view('seat-spread') },
  ];
  const noise: LegendItem = { sign: 'faint-line', text: speaker.view('noise-area') };
  return [
    { sign: 'accent-line', text: label },
    ...(seats.length > 1 ? others : []),
    ...(noisy ? [noise] : []),
  ];
}

/** Smoothing, window, resolution, level reference and spread. */
export function responseCaption(seats: readonly Seat[], main: Seat, speaker: Speaker): string {
  const { smoothing, fromSeconds, toSeconds, resolutionHz } = main.response;
  const spread = spreadOf(seats);
  const smoothed =
    smoothing === 'none'
      ? speaker.view('smoothing-off')
      : smoothing === 'erb'
        ? speaker.view('smoothing-erb')
        : speaker.view('smoothing-on', { fraction: smoothing });
  return [
    smoothed,
    speaker.view('response-caption', { fromSeconds, toSeconds, resolutionHz }),
    speaker.view(main.calibrated ? 'response-calibrated' : 'response-relative'),
    ...(spread
      ? [
          speaker.view('spread-caption', {
            medianDb: spread.medianDb,
            mostDb: spread.mostDb,
            mostHz: spread.mostHz,
          }),
        ]
      : []),
  ].join(' ');
}

/** Half height of the tolerance window of pictures without controls, dB (common practice). */
const toleranceDb = 2.5;

/** The shown recording among those of its stage, in a window placed where most of it fits; null while it is not known. */
export function heldResponse(
  snapshot: StudySnapshot,
  speaker: Speaker,
): { seats: Seat[]; main: Seat; chart: ResponseChart } | null {
  const seats = seatsOf(snapshot, true, speaker);
  const main = seats.find(({ index }) => index === snapshot.active);
  if (!main) return null;
  const { fromHz, toHz } = snapshot.choices;
  const window = { halfDb: toleranceDb, fromHz, toHz };
  const tolerance = { ...window, levelDb: bestLevel(main.response, window) };
  return { seats, main, chart: responseChart(snapshot, seats, tolerance, speaker) };
}
