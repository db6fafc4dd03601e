import type { CommandHelp } from '../command.js';

/** What each command does and takes. */
const roomHelp = [
  ['--room LxWxH', 'Seiten in Metern wie 5.3x4.1x2.7 oder 16x12x8 ft; 4,5 gilt wie 4.5'],
  ['--plan "X,Y ..."', 'stattdessen die Ecken des Grundrisses, m, wie „0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5“'],
  ['--height M', 'Höhe zu einem Grundriss; die Decke muss eben sein'],
  ['--temperature C', 'der Luft, für die Schallgeschwindigkeit (20)'],
  ['--humidity PROZENT', 'relative Feuchte, für die Schallgeschwindigkeit'],
  ['--speed M/S', 'die Schallgeschwindigkeit selbst, statt der beiden davor'],
] as const;

const bandHelp = [
  ['--from HZ', 'tiefste Frequenz (20)'],
  ['--to HZ', 'höchste Frequenz (200)'],
] as const;

const channelHelp = ['--channel N', 'zu lesender Kanal, ab 1 gezählt; nie summiert'] as const;
const rateHelp = ['--rate HZ', 'Abtastrate einer Textdatei, die keine Zeiten enthält'] as const;
const measurementHelp = ['--measurement N', 'welche Messung einer AES69-Datei (SOFA), ab 1 (1)'] as const;
const givenHelp = [
  ['--microphone DATEI', 'Text mit dem Mikrofonfrequenzgang (Hz und dB), der abgezogen wird; auch je Datei'],
  ['--calibration DB', 'Schalldruckpegel eines voll aussteuernden Sinus, dB re 20 µPa; auch je Datei'],
] as const;
const absorptionHelp = [
  '--absorption A',
  'Absorptionsgrad aller Wände oder sechs (x=0, x=L, y=0, y=W, Boden, Decke)',
] as const;
const wallsHelp = [
  '--walls NAMEN',
  'stattdessen, woraus alle oder die sechs sind (ein unbekannter Name nennt alle)',
] as const;
const jsonHelp = ['--json', 'ein JSON-Dokument je Datei und Zeile, Version 1'] as const;
const langHelp = ['--lang KENNUNG', 'Sprache der Wörter (en oder de) und der Zahlen (en)'] as const;
const viewHelp = [
  ['--method NAME', 'sliding (Vorgabe), cumulative oder constant-q'],
  ['--window S', 'Länge des Fensters (0.3)'],
  ['--step S', 'Zeit zwischen zwei Schnitten (0.01)'],
  ['--span S', 'gezeigte Zeit ab dem Einsatz (1)'],
] as const;
const limitHelp = ['--limit NAME', 'audibility (Vorgabe), target oder neighbours'] as const;

export const commandHelp: Readonly<Record<string, CommandHelp>> = {
  diagnose: {
    brief: 'was im Bass von Impulsantworten nachklingt und was man dagegen tun kann',
    usage: 'ringdown diagnose DATEI... [Optionen]',
    does: 'Liest Impulsantworten (WAV, AES69 oder Text mit einer oder zwei Spalten), passt an, was klingt, und markiert die Grate, die stehen bleiben, jeden mit seiner Grenze, den Raummoden, die es sein können, und dem, was helfen kann.',
    options: [
      ...roomHelp,
      channelHelp,
      rateHelp,
      measurementHelp,
      ...givenHelp,
      ...bandHelp,
      limitHelp,
      ['--seat X,Y,Z', 'Ort des Mikrofons, m von einer unteren Ecke; einmal oder einmal je Datei'],
      ['--source X,Y,Z', 'Ort der Quelle, ebenso'],
      [
        '--near-field DATEI',
        'dicht an einer Quelle: zeigt, ob sie selbst nachklingt; kein Hörplatz; mehrfach',
      ],
      ['--near-distance M', 'wie dicht, an Öffnung oder Membranmitte (0.05); einmal oder je --near-field'],
      ['--near-source X,Y,Z', 'vor welcher Quelle, durch deren Ort; ebenso'],
      ['--together', 'die Dateien sind aus einem Raum: zusammen angepasst, ein Dokument'],
      ['--fit-room', 'die Seiten von --room an die Resonanzen anpassen, mit der Chance eines Zufalls'],
      jsonHelp,
      langHelp,
    ],
    more: [
      'Jede Datei wird für sich gelesen, wenn nicht --together oder mehrere Orte sagen, dass alle aus',
      'einem Raum sind. Eine abgelehnte Datei hält die anderen nicht auf.',
    ],
  },
  grid: {
    brief: 'Pegel über Zeit und Frequenz als Zahlen',
    usage: 'ringdown grid DATEI [Optionen]',
    does: 'Berechnet den Pegel über Zeit und Frequenz, die Zahlen eines Wasserfalls oder Spektrogramms.',
    options: [
      ...viewHelp,
      ...bandHelp,
      channelHelp,
      rateHelp,
      measurementHelp,
      ...givenHelp,
      ['--csv', 'alle Pegel als kommagetrennte Werte'],
      ['--json', 'alle Pegel und Grenzen als ein JSON-Dokument'],
      langHelp,
    ],
    more: ['Ohne --csv oder --json wird eine kurze Tabelle ausgegeben.'],
  },
  modes: {
    brief: 'die stehenden Wellen eines Raums und wie laut jede an seinen Plätzen ist',
    usage: 'ringdown modes --room LxWxH | --plan ECKEN --height M [Optionen]',
    does: 'Nennt die stehenden Wellen eines Raums mit schallharten Wänden, eines Quaders oder eines Grundrisses mal eine Höhe, und wie laut jede an den Hörplätzen ist.',
    options: [
      ...roomHelp,
      absorptionHelp,
      wallsHelp,
      ['--seat X,Y,Z', 'Ort eines Hörplatzes, m von einer unteren Ecke; auch mehrmals'],
      ['--source X,Y,Z', 'Ort einer Quelle, ebenso; ohne Angabe eine Ecke des Bodens'],
      ['--to HZ', 'höchste Frequenz (200)'],
      jsonHelp,
      langHelp,
    ],
    more: [],
  },
  figure: {
    brief: 'ein Bild als SVG oder PNG, von einer Aufnahme, einer gespeicherten Studie oder einem Raum',
    usage: 'ringdown figure DATEI --view NAME --out DATEI.svg|DATEI.png [Optionen]',
    does: 'Zeichnet ein Bild mit seinen Zeichen, seiner Beschriftung und Herkunft: von einer Impulsantwort, einer gespeicherten Studie (JSON) oder mit --view modes von einem Raum allein.',
    options: [
      ['--view NAME', 'waterfall (Vorgabe), spectrogram, decay-times, response oder modes'],
      ['--out DATEI', 'wohin geschrieben wird; .svg oder .png sagt, was es ist'],
      ['--look NAME', 'paper (Vorgabe), light oder dark'],
      ['--scale NAME', 'Pegelfarben: auto (nach dem Aussehen, Vorgabe), dusk, dawn oder clear'],
      ['--width PX', 'Breite des Bildes, in dem Buchstaben 11 haben (900)'],
      ['--pixels N', 'Breite eines PNG in Pixeln (1800)'],
      ['--label TEXT', 'wie es heißt (der Name der Datei)'],
      ...viewHelp,
      ['--range DB', 'gezeigte Pegel unter dem höchsten (50)'],
      limitHelp,
      ...bandHelp,
      ...roomHelp,
      channelHelp,
      rateHelp,
      measurementHelp,
      ...givenHelp,
      langHelp,
    ],
    more: ['Ein PNG braucht neben diesem das Paket @resvg/resvg-js; ein SVG braucht nichts.'],
  },
  sweep: {
    brief: 'ein Sweep zum Abspielen und Aufnehmen, als WAV-Datei',
    usage: 'ringdown sweep --out DATEI.wav [Optionen]',
    does: 'Schreibt einen exponentiellen Sweep, aus dem „ringdown response“ die Impulsantwort eines Raums berechnet.',
    options: [
      ['--from HZ', 'wo er beginnt (15)'],
      ['--to HZ', 'wo er endet (400)'],
      ['--seconds S', 'wie lange er dauert (10)'],
      ['--silence S', 'dahinter, damit der Raum ausklingt (4)'],
      ['--rate HZ', 'Abtastrate (48000)'],
      ['--level DB', 'Spitze re Vollaussteuerung, -60 bis -3 (-12)'],
      ['--out DATEI.wav', 'wohin geschrieben wird'],
      langHelp,
    ],
    more: [
      'Er ist ein lauter, langer, tiefer Ton: Beginnen Sie leise, schützen Sie Ohren und Lautsprecher,',
      'und bleiben Sie innerhalb der Grenzen des Herstellers; der Befehl wiederholt die Warnungen,',
      'sooft er einen schreibt.',
    ],
  },
  response: {
    brief: 'die Impulsantwort aus einem aufgenommenen Sweep, als WAV-Datei',
    usage: 'ringdown response SWEEP AUFNAHME --out DATEI.wav [Optionen]',
    does: 'Teilt die Aufnahme eines exponentiellen Sweeps durch den abgespielten Sweep (ISO 18233), hält die Verzerrung des Lautsprechers aus der Impulsantwort heraus und sagt, wie stark sie war.',
    options: [
      ['--channel N', 'der Aufnahme, ab 1 gezählt; alle, wenn keiner genannt ist'],
      ['--out DATEI.wav', 'wohin geschrieben wird'],
      langHelp,
    ],
    more: [
      'SWEEP ist die abgespielte Datei, womit auch immer sie gemacht ist, oder dieselbe über Kabel',
      'aufgenommen.',
    ],
  },
  synth: {
    brief: 'die Impulsantwort eines Quaders, als WAV-Datei',
    usage: 'ringdown synth --room LxWxH --seat X,Y,Z --source X,Y,Z --out DATEI.wav [Optionen]',
    does: 'Berechnet die Impulsantwort eines Quaders zwischen zwei Orten als Summe seiner Moden und schreibt sie als WAV-Datei mit Gleitkomma.',
    options: [
      ...roomHelp,
      ['--seat X,Y,Z', 'Ort des Mikrofons, m von einer unteren Ecke'],
      ['--source X,Y,Z', 'Ort der Quelle'],
      absorptionHelp,
      wallsHelp,
      ['--seconds S', 'Länge (2)'],
      ['--rate HZ', 'Abtastrate (48000)'],
      ['--noise DB', 'Rauschen in 20 bis 200 Hz, dB re Spitze der Impulsantwort, oder none (-70)'],
      ['--seed N', 'des Rauschens: derselbe Wert gibt dieselbe Datei (1)'],
      ['--out DATEI.wav', 'wohin geschrieben wird'],
      langHelp,
    ],
    more: [],
  },
};
