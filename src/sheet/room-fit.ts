import type { Study } from '../study/types.js';
import type { Speaker } from '../words/index.js';

export type RoomFit = Awaited<ReturnType<Study['fitRoom']>>;

const names = ['length', 'width', 'height'] as const;

/** Sides with one standard deviation where they have one. */
const sidesText = ({ sides }: RoomFit, { n }: Speaker): string =>
  sides.map(({ metres, sdMetres }) => n.plusMinus(metres, sdMetres ?? undefined)).join(' × ');

const rounded = (values: readonly number[], { n }: Speaker): string =>
  values.map((value) => n.number(value, 2)).join(' × ');

/** What a fit of the sides says, sentence by sentence: the sides, what they explain and leave, and how likely it is chance. */
export function roomFitSentences(fit: RoomFit, speaker: Speaker): string[] {
  const { n } = speaker;
  const view = (code: string, params: Parameters<Speaker['view']>[1] = {}) => speaker.view(code, params);
  const side = (axis: number): string => view(`room-${names[axis]}`);
  const left = fit.resonances.filter(({ order }) => order === null);
  const { toHz } = fit;
  return [
    view('room-fit-sides', {
      sides: sidesText(fit, speaker),
      typed: rounded(
        fit.sides.map(({ typedMetres }) => typedMetres),
        speaker,
      ),
      speed: fit.typed.speedOfSoundMetresPerSecond,
      tolerance: fit.sideTolerance,
      air: fit.airTolerance,
    }),
    ...fit.sides.flatMap(({ sdMetres, atBound }, axis) => [
      ...(sdMetres === null ? [view('room-fit-unknown', { side: side(axis) })] : []),
      ...(atBound ? [view('room-fit-bound', { side: side(axis) })] : []),
    ]),
    view('room-fit-explains', {
      explained: fit.explained,
      asTyped: fit.explainedAsTyped,
      count: fit.resonances.length,
      rms: fit.rmsShare,
      rmsAsTyped: fit.rmsShareAsTyped,
      toHz,
    }),
    ...(left.length > 0
      ? [view('room-fit-left', { list: left.map(({ frequencyHz }) => n.number(frequencyHz, 1)).join(', ') })]
      : []),
    ...(fit.above > 0 ? [view('room-fit-above', { count: fit.above, toHz })] : []),
    view('room-fit-chance', {
      trials: fit.trials,
      asGood: Math.round(fit.chance * (fit.trials + 1)) - 1,
      chance: fit.chance,
    }),
    view('room-fit-common', { share: fit.commonShare, celsius: fit.airCelsius, within: fit.airWithin }),
    ...(fit.rival
      ? [
          view('room-fit-rival', {
            sides: rounded([fit.rival.lengthMetres, fit.rival.widthMetres, fit.rival.heightMetres], speaker),
          }),
        ]
      : []),
  ];
}

/** Each resonance with its mode: measured, order, fitted, as typed, and how far off the fitted one is. */
export const roomFitHeads = [
  'room-fit-measured',
  'room-fit-mode',
  'room-fit-fitted',
  'room-fit-off',
  'room-fit-typed',
] as const;

export const roomFitRows = ({ resonances }: RoomFit, speaker: Speaker): string[][] =>
  resonances.map(({ frequencyHz, frequencySdHz, order, fittedHz, typedHz }) => [
    speaker.n.plusMinus(frequencyHz, frequencySdHz),
    order ? `(${order.join(',')})` : speaker.label('none'),
    speaker.n.number(fittedHz, 1),
    speaker.n.number(fittedHz === null ? null : 100 * (frequencyHz / fittedHz - 1), 1),
    speaker.n.number(typedHz, 1),
  ]);
