import type { Term } from '../types.js';

type Terms = Readonly<Record<string, Term>>;

export const resonanceKinds: Terms = {
  resolved: { name: 'eine Mode', meaning: 'Eine Mode, von ihren Nachbarn getrennt.' },
  cluster: {
    name: 'Gruppe',
    meaning: 'Steht für mehrere Moden, so dicht, dass kein Verfahren sie in dieser Aufnahme trennen könnte.',
  },
  'two-slopes': {
    name: 'zwei Steigungen',
    meaning: 'Eine Frequenz, die auf zwei Weisen abklingt; die Abklingzeit ist die der späteren.',
  },
  hum: { name: 'Brummen', meaning: 'Ein Dauerton, der nie abklingt: elektrisch, nicht vom Raum.' },
  source: { name: 'Quelle', meaning: 'So kurz, dass es vom Lautsprecher oder vom Direktschall stammt.' },
};

export const modeKinds: Terms = {
  axial: { name: 'axial', meaning: 'Zwischen zwei gegenüberliegenden Wänden.' },
  tangential: { name: 'tangential', meaning: 'Zwischen zwei Wandpaaren.' },
  oblique: { name: 'oblique', meaning: 'Zwischen allen drei Wandpaaren.' },
  plan: {
    name: 'im Grundriss',
    meaning: 'Zwischen den Wänden des Grundrisses, in jeder Höhe gleich.',
  },
  mixed: {
    name: 'in Grundriss und Höhe',
    meaning: 'Zwischen den Wänden des Grundrisses sowie Boden und Decke.',
  },
};

export const constructions: Terms = {
  concrete: { name: 'Beton', meaning: 'Glatter Beton, gestrichen oder nicht.' },
  'painted-brick': { name: 'Mauerwerk, gestrichen', meaning: 'Ziegel oder Blockstein, gestrichen.' },
  'plaster-on-brick': { name: 'Putz auf Mauerwerk', meaning: 'Putz direkt auf Ziegel oder Blockstein.' },
  'plasterboard-on-studs': {
    name: 'Gipskarton auf Ständerwerk',
    meaning: 'Eine Lage Gipskarton vor einem leeren Hohlraum.',
  },
  'wood-panelling': { name: 'Holzvertäfelung', meaning: 'Dünne Holzplatten auf Latten.' },
  'wood-floor-on-joists': { name: 'Holzboden auf Balken', meaning: 'Dielen über einem Hohlraum.' },
  'parquet-on-concrete': { name: 'Parkett auf Beton', meaning: 'Holz direkt auf Beton verlegt.' },
  carpet: { name: 'Teppich', meaning: 'Teppich direkt auf hartem Boden.' },
  'carpet-on-underlay': { name: 'Teppich auf Unterlage', meaning: 'Teppich auf weicher Unterlage.' },
  window: { name: 'Fenster', meaning: 'Gewöhnliches Fensterglas.' },
  'large-pane': { name: 'große Scheibe', meaning: 'Große Scheiben aus schwerem Glas.' },
  'heavy-curtain': { name: 'schwerer Vorhang', meaning: 'Schwerer Stoff, auf halbe Breite gerafft.' },
  'mineral-wool-50': { name: 'Mineralwolle, 50 mm', meaning: 'Offene Platten auf harter Wand.' },
  'mineral-wool-100': { name: 'Mineralwolle, 100 mm', meaning: 'Offene Platten auf harter Wand.' },
};

export const causes: Terms = {
  'room-mode': { name: 'Raummode', meaning: 'Eine stehende Welle des Raums kann es erklären.' },
  boundary: {
    name: 'Grenzfläche',
    meaning: 'Eine Reflexion an einer nahen Fläche: ein Einbruch ohne Nachklingen.',
  },
  hum: { name: 'Brummen', meaning: 'Elektrisches Brummen: Es klingt nie ab.' },
  source: { name: 'Quelle', meaning: 'Das Ausschwingen des Lautsprechers selbst.' },
  equaliser: { name: 'Equalizer', meaning: 'Eine Anhebung, die selbst nachklingt.' },
  coupled: {
    name: 'gekoppelter Raum',
    meaning: 'Ein benachbarter Raum, der seinen Schall langsam zurückgibt.',
  },
  unknown: { name: 'unbekannt', meaning: 'Es klingt nach, aber nichts Bekanntes erklärt es.' },
};

export const limits: Terms = {
  audibility: {
    name: 'Hörbarkeit',
    meaning:
      'Ein Band zwischen veröffentlichten Schwellen hörbaren modalen Ausschwingens, 32 bis 250 Hz; die Interpolation zwischen ihren Punkten ist unsere, und unter 63 Hz widersprechen sich die Befunde.',
  },
  target: {
    name: 'Zielwert',
    meaning:
      'Ein Zielwert der Nachhallzeit eines Hörraums aus seinem Volumen, zum Bass hin angehoben; die Steigung ist aus dem Gedächtnis angegeben.',
  },
  neighbours: {
    name: 'Nachbarn',
    meaning:
      'Das 1,5-Fache der mittleren Abklingzeit (Median) innerhalb einer Oktave und mehr als zwei Standardabweichungen darüber.',
  },
};

export const audible: Terms = {
  yes: { name: 'ja', meaning: 'Länger als jede hier veröffentlichte Schwelle.' },
  possibly: {
    name: 'vielleicht',
    meaning: 'Zwischen veröffentlichten Schwellen: Die Untersuchungen widersprechen sich.',
  },
  unknown: {
    name: 'unbekannt',
    meaning: 'Für diese Frequenz ist keine Schwelle veröffentlicht.',
  },
};

export const methods: Terms = {
  sliding: {
    name: 'gleitend',
    meaning: 'Ein Fenster gleitet über die Impulsantwort; die Zeit ist die seiner Mitte.',
  },
  cumulative: {
    name: 'kumulativ',
    meaning: 'Das Spektrum dessen, was nach jedem Zeitpunkt bleibt; die Zeit ist die des linken Randes.',
  },
  'constant-q': {
    name: 'konstante Güte',
    meaning: 'Ein Fenster, dessen Länge der Frequenz folgt; die Zeit ist die seiner Mitte.',
  },
};

export const axes: Terms = {
  log: { name: 'logarithmisch', meaning: 'Jede Oktave ist so breit wie die nächste.' },
  linear: { name: 'linear', meaning: 'Jedes Hertz ist so breit wie das nächste.' },
};

/** What is being done, by the stage codes of the engine. */
export const stages: Readonly<Record<string, string>> = {
  open: 'Datei wird gelesen',
  microphone: 'Mikrofonfrequenzgang wird abgezogen',
  plan: 'Wellen des Grundrisses werden berechnet',
  read: 'Datei wird gelesen',
  onset: 'Einsatz wird gesucht',
  decimate: 'Abtastrate wird herabgesetzt',
  grid: 'Bild wird berechnet',
  floor: 'Grundrauschen wird bestimmt',
  bands: 'Abklingen je Band wird gelesen',
  sweep: 'Impulsantwort wird aus dem Sweep berechnet',
  fit: 'Resonanzen werden angepasst',
  response: 'Frequenzgang wird berechnet',
  diagnose: 'Vergleich mit Grenzen und Moden',
  synth: 'Impulsantwort wird berechnet',
  reduce: 'Bass jeder Aufnahme wird entnommen',
  transfer: 'Übertragung der Quellen zu den Plätzen wird berechnet',
  combine: 'Quellen werden an jedem Platz summiert',
  residues: 'Anregung der Grate durch jede Quelle wird bestimmt',
  optimise: 'Bessere Einstellungen der Quellen werden gesucht',
  listen: 'Klang wird berechnet',
  wait: 'Warten auf einen freien Worker',
};

/** Column heads, buttons, short labels. */
export const labels: Readonly<Record<string, string>> = {
  frequency: 'Frequenz',
  decayTime: 'Abklingzeit',
  q: 'Q',
  edt: 'EDT',
  t20: 'T20',
  t30: 'T30',
  level: 'Pegel',
  limit: 'Grenze',
  excess: 'Vielfaches der Grenze',
  audible: 'Hörbar',
  cause: 'Ursache',
  candidates: 'Kandidaten',
  kind: 'Art',
  order: 'Ordnung',
  planOrder: 'Welle + Höhe',
  time: 'Zeit',
  x: 'x',
  y: 'y',
  z: 'Höhe',
  none: 'keiner davon',
  several: 'mehrere',
  never: 'nie',
  file: 'Datei',
  hash: 'Prüfsumme',
};
