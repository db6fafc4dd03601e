import type { Sentence } from '../types.js';

/** What a picture must say of itself, so that it is not misread. */
export const captions: Readonly<Record<string, Sentence>> = {
  method: (p, n) => {
    const window = n.seconds(p.windowSeconds);
    const say: Record<string, string> = {
      sliding: `Sliding Hann window of ${window}`,
      cumulative: `Cumulative, fade-in of ${window}`,
      'constant-q': `Constant-Q, window of ${window} at ${n.hertz(p.atHz, 0)}`,
    };
    return say[n.text(p.method)] ?? n.text(p.method);
  },
  resolution: (p, n) =>
    p.lowestHz !== undefined && p.lowestHz !== p.highestHz
      ? `resolves ridges ${n.hertz(p.lowestHz)} to ${n.hertz(p.highestHz)} apart`
      : `resolves ridges ${n.hertz(p.resolutionHz ?? p.highestHz)} apart`,
  time: (p, n) =>
    n.text(p.method) === 'cumulative'
      ? 'time zero is the onset; each slice is labelled by its left edge'
      : 'time zero is the onset; each slice is labelled by the centre of its window',
  level: (p, n) =>
    `relative level: 0 dB is the loudest point of the first slice (${n.decibels(p.referenceDbFs, 1)} re full scale${typeof p.fullScaleDb === 'number' ? `, ${n.decibels(Number(p.referenceDbFs) + p.fullScaleDb, 1)} re 20 µPa by the calibration given` : ''})`,
  microphone: (p, n) => `response of the microphone taken off${p.label ? ` (“${n.text(p.label)}”)` : ''}`,
  swept: (p, n) => `worked out of a recorded sweep${p.label ? ` (“${n.text(p.label)}”)` : ''}`,
  'window-decay': (p, n) => {
    const alone = `the window alone falls 60 dB in ${n.seconds(p.windowDecaySeconds)}`;
    return n.text(p.method) === 'constant-q' ? `${alone} at ${n.hertz(p.atHz, 0)}` : alone;
  },
  range: (p, n) => `${n.decibels(p.rangeDb)} shown`,
  'data-end': (p, n) =>
    `slices later than ${n.seconds(p.dataEndSeconds)} reach past the end of the recording`,
  'fit-window': (p, n) =>
    `Fitted to the samples from ${n.seconds(p.fromSeconds, 3)} to ${n.seconds(p.toSeconds, 2)} after the onset`,
  spacing: (p, n) =>
    `two equal modes closer than ${n.hertz(p.spacingHz)} cannot be told apart in this recording`,
  expected: (p, n) =>
    typeof p.spacingHz === 'number'
      ? `To be expected of this recording, before any fit: two modes closer than about ${n.hertz(p.spacingHz)} cannot be told apart, and the decay time of one by itself is known to some ${n.percent(p.decayShare, Number(p.decayShare) < 0.1 ? 1 : 0)}.`
      : `To be expected of this recording, before any fit: no two modes can be told apart, whatever their distance${typeof p.decayShare === 'number' ? `, and the decay time of one by itself is known to some ${n.percent(p.decayShare, 0)}` : ''}.`,
  uncertainty: () => 'uncertainties are one standard deviation',
  candidates: () =>
    'Weights are the chance of each candidate; what is missing from 1 is the chance that none is right. Real walls move modes by up to 5 or 6 % from the rigid box.',
};
