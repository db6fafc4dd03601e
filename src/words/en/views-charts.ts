import type { Sentence } from '../types.js';

/** What the charts say around their pictures and in their tables. */
export const chartViews: Readonly<Record<string, Sentence>> = {
  'as-table': () => 'The same as a table',

  'noise-area': () => 'noise',
  'band-column': () => 'Third-octave',
  'decays-to-end': () => 'the file ends first',
  'fit-nothing': () => 'Nothing was fitted in this recording; its notes say why.',
  // Decay times.
  'decay-times': () => 'Decay times',
  'decay-times-name': (p, n) => `Decay times of ${n.text(p.label)}: modes and third-octaves over frequency`,
  'decay-times-help': () =>
    'Point at the picture to read it; a mode can be selected there or in the table. The slider below moves the same cursor.',
  'decay-times-caption': () =>
    'Points are fitted modes with one standard deviation. Third-octaves: filtered backwards in time, edges of IEC 61260-1, on the backward-integrated curve; a band holds several modes and their decays are mixed in it.',
  'decay-times-held': (p, n) => `Held against ${n.text(p.limit)}: ${n.text(p.meaning)}`,
  'decay-axis': () => 'Decay time, s',
  'key-above': () => 'flagged: above its limit',
  'key-below': () => 'not flagged',
  'key-band': (p, n) => `${n.text(p.reading)} of a third-octave`,
  'key-too-short': () => 'too short to be believed in a third-octave',
  'key-limits': () => 'limits',
  'choose-reading': () => 'Third-octaves',
  'fitted-modes': () => 'Fitted modes',
  'band-decays': () => 'Decay times per third-octave',
  'against-limit': () => 'Against its limit',
  'times-limit': (p, n) => `${n.number(p.excess, 1)} × ${n.seconds(p.limitSeconds)}`,
  'shortest-column': () => 'Shortest believable',
  'decay-mode': (p, n) => `mode ${n.hertz(p.frequencyHz)}, ${n.text(p.decay)}`,
  'decay-band': (p, n) => `band ${n.hertz(p.centreHz, 0)}, ${n.text(p.value)}`,
  'decay-limit': (p, n) =>
    p.lowSeconds === p.highSeconds
      ? `${n.text(p.limit)} ${n.seconds(p.highSeconds)}`
      : `${n.text(p.limit)} ${n.seconds(p.lowSeconds)} to ${n.seconds(p.highSeconds)}`,
  'decay-too-short': (p, n) => `shorter than ${n.seconds(p.shortestSeconds)}`,
  'decay-shorter': () => 'too short',
  'bands-heading': () =>
    'Third-octaves (IEC 61260-1), filtered backwards in time: decay times after ISO 3382',
  'decay-no-range': (p, n) =>
    `too little range${typeof p.rangeDb === 'number' ? ` (${n.decibels(p.rangeDb)})` : ''}`,
  'decay-cut': () => 'file ends',

  // The response.
  response: () => 'Response',
  'response-name': (p, n) => `Magnitude response of ${n.text(p.label)}: level over frequency`,
  'response-help': () =>
    'Point at the picture to read it. The slider below moves the same cursor. The tolerance window is moved by its own slider, or taken in the picture by the mouse. Levels, peaks and dips stand in the table.',
  'response-axis': () => 'Level, dB re the file’s scale',
  'response-axis-calibrated': () => 'Level, dB re 20 µPa, of a sine at full scale',
  'response-calibrated': () =>
    'Levels are those of a sine that drives the source at full scale, by the calibration given; a normalised file has none.',
  'response-relative': () =>
    'Levels are as they are in the file: files recorded at another gain differ by a constant.',
  'other-seats': () => 'other recordings of this stage',
  'seat-spread': () => 'Spread',
  'smoothing-off': () => 'Not smoothed.',
  'smoothing-on': (p, n) =>
    `Smoothed over ${n.text(p.fraction)} octave (mean power): ridges narrower than that are hidden.`,
  'smoothing-erb': () =>
    'Smoothed over the width of the ear’s filters (ERB, ANSI/ASA S3.4-2007; mean power): for the balance of tone only. It is 30 Hz wide at 50 Hz, and hides every ridge.',
  'response-caption': (p, n) =>
    `One spectrum from ${n.seconds(p.fromSeconds)} to ${n.seconds(p.toSeconds)} about the onset; it resolves ${n.hertz(p.resolutionHz, 2)}. Triangles mark peaks and dips of 6 dB and more.`,
  'spread-caption': (p, n) =>
    `Between the recordings shown, levels differ by ${n.decibels(p.medianDb, 1)} in the median and at most by ${n.decibels(p.mostDb, 1)}, at ${n.hertz(p.mostHz)}.`,
  'choose-smoothing': () => 'Smoothing',
  'smooth-none': () => 'none',
  'smooth-octave': (p, n) => `${n.text(p.fraction)} octave`,
  'smooth-erb': () => 'width of the ear’s filters',
  'show-seats': (p, n) =>
    Number(p.count) === 1 ? 'The other recording too' : `The ${n.integer(p.count)} others too`,
  'tolerance-window': () => 'Tolerance window',
  'tolerance-none': () => 'none',
  'plus-minus-db': (p, n) => `±${n.text(p.halfDb)}\u00a0dB`,
  'tolerance-level': () => 'at',
  'tolerance-from': () => 'from, Hz',
  'tolerance-to': () => 'to, Hz',
  'tolerance-best': () => 'Where most fits',
  'tolerance-share': (p, n) =>
    typeof p.share === 'number'
      ? `${n.percent(p.share)} within ±${n.text(p.halfDb)}\u00a0dB`
      : 'nothing in this range',
  'tolerance-where': (p, n) =>
    ` from ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)}, about ${n.decibels(p.levelDb, 1)}.`,
  'response-readout': (p, n) => `${n.hertz(p.frequencyHz)}: ${n.decibels(p.levelDb, 1)}`,
  'response-readout-noise': (p, n) => `${n.hertz(p.frequencyHz)}: in the noise (${n.decibels(p.levelDb, 1)})`,
  'response-readout-spread': (p, n) => `spread ${n.decibels(p.spreadDb, 1)}`,
  'levels-table': () => 'Levels',
  'extremes-table': () => 'Peaks and dips',
  prominence: () => 'Stands out by',
  peak: () => 'peak',
  dip: () => 'dip',
};
