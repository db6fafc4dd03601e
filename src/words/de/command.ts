import type { Sentence } from '../types.js';

const one = (count: unknown): boolean => Number(count) === 1;

/** What the command says of its own. */
export const commandSentences: Readonly<Record<string, Sentence>> = {
  // Diagnosis.
  file: (p, n) =>
    `${n.integer(p.sampleRate)} Hz, Kanal ${n.text(p.channel)} von ${n.text(p.channels)}, ${n.seconds(p.seconds)}, Einsatz bei ${n.seconds(p.onsetSeconds, 4)}`,
  'head-range': () => 'Dynamik, dB',
  'head-decay': () => 'Abklingzeit, s',
  'no-resonance': () => 'Es wurde keine Resonanz gefunden.',
  'no-ridge': (p, n) =>
    `Kein Grat liegt über der Grenze „${n.text(p.limit)}“. Das gilt für diesen Hörplatz und diese Quelle: Aus einem ihrer Druckknoten ist eine Mode nicht zu sehen.`,
  ridges: (p, n) => `Grate über der Grenze „${n.text(p.limit)}“, der schlimmste zuerst`,
  remedies: () => 'Was helfen kann, nach der Nummer des Grats',
  'may-be': (p, n) => `${n.text(p.number)}. ${n.hertz(p.frequencyHz)} kann sein: ${n.text(p.list)}.`,
  candidate: (p, n) =>
    `(${n.text(p.order)}) ${n.text(p.kind)} bei ${n.hertz(p.frequencyHz)}: ${n.percent(p.weight)}`,
  none: (p, n) => `keiner davon: ${n.percent(p.share)}`,
  run: (p, n) => `${n.text(p.from)} bis ${n.text(p.to)}`,
  resonances: () => 'Alle Resonanzen',
  'room-modes': (p, n) =>
    `Raum von ${n.text(p.sides)} m bei ${n.number(p.speed, 1)} m/s, Moden in Hz: ${n.text(p.list)}${Number(p.more) > 0 ? ` und ${n.integer(p.more)} weitere (ringdown modes nennt sie)` : ''}.`,

  // Modes.
  box: (p, n) => `Raum von ${n.text(p.sides)} m`,
  plan: (p, n) =>
    `Raum mit einem Grundriss aus ${n.text(p.corners)} Wänden, ${n.number(p.area, 1)} m2, ${n.significant(p.height, 4)} m hoch`,
  room: (p, n) =>
    `${n.text(p.shape)}, ${n.number(p.volume, 1)} m3, Schallgeschwindigkeit ${n.number(p.speed, 1)} m/s.`,
  crowd: (p, n) =>
    `Einzelmoden gehen etwa zwischen ${n.hertz(p.fromHz, 0)} und ${n.hertz(p.toHz, 0)} in dichte Moden über (um ${n.hertz(p.frequencyHz, 0)}).`,
  'crowd-unknown': () =>
    'Wo Einzelmoden in dichte Moden übergehen, hängt von der Abklingzeit ab; geben Sie zur Abschätzung --absorption oder --walls an.',
  'modes-box': (p, n) =>
    `${n.integer(p.count)} Moden bis ${n.hertz(p.toHz, 0)}. Wirkliche Wände verschieben Moden um bis zu 5 oder 6 % gegenüber dem schallharten Quader.`,
  'modes-plan': (p, n) =>
    `${n.integer(p.count)} Moden bis ${n.hertz(p.toHz, 0)}. Wirkliche Wände verschieben Moden um bis zu 5 oder 6 % gegenüber schallharten.`,
  mesh: (p, n) =>
    `Nach finiten Elementen im Grundriss und Kosinus in der Höhe; das Netz lässt die Frequenzen auf etwa ${n.percent(p.meshError, 3)} genau.`,
  'walls-memory': () =>
    'Die Absorption benannter Wände ist die eines Handbuchs, aus dem Gedächtnis zitiert, und unter 125 Hz festgehalten; gebaute Wände unterscheiden sich um den Faktor zwei.',
  'levels-known': (p) =>
    `Pegel sind die eines Dauertons auf der Mode, dB bezogen auf dieselbe Quelle im Freifeld in 1 m${one(p.sources) ? '' : ', Quelle je Hörplatz'}.`,
  'levels-relative': (p) =>
    `Pegel sind dB bezogen auf Quelle und Hörplatz in Ecken${one(p.sources) ? '' : ', Quelle je Hörplatz'}.`,
  node: () => 'Knoten',
  'head-seat': (p, n) => `Platz ${n.text(p.number)}`,

  // Grid.
  recording: (p, n) => `${n.text(p.label)}, Kanal ${n.text(p.channel)}`,
  'grid-legend': () =>
    'dB; in Klammern, wo es Rauschen ist, ein Punkt, wo es keine Daten oder keine Bedeutung gibt.',

  // Files that are written.
  sweep: (p, n) =>
    `${n.text(p.path)}: exponentieller Sweep von ${n.significant(p.fromHz)} bis ${n.significant(p.toHz)} Hz in ${n.seconds(p.seconds, 1)} und ${n.seconds(p.silenceSeconds, 1)} Stille, mit ${n.integer(p.sampleRate)} Hz, 24 Bit, Spitze ${n.decibels(p.levelDb)} re Vollaussteuerung.`,
  'sweep-record': () =>
    'Nehmen Sie auf von vor seinem Beginn bis nach seinem Ausklingen, mit derselben Abtastrate und ohne Effekte; dann: ringdown response SWEEP AUFNAHME --out DATEI.wav',
  caution: (p, n) => `Vorsicht: ${n.text(p.sentence)}`,
  response: (p, n) =>
    `${n.text(p.path)}: Impulsantwort von ${n.seconds(p.seconds)} mit ${n.integer(p.sampleRate)} Hz, 32 Bit Gleitkomma, aus einem Sweep von ${n.significant(p.fromHz)} bis ${n.significant(p.toHz)} Hz in ${n.seconds(p.sweepSeconds, 1)}. Außerhalb dieses Bandes enthält sie nichts.`,
  'response-table': () =>
    'Eintreffen nach dem Beginn des Sweeps und Verzerrung bezogen auf die Impulsantwort (aus ihr herausgehalten; ein Strich, wo sie im Rauschen untergeht)',
  'head-channel': () => 'Kanal',
  'head-arrival': () => 'Eintreffen',
  'head-order': (p, n) => `Ordnung ${n.text(p.order)}`,
  synth: (p, n) =>
    `${n.text(p.path)}: ${n.seconds(p.seconds)} mit ${n.integer(p.sampleRate)} Hz, 32 Bit Gleitkomma, eine Summe aus ${n.integer(p.modes)} Moden; der Einsatz liegt bei ${n.seconds(p.onsetSeconds, 4)}.`,

  // Help.
  'help-usage': (p, n) => `Aufruf: ${n.text(p.usage)}`,
  'help-more': () =>
    '„ringdown BEFEHL --help“ nennt die Optionen eines Befehls; „ringdown --version“ gibt die Version aus.',
  'help-status': () =>
    'Rückgabewert: 0 erledigt; 1 eine Datei wurde abgelehnt (die anderen sind erledigt); 2 der Aufruf stimmt nicht.',
  'help-command': () => 'BEFEHL',
};
