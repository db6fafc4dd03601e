import type { Sentence } from '../types.js';

/** What the charts say around their pictures and in their tables. */
export const chartViews: Readonly<Record<string, Sentence>> = {
  'as-table': () => 'Dasselbe als Tabelle',

  'noise-area': () => 'Rauschen',
  'band-column': () => 'Terz',
  'decays-to-end': () => 'die Datei endet vorher',
  'fit-nothing': () => 'In dieser Aufnahme wurde nichts angepasst; ihre Hinweise sagen, warum.',
  // Decay times.
  'decay-times': () => 'Abklingzeiten',
  'decay-times-name': (p, n) => `Abklingzeiten von ${n.text(p.label)}: Moden und Terzen über der Frequenz`,
  'decay-times-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen; eine Mode lässt sich dort oder in der Tabelle auswählen. Der Regler darunter verschiebt denselben Cursor.',
  'decay-times-caption': () =>
    'Punkte sind angepasste Moden mit einer Standardabweichung. Terzen: rückwärts in der Zeit gefiltert, Eckfrequenzen nach IEC 61260-1, gelesen an der rückwärts integrierten Kurve; ein Band enthält mehrere Moden, und ihr Ausschwingen vermischt sich darin.',
  'decay-times-held': (p, n) => `Verglichen mit der Grenze „${n.text(p.limit)}“: ${n.text(p.meaning)}`,
  'decay-axis': () => 'Abklingzeit, s',
  'key-above': () => 'markiert: über der Grenze',
  'key-below': () => 'nicht markiert',
  'key-band': (p, n) => `${n.text(p.reading)} einer Terz`,
  'key-too-short': () => 'in einer Terz zu kurz, um glaubhaft zu sein',
  'key-limits': () => 'Grenzen',
  'choose-reading': () => 'Terzen',
  'fitted-modes': () => 'Angepasste Moden',
  'band-decays': () => 'Abklingzeiten je Terz',
  'against-limit': () => 'Gegen die Grenze',
  'times-limit': (p, n) => `${n.number(p.excess, 1)} × ${n.seconds(p.limitSeconds)}`,
  'shortest-column': () => 'Kürzeste glaubhafte',
  'decay-mode': (p, n) => `Mode ${n.hertz(p.frequencyHz)}, ${n.text(p.decay)}`,
  'decay-band': (p, n) => `Terz um ${n.hertz(p.centreHz, 0)}, ${n.text(p.value)}`,
  'decay-limit': (p, n) =>
    p.lowSeconds === p.highSeconds
      ? `${n.text(p.limit)} ${n.seconds(p.highSeconds)}`
      : `${n.text(p.limit)} ${n.seconds(p.lowSeconds)} bis ${n.seconds(p.highSeconds)}`,
  'decay-too-short': (p, n) => `kürzer als ${n.seconds(p.shortestSeconds)}`,
  'decay-shorter': () => 'zu kurz',
  'bands-heading': () =>
    'Terzen (IEC 61260-1), rückwärts in der Zeit gefiltert: Nachhallzeiten nach ISO 3382',
  'decay-no-range': (p, n) =>
    `zu wenig Dynamik${typeof p.rangeDb === 'number' ? ` (${n.decibels(p.rangeDb)})` : ''}`,
  'decay-cut': () => 'Datei endet',

  // The response.
  response: () => 'Frequenzgang',
  'response-name': (p, n) => `Betragsfrequenzgang von ${n.text(p.label)}: Pegel über der Frequenz`,
  'response-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen. Der Regler darunter verschiebt denselben Cursor. Das Toleranzfenster hat einen eigenen Regler oder lässt sich im Bild mit der Maus fassen. Pegel, Überhöhungen und Einbrüche stehen in der Tabelle.',
  'response-axis': () => 'Pegel, dB re Maßstab der Datei',
  'response-axis-calibrated': () => 'Pegel, dB re 20 µPa, eines voll aussteuernden Sinus',
  'response-calibrated': () =>
    'Pegel sind nach der angegebenen Kalibrierung die eines Sinus, der die Quelle voll aussteuert; eine normalisierte Datei hat keine.',
  'response-relative': () =>
    'Pegel sind die der Datei: Dateien, die mit anderer Verstärkung aufgenommen sind, unterscheiden sich um eine Konstante.',
  'other-seats': () => 'andere Aufnahmen dieses Stands',
  'seat-spread': () => 'Streuung',
  'smoothing-off': () => 'Nicht geglättet.',
  'smoothing-on': (p, n) =>
    `Geglättet über ${n.text(p.fraction)} Oktave (mittlere Leistung): Schmalere Grate sind verdeckt.`,
  'smoothing-erb': () =>
    'Geglättet über die Breite der Filter des Ohrs (ERB, ANSI/ASA S3.4-2007; mittlere Leistung): nur für die Klangbalance. Bei 50 Hz ist sie 30 Hz breit und verdeckt jeden Grat.',
  'response-caption': (p, n) =>
    `Ein Spektrum von ${n.seconds(p.fromSeconds)} bis ${n.seconds(p.toSeconds)} um den Einsatz; es trennt ${n.hertz(p.resolutionHz, 2)}. Dreiecke kennzeichnen Überhöhungen und Einbrüche ab 6 dB.`,
  'spread-caption': (p, n) =>
    `Zwischen den gezeigten Aufnahmen unterscheiden sich die Pegel im Median um ${n.decibels(p.medianDb, 1)} und höchstens um ${n.decibels(p.mostDb, 1)}, bei ${n.hertz(p.mostHz)}.`,
  'choose-smoothing': () => 'Glättung',
  'smooth-none': () => 'keine',
  'smooth-octave': (p, n) => `${n.text(p.fraction)} Oktave`,
  'smooth-erb': () => 'Breite der Filter des Ohrs',
  'show-seats': (p, n) =>
    Number(p.count) === 1 ? 'Auch die andere Aufnahme' : `Auch die ${n.integer(p.count)} anderen`,
  'tolerance-window': () => 'Toleranzfenster',
  'tolerance-none': () => 'keines',
  'plus-minus-db': (p, n) => `±${n.text(p.halfDb)}\u00a0dB`,
  'tolerance-level': () => 'bei',
  'tolerance-from': () => 'von, Hz',
  'tolerance-to': () => 'bis, Hz',
  'tolerance-best': () => 'Wo das meiste passt',
  'tolerance-share': (p, n) =>
    typeof p.share === 'number'
      ? `${n.percent(p.share)} innerhalb von ±${n.text(p.halfDb)}\u00a0dB`
      : 'nichts in diesem Bereich',
  'tolerance-where': (p, n) =>
    ` von ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)}, um ${n.decibels(p.levelDb, 1)}.`,
  'response-readout': (p, n) => `${n.hertz(p.frequencyHz)}: ${n.decibels(p.levelDb, 1)}`,
  'response-readout-noise': (p, n) => `${n.hertz(p.frequencyHz)}: im Rauschen (${n.decibels(p.levelDb, 1)})`,
  'response-readout-spread': (p, n) => `Streuung ${n.decibels(p.spreadDb, 1)}`,
  'levels-table': () => 'Pegel',
  'extremes-table': () => 'Überhöhungen und Einbrüche',
  prominence: () => 'Hebt sich ab um',
  peak: () => 'Überhöhung',
  dip: () => 'Einbruch',
};
