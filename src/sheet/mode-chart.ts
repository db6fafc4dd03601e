import type { LegendItem } from '../draw/legend.js';
import type { MeasuredMode, ModeChart, PredictedMode } from '../draw/mode-chart.js';
import { crowdingOf, modeLinks, shownMode, transitionOf } from '../study/mode-readings.js';
import type { Mode } from '../study/mode-readings.js';
import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { strokesOf } from './field-view.js';
import { orderName } from './mode-name.js';

/** Top of the scale of decay times between these, s. */
const scaleSeconds = [1, 5] as const;
const scaleStepSeconds = 0.25;
/** What stands this near to the cursor is told, in octaves. */
const nearOctaves = 1 / 24;
/** Further off than real walls pull a mode, a resonance is another. */
const nearShare = 0.06;

const inRange = (frequencyHz: number, { choices }: StudySnapshot): boolean =>
  frequencyHz >= choices.fromHz && frequencyHz <= choices.toHz;

/** Predicted modes within the frequencies shown, with their place in the prediction. */
export const modesShown = (snapshot: StudySnapshot): { mode: Mode; index: number }[] =>
  (snapshot.prediction?.modes ?? [])
    .map((mode, index) => ({ mode, index }))
    .filter(({ mode }) => inRange(mode.frequencyHz, snapshot));

export interface Measured extends MeasuredMode {
  readonly ridge: number | null;
  readonly resonance: number | null;
}

/** Ridges first, then what is below the limit. */
export function measuredShown(snapshot: StudySnapshot, speaker: Speaker): Measured[] {
  const { diagnosis, selectedRidge, selectedResonance } = snapshot;
  if (!diagnosis) return [];
  const { ridges, resonances } = diagnosis;
  const flagged = ridges.map(({ frequencyHz, decayTimeSeconds, resonance }, ridge): Measured => ({
    position: frequencyHz,
    sd: resonance === null ? null : (resonances[resonance]?.frequencySdHz ?? null),
    value: decayTimeSeconds ?? NaN,
    label: speaker.n.hertz(frequencyHz),
    flagged: true,
    selected: ridge === selectedRidge,
    ...{ ridge, resonance },
  }));
  const known = new Set(ridges.map(({ resonance }) => resonance));
  const others = resonances.flatMap(
    ({ frequencyHz, frequencySdHz, decayTimeSeconds }, resonance): Measured[] =>
      known.has(resonance) || decayTimeSeconds === null
        ? []
        : [
            {
              position: frequencyHz,
              sd: frequencySdHz,
              value: decayTimeSeconds,
              label: resonance === selectedResonance ? speaker.n.hertz(frequencyHz) : '',
              flagged: false,
              selected: resonance === selectedResonance,
              ...{ ridge: null, resonance },
            },
          ],
  );
  return [...flagged, ...others].filter(({ position }) => inRange(position, snapshot));
}

export function modeChart(snapshot: StudySnapshot, speaker: Speaker): ModeChart {
  const { choices, cursor, room, recordings } = snapshot;
  const measured = measuredShown(snapshot, speaker);
  const modes = modesShown(snapshot);
  const chosen = snapshot.selectedMode ? shownMode(snapshot) : null;
  const links = modeLinks(snapshot);
  const best = new Map<number, number>();
  for (const { mode, weight } of links) best.set(mode, Math.max(best.get(mode) ?? 0, weight));
  const longest = Math.max(0, ...measured.map(({ value }) => (Number.isFinite(value) ? value : 0)));
  const stepped = Math.ceil((longest * 1.15) / scaleStepSeconds) * scaleStepSeconds;
  const transition = transitionOf(snapshot);
  return {
    columnScale: choices.axis,
    columnRange: [choices.fromHz, choices.toHz],
    columnLabel: speaker.view('frequency-axis'),
    formatNumber: (value, digits) => speaker.n.number(value, digits),
    cursor: cursor && cursor.frequencyHz,
    measured: recordings.length > 0 ? measured : null,
    measuredRange: [0, Math.min(scaleSeconds[1], Math.max(scaleSeconds[0], stepped))],
    measuredLabel: speaker.view('modes-measured'),
    predictedLabel: speaker.view('modes-predicted'),
    predicted: modes.map(({ mode, index }): PredictedMode => ({
      position: mode.frequencyHz,
      strokes: strokesOf(mode.kind),
      label: room ? orderName(mode.order, room) : '',
      weight: (best.has(index) ? 4 + best.get(index)! : 0) + (4 - strokesOf(mode.kind)) / 2,
      selected: mode === chosen,
    })),
    ties: links.flatMap(({ ridge, mode, weight }) => {
      const from = measured.findIndex((one) => one.ridge === ridge);
      const to = modes.findIndex(({ index }) => index === mode);
      return from < 0 || to < 0 ? [] : [{ measured: from, predicted: to, weight }];
    }),
    bands: crowdingOf(snapshot).map(({ fromHz, toHz, count, expected }) => ({
      ...{ from: fromHz, to: toHz, count, expected },
    })),
    bandsLabel: speaker.view('modes-per-band'),
    transition: transition && {
      from: transition.fromHz,
      to: transition.toHz,
      label: speaker.view('transition-band'),
    },
  };
}

/** To the next mode, Hz; null at the end of the list. */
export const spacingOf = (modes: readonly Mode[], index: number): number | null =>
  index + 1 < modes.length ? modes[index + 1].frequencyHz - modes[index].frequencyHz : null;

/** The measured resonance next to a mode, and how far it lies off. */
export function nearestMeasured(
  mode: Mode,
  { diagnosis }: StudySnapshot,
): { readonly frequencyHz: number; readonly deviation: number } | null {
  const near = (diagnosis?.resonances ?? [])
    .filter(({ decayTimeSeconds }) => decayTimeSeconds !== null)
    .map(({ frequencyHz }) => ({ frequencyHz, deviation: frequencyHz / mode.frequencyHz - 1 }))
    .sort((a, b) => Math.abs(a.deviation) - Math.abs(b.deviation))[0];
  return near && Math.abs(near.deviation) <= nearShare ? near : null;
}

/** What stands at the cursor's frequency. */
export function modesReadout(snapshot: StudySnapshot, speaker: Speaker): string {
  const { cursor, room } = snapshot;
  if (!cursor || !room) return speaker.view('readout-none');
  const { frequencyHz } = cursor;
  const away = (f: number): number => Math.abs(Math.log2(f / frequencyHz));
  const parts: string[] = [];
  const near = modesShown(snapshot)
    .map(({ mode }) => mode)
    .filter((mode) => away(mode.frequencyHz) <= nearOctaves)
    .sort((a, b) => away(a.frequencyHz) - away(b.frequencyHz));
  if (near[0])
    parts.push(
      speaker.view('modes-readout-mode', {
        order: orderName(near[0].order, room),
        frequencyHz: near[0].frequencyHz,
        more: near.length - 1,
      }),
    );
  const found = measuredShown(snapshot, speaker)
    .filter(({ position }) => away(position) <= nearOctaves)
    .sort((a, b) => away(a.position) - away(b.position))[0];
  if (found)
    parts.push(
      speaker.view('modes-readout-measured', { frequencyHz: found.position, decayTimeSeconds: found.value }),
    );
  const band = crowdingOf(snapshot).find(({ fromHz, toHz }) => frequencyHz >= fromHz && frequencyHz < toHz);
  if (band) parts.push(speaker.view('modes-readout-band', { centreHz: band.centreHz, count: band.count }));
  return `${speaker.n.hertz(frequencyHz)}${parts.length > 0 ? `: ${parts.join('; ')}` : ''}`;
}

/** What the signs mean. */
export function modesKey(snapshot: StudySnapshot, speaker: Speaker): LegendItem[] {
  const kinds = snapshot.room?.plan
    ? (['axial', 'plan', 'mixed'] as const)
    : (['axial', 'tangential', 'oblique'] as const);
  const measured: LegendItem[] = [
    { sign: 'full', text: speaker.view('key-above') },
    { sign: 'hollow', text: speaker.view('key-below') },
    { sign: 'tie', text: speaker.view('key-tie') },
  ];
  return [
    ...kinds.map((kind, k) => ({
      sign: (['stroke-1', 'stroke-2', 'stroke-3'] as const)[k],
      text: speaker.term('modeKinds', kind),
    })),
    ...(snapshot.recordings.length > 0 ? measured : []),
    { sign: 'grey', text: speaker.view('key-count') },
    { sign: 'accent-dash', text: speaker.view('key-expected') },
  ];
}

/** Room, count, transition and how predicted and measured are tied. */
export function modesCaption(snapshot: StudySnapshot, speaker: Speaker): string {
  const { prediction, recordings, choices } = snapshot;
  const { room, meshError = null } = prediction!;
  const { fromHz, toHz } = choices;
  const transition = transitionOf(snapshot);
  const about = {
    ...{ count: modesShown(snapshot).length, fromHz, toHz, meshError },
    speed: room.speedOfSoundMetresPerSecond,
  };
  return [
    speaker.view(room.plan ? 'modes-caption-plan' : 'modes-caption-box', about),
    ...(recordings.length > 0 ? [speaker.view('modes-caption-ties')] : []),
    transition
      ? speaker.view(transition.measured ? 'modes-transition-measured' : 'modes-transition', {
          ...transition,
        })
      : speaker.view('modes-transition-unknown'),
  ].join(' ');
}
