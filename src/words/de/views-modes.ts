import type { Sentence } from '../types.js';

/** What is said of a room wherever it is shown, and of its modes along the frequency. */
export const modeViews: Readonly<Record<string, Sentence>> = {
  'this-room': () => 'Dieser Raum',
  'room-none': () => 'Noch kein Raum: Mit seinen Seiten stehen hier seine Moden.',
  'room-coming': () => 'Moden des Raums werden berechnet',
  'room-of-sides': (p, n) => `Raum von ${n.text(p.length)} × ${n.text(p.width)} × ${n.text(p.height)} m`,
  'room-of-plan': (p, n) => `Raum mit ${n.integer(p.corners)} Wänden, ${n.metres(p.height)} hoch`,

  // Modes.
  modes: () => 'Moden',
  'modes-name': (p, n) => `Berechnete Moden und gemessene Grate über der Frequenz: ${n.text(p.label)}`,
  'modes-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen; eine Mode oder ein Grat lässt sich dort oder in der Tabelle wählen. Der Regler darunter verschiebt den Cursor.',
  'modes-measured': () => 'Gemessen: Abklingzeit, s',
  'modes-predicted': () => 'Berechnete Moden',
  'modes-per-band': () => 'Berechnete Moden je Terz',
  'transition-band': () => 'Einzelmoden gehen in dichte Moden über',
  'key-tie': () => 'kann diese Mode sein; je kräftiger, desto wahrscheinlicher',
  'key-count': () => 'Moden in einer Terz',
  'key-expected': () => 'bei diesem Volumen erwartet',
  'modes-caption-box': (p, n) =>
    `${n.integer(p.count)} Moden von ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)} eines Quaders mit schallharten Wänden, Schallgeschwindigkeit ${n.number(p.speed, 1)} m/s. Wirkliche Wände verschieben Moden um bis zu 5 oder 6 %.`,
  'modes-caption-plan': (p, n) =>
    `${n.integer(p.count)} Moden von ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)} des Grundrisses mit schallharten Wänden und ebener Decke, nach finiten Elementen auf etwa ${n.percent(p.meshError, 2)}; Schallgeschwindigkeit ${n.number(p.speed, 1)} m/s. Wirkliche Wände verschieben Moden um bis zu 5 oder 6 %.`,
  'modes-caption-ties': () =>
    'Eine Verbindung ist ein Kandidat, kein Beweis: Ihre Stärke ist dessen Wahrscheinlichkeit, und Grate ohne Verbindung erklärt hier nichts.',
  'modes-transition': (p, n) =>
    `Nach den Wänden beginnt die dichte Folge der Moden etwa zwischen ${n.hertz(p.fromHz, 0)} und ${n.hertz(p.toHz, 0)}; eine scharfe Grenzfrequenz wurde nie gefunden.`,
  'modes-transition-measured': (p, n) =>
    `Nach dem gemessenen Ausschwingen beginnt die dichte Folge der Moden etwa zwischen ${n.hertz(p.fromHz, 0)} und ${n.hertz(p.toHz, 0)}; eine scharfe Grenzfrequenz wurde nie gefunden.`,
  'modes-transition-unknown': () =>
    'Wo Einzelmoden in dichte Moden übergehen, hängt von der Abklingzeit ab, die hier nicht bekannt ist.',
  'modes-readout-mode': (p, n) =>
    `Mode ${n.text(p.order)} bei ${n.hertz(p.frequencyHz)}${Number(p.more) > 0 ? ` und ${n.integer(p.more)} weitere` : ''}`,
  'modes-readout-measured': (p, n) => `gemessen ${n.hertz(p.frequencyHz)}, ${n.seconds(p.decayTimeSeconds)}`,
  'modes-readout-band': (p, n) => `${n.integer(p.count)} in der Terz um ${n.hertz(p.centreHz, 0)}`,
  'next-mode': () => 'Zur nächsten',
  'expected-decay': () => 'Erwartete Abklingzeit',
  'nearest-measured': () => 'Nächste gemessene',
  'off-by': () => 'Abweichung',
  'nothing-near': () => 'nichts innerhalb von 6 %',
  'count-column': () => 'Moden',
  'expected-column': () => 'Erwartet',
  'widest-gap': () => 'Größte Lücke',
  'closest-pair': () => 'Engstes Paar',
};
