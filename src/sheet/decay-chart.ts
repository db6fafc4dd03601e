import type { DecayBand, DecayChart, DecayPoint } from '../draw/decay-chart.js';
import type { LegendItem } from '../draw/legend.js';
import { limitCurvesOf } from '../study/limit-curves.js';
import type { LimitCurve } from '../study/limit-curves.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { readingText } from './band-readings.js';
import type { BandReadings as Decay, Reading } from './band-readings.js';
import { marksOf } from './field-view.js';

type Resonance = NonNullable<StudySnapshot['diagnosis']>['resonances'][number];

/** The scale ends between these, s: a short room still looks short, one odd value does not flatten the rest. */
const scaleSeconds = [1, 5] as const;
const scaleStepSeconds = 0.25;
/** A decay less certain than this share of itself does not stretch the scale; beyond it, it is an arrow. */
const certainShare = 0.3;
/** What stands this near to the cursor is told, in octaves. */
const nearOctaves = 1 / 24;

/** Third-octave decays of the shown recording, within the frequencies shown. */
export const decaysOf = ({ examinations, active, choices }: StudySnapshot): readonly Decay[] =>
  (examinations[active]?.decays ?? []).filter(
    ({ fromHz, toHz }) => toHz > choices.fromHz && fromHz < choices.toHz,
  );

/** Modes as points; hum never decays and has none. */
function pointsOf(snapshot: StudySnapshot, speaker: Speaker): DecayPoint[] {
  const { diagnosis, selectedResonance } = snapshot;
  const flagged = new Set(diagnosis?.ridges.map(({ resonance }) => resonance));
  return (diagnosis?.resonances ?? []).map((one, k) => ({
    position: one.frequencyHz,
    value: one.decayTimeSeconds ?? NaN,
    sd: one.decayTimeSdSeconds,
    label: flagged.has(k) || k === selectedResonance ? speaker.n.hertz(one.frequencyHz) : '',
    flagged: flagged.has(k),
    selected: k === selectedResonance,
  }));
}

/** A refusal for the filter's sake is drawn at the shortest that could be told; one for want of range is not drawn. */
function bandsOf(snapshot: StudySnapshot, reading: Reading): DecayBand[] {
  return decaysOf(snapshot).flatMap((band): DecayBand[] => {
    const { seconds, refused } = band[reading];
    const edges = { from: band.fromHz, to: band.toHz };
    if (seconds !== null) return [{ ...edges, value: seconds, believed: true }];
    return refused === 'filter' ? [{ ...edges, value: band.shortestSeconds, believed: false }] : [];
  });
}

export function decayChart(snapshot: StudySnapshot, reading: Reading, speaker: Speaker): DecayChart {
  const { choices, cursor } = snapshot;
  const points = pointsOf(snapshot, speaker);
  const bands = bandsOf(snapshot, reading);
  const certain = points.filter(
    ({ value, sd }) => Number.isFinite(value) && (sd ?? 0) < certainShare * value,
  );
  const longest = Math.max(...[...certain, ...bands].map(({ value }) => value), 0);
  const stepped = Math.ceil((longest * 1.08) / scaleStepSeconds) * scaleStepSeconds;
  const top = Math.min(scaleSeconds[1], Math.max(scaleSeconds[0], stepped));
  return {
    columnScale: choices.axis,
    columnRange: [choices.fromHz, choices.toHz],
    valueRange: [0, top],
    columnLabel: speaker.view('frequency-axis'),
    valueLabel: speaker.view('decay-axis'),
    marks: marksOf(snapshot, speaker),
    cursor: cursor && cursor.frequencyHz,
    formatNumber: (value, digits) => speaker.n.number(value, digits),
    points: points.map((point) =>
      point.value > top ? { ...point, label: beyondLabel(point, speaker) } : point,
    ),
    bands,
    floors: decaysOf(snapshot).map(({ fromHz, toHz, shortestSeconds }) => ({
      from: fromHz,
      to: toHz,
      value: shortestSeconds,
    })),
    limits: limitCurvesOf(snapshot).map(({ name, frequenciesHz, lowerSeconds, upperSeconds }) => ({
      label: speaker.term('limits', name),
      positions: frequenciesHz,
      low: lowerSeconds,
      high: upperSeconds,
    })),
  };
}

/** What lies beyond the scale says by how much. */
const beyondLabel = ({ position, value }: DecayPoint, speaker: Speaker): string =>
  speaker.view('ridge-flag', { frequencyHz: position, decayTimeSeconds: value });

/** Lower and upper end of a limit at a frequency, or null. */
function limitAt(curve: LimitCurve, frequencyHz: number): [number, number] | null {
  const last = curve.frequenciesHz.length - 1;
  const k = curve.frequenciesHz.findIndex((f) => f >= frequencyHz * (1 - 1e-9));
  const at = k < 0 ? last : k;
  const pair: [number, number] = [curve.lowerSeconds[at], curve.upperSeconds[at]];
  return pair.every(Number.isFinite) ? pair : null;
}

/** What stands at the cursor's frequency: the mode, the band and the chosen limit, in words. */
export function decayReadout(snapshot: StudySnapshot, reading: Reading, speaker: Speaker): string {
  const { cursor, diagnosis, choices } = snapshot;
  if (!cursor) return speaker.view('readout-none');
  const { frequencyHz } = cursor;
  const { n } = speaker;
  const parts: string[] = [];
  const away = ({ frequencyHz: f }: Resonance): number => Math.abs(Math.log2(f / frequencyHz));
  const near = (diagnosis?.resonances ?? [])
    .filter((one) => away(one) <= nearOctaves)
    .sort((a, b) => away(a) - away(b))[0];
  if (near)
    parts.push(
      speaker.view('decay-mode', {
        frequencyHz: near.frequencyHz,
        decay:
          near.decayTimeSeconds === null
            ? speaker.label('never')
            : n.plusMinus(near.decayTimeSeconds, near.decayTimeSdSeconds, 's'),
      }),
    );
  const band = decaysOf(snapshot).find((one) => frequencyHz >= one.fromHz && frequencyHz < one.toHz);
  if (band)
    parts.push(
      speaker.view('decay-band', { centreHz: band.centreHz, value: readingText(band, reading, speaker) }),
    );
  const curve = limitCurvesOf(snapshot).find(({ name }) => name === choices.limit);
  const limit = curve && limitAt(curve, frequencyHz);
  if (limit)
    parts.push(
      speaker.view('decay-limit', {
        limit: speaker.term('limits', choices.limit),
        lowSeconds: limit[0],
        highSeconds: limit[1],
      }),
    );
  return `${n.hertz(frequencyHz)}${parts.length > 0 ? `: ${parts.join('; ')}` : ''}`;
}

/** What the signs mean. */
export function decayKey(snapshot: StudySnapshot, reading: Reading, speaker: Speaker): LegendItem[] {
  const limits: LegendItem = { sign: 'band', text: speaker.view('key-limits') };
  return [
    { sign: 'full', text: speaker.view('key-above') },
    { sign: 'hollow', text: speaker.view('key-below') },
    { sign: 'bar', text: speaker.view('key-band', { reading: speaker.label(reading) }) },
    { sign: 'grey', text: speaker.view('key-too-short') },
    ...(limitCurvesOf(snapshot).length > 0 ? [limits] : []),
  ];
}

/** How the picture was made and what its decays are held against. */
export function decayCaption({ diagnosis, choices: { limit } }: StudySnapshot, speaker: Speaker): string {
  return [
    ...(diagnosis?.resonances.length === 0 ? [speaker.view('fit-nothing')] : []),
    speaker.view('decay-times-caption'),
    speaker.view('decay-times-held', {
      limit: speaker.term('limits', limit),
      meaning: speaker.meaning('limits', limit),
    }),
  ].join(' ');
}
