import type { Sentence } from '../types.js';

/** What the charts say around their pictures and in their tables. */
export const chartViews: Readonly<Record<string, Sentence>> = {
  'as-table': () => 'Dasselbe als Tabelle',

  // Recordings.
  recordings: () => 'Aufnahmen',
  'recordings-name': (p, n) => `Aufnahme ${n.text(p.label)}: Wellenform, Pegel und nutzbare Dynamik`,
  'recordings-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen. Die Regler darunter verschieben denselben Cursor. Ausgegrautes ist Rauschen oder liegt nach dem Ende; die Dynamik je Band steht in der Tabelle.',
  'recordings-caption': (p, n) =>
    `Oben: die Abtastwerte${p.changed ? '' : ', wie sie in der Datei stehen'}. Unten: Pegel zwischen ${n.hertz(p.fromHz, 0)} und ${n.hertz(p.toHz, 0)}, gemittelt über 40 ms, bezogen auf den lautesten Wert. Dynamik: die lautesten 50 ms jeder Terz über ihrem eigenen Rauschen.`,
  'recordings-list': () => 'Die Aufnahmen dieser Studie',
  'waveform-axis': () => 'Abtastwerte, re Vollaussteuerung',
  'band-level-axis': () => 'Pegel, dB',
  'range-axis': () => 'Nutzbare Dynamik, dB',
  'onset-time-axis': () => 'Zeit ab dem Einsatz, s',
  'mark-onset': () => 'Einsatz',
  'mark-usable': (p, n) => `Rauschen ab ${n.seconds(p.seconds)}`,
  'mark-end': () => 'Ende der Datei',
  'mark-cut': () => 'abgeschnitten',
  'mark-late': () => 'späte Energie',
  'noise-area': () => 'Rauschen',
  'past-end-area': () => 'nach dem Ende der Aufnahme',
  'range-limit-read': (p, n) => `gelesen ab ${n.decibels(p.rangeDb)}`,
  'range-limit-least': (p, n) => `mit Vorsicht ab ${n.decibels(p.rangeDb)}`,
  'range-good': () => 'gelesen',
  'range-doubtful': () => 'mit Vorsicht gelesen',
  'range-unread': () => 'nicht gelesen',
  'show-recording': (p, n) => `${n.text(p.label)} zeigen`,
  'whole-file': () => 'Ganze Datei',
  'first-seconds': (p, n) => `Die ersten ${n.seconds(p.seconds, 1)}`,
  'time-shown': () => 'Gezeigte Zeit',
  'choose-channel': () => 'Kanal',
  'channel-of': (p, n) => `${n.integer(p.channel)} von ${n.integer(p.count)}`,
  'verdict-fit': () => 'gut auswertbar',
  'verdict-care': () => 'mit Vorsicht auswertbar',
  'verdict-unfit': () => 'nicht auswertbar',
  'notes-heading': () => 'Was vor dem Weiterlesen zu wissen ist',
  'more-notes': (p, n) => `${n.integer(p.count)} weitere dieser Art`,
  'no-notes': () => 'Es fand sich nichts, das in die Irre führt.',
  'usable-column': () => 'Rauschen ab',
  'length-column': () => 'Länge',
  'onset-column': () => 'Einsatz bei',
  'range-column': () => 'Dynamik je Band',
  'verdict-column': () => 'Urteil',
  'rate-column': () => 'Abtastrate',
  'band-column': () => 'Terz',
  'reading-column': () => 'Ablesung',
  'usable-length-column': () => 'Rauschen ab',
  'range-span': (p, n) => `${n.integer(p.lowDb)} bis ${n.decibels(p.highDb)}`,
  'decays-to-end': () => 'die Datei endet vorher',
  'no-decay-found': () => 'nichts klingt ab',
  'recording-readout': (p, n) => `${n.seconds(p.timeSeconds)}: ${n.decibels(p.levelDb)}`,
  'recording-readout-noise': (p, n) => `${n.seconds(p.timeSeconds)}: im Rauschen`,
  'recording-readout-before': (p, n) => `${n.seconds(p.timeSeconds)}: vor dem Einsatz`,
  'recording-readout-past-end': (p, n) => `${n.seconds(p.timeSeconds)}: nach dem Ende der Datei`,
  'band-readout': (p, n) => `Terz um ${n.hertz(p.centreHz, 0)}: ${n.decibels(p.rangeDb)} Dynamik`,

  // The fit of one ridge.
  fit: () => 'Angepasstes Ausschwingen',
  'fit-name': (p, n) => `Angepasstes Ausschwingen eines Grats von ${n.text(p.label)}: Pegel über der Zeit`,
  'fit-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen. Der Regler darunter verschiebt denselben Cursor; die Auswahl darüber zeigt einen anderen Grat. Unter dem Grundrauschen wird nichts gezeichnet.',
  'fit-recorded': () => 'Aufnahme',
  'fit-one': () => 'dieses Ausschwingen, angepasst',
  'fit-fitted': (p, n) => `angepasst ${n.text(p.decay)}`,
  'fit-together': () => 'alle angepassten zusammen',
  'fit-residual': () => 'was sie übrig lassen',
  'fit-window': (p, n) => `angepasst von ${n.seconds(p.fromSeconds)} bis ${n.seconds(p.toSeconds)}`,
  'fit-choose': () => 'Grat',
  'fit-ridges': () => 'Über der Grenze',
  'fit-others': () => 'Andere Resonanzen',
  'fit-nothing': () => 'In dieser Aufnahme wurde nichts angepasst; ihre Hinweise sagen, warum.',
  'fit-coming': () => 'Bild wird berechnet',
  'fit-readout': (p, n) =>
    `${n.seconds(p.timeSeconds)}: ${n.decibels(p.levelDb)}${typeof p.fittedDb === 'number' ? `, angepasst ${n.decibels(p.fittedDb)}` : ''}, Rest ${n.decibels(p.residualDb)}`,
  'fit-caption': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${n.text(p.decay)}, eine Standardabweichung. Angepasst an die Abtastwerte von ${n.seconds(p.fromSeconds)} bis ${n.seconds(p.toSeconds)} nach dem Einsatz; gezeichnet durch ein Band von ${n.hertz(p.bandwidthHz)} Breite. Pegel bezogen auf den lautesten Wert des Bandes; das Grundrauschen ist, was alles Ausschwingen am Ende übrig lässt.`,
  'fit-unexplained': () =>
    'Hier wurde keine Resonanz angepasst: Die Abklingzeit ist die der Schnitte dieses Bandes, und es wird keine Linie dafür gezeichnet.',

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
