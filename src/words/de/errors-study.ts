import type { Sentence } from '../types.js';

/** The German of `en/errors-study.ts`. */
export const studyErrors: Readonly<Record<string, Sentence>> = {
  'band-bounds': (p, n) =>
    `Eine Frequenz von ${n.significant(p.value, 4)} Hz liegt außerhalb dessen, was gelesen wird (${n.text(p.from)} bis ${n.text(p.to)} Hz).`,
  'band-order': (p, n) =>
    `Die tiefste gezeigte Frequenz, ${n.significant(p.fromHz, 4)} Hz, muss unter der höchsten liegen, ${n.significant(p.toHz, 4)} Hz.`,
  'frequency-text': (p, n) =>
    `„${n.text(p.text)}“ ist keine Frequenz. Gelesen werden Ziffern mit Dezimalkomma oder -punkt, in Hz.`,
  'frequency-range': (p, n) =>
    `Frequenzen von ${n.significant(p.fromHz, 4)} bis ${n.significant(p.toHz, 4)} Hz sind kein Bereich: Die erste muss über 0 und unter der zweiten liegen.`,
  'grid-frequencies': (p, n) =>
    `Ein Bild braucht mindestens zwei Frequenzen; ${p.count === 1 ? 'angegeben wurde' : 'angegeben wurden'} ${n.text(p.count)}.`,
  'grid-top': (p, n) =>
    `Verlangt wurden Frequenzen bis ${n.significant(p.toHz, 4)} Hz; bei der Abtastrate dieser Datei müssen sie über 0 liegen und dürfen höchstens ${n.significant(p.highestHz, 4)} Hz erreichen.`,
  'grid-window': (p, n) =>
    `Ein Fenster von ${n.significant(p.seconds)} s liegt außerhalb von ${n.text(p.from)} bis ${n.text(p.to)} s.`,
  'grid-step': (p, n) =>
    `Schritte von ${n.significant(p.step)} s über ${n.significant(p.span)} s ergeben kein Bild. Schritte beginnen bei ${n.number(0.5, 1)} ms, und ein Bild fasst höchstens 20000 davon.`,
  'grid-silent': () =>
    'Beim Einsatz ist in diesem Band nichts zu hören: Der erste Schnitt enthält nur Nullen, es lässt sich also kein Pegel darauf beziehen.',
  'study-not-json': () =>
    'Das ist keine gespeicherte Studie: Es ist kein JSON. Wählen Sie die Datei, die „Studie speichern“ geschrieben hat, oder eine Aufnahme.',
  'study-not-ours': () =>
    'Diese JSON-Datei ist keine gespeicherte Studie: Sie sagt es nicht von sich. Wählen Sie die Datei, die „Studie speichern“ geschrieben hat.',
  'study-newer': (p, n) =>
    `Die Studie wurde als Version ${n.text(p.version)} gespeichert, gelesen werden hier Versionen bis ${n.text(p.known)}. Öffnen Sie sie mit einem neueren ringdown.`,
  'study-broken': (p, n) =>
    `Die gespeicherte Studie ist beschädigt: ${p.where ? `„${n.text(p.where)}“ enthält nicht, was es soll` : 'Sie enthält nicht, was sie soll'}. Nichts davon wurde übernommen. Speichern Sie sie noch einmal, oder öffnen Sie die Aufnahmen selbst.`,
  'study-full': (p, n) =>
    `Eine Studie fasst höchstens ${n.text(p.most)} Aufnahmen, und das wären ${n.text(p.count)}. Entfernen Sie einige, oder beginnen Sie eine andere Studie.`,
  'study-memory': (p, n) =>
    `Eine Studie fasst höchstens ${n.number(p.most, 0)} MB an Abtastwerten, und das wären ${n.number(p.megabytes, 0)} MB. Entfernen Sie einige Aufnahmen, oder kürzen Sie sie auf die Impulsantworten.`,
  'study-too-large': (p, n) =>
    `Die Datei hat ${n.number(p.megabytes, 0)} MB, mehr als eine gespeicherte Studie je hat (64 MB). Sie wurde nicht gelesen.`,
  'autosave-refused': () =>
    'Die Studie kann auf dieser Seite nicht aufbewahrt werden: Der Browser lässt sie nichts behalten (privates Fenster oder gesperrt). Speichern Sie sie als Datei.',
  'autosave-unread': () =>
    'Was dieser Browser aufbewahrt hatte, war nicht zu lesen; es wurde beiseitegelegt und nicht gelöscht.',
  'autosave-full': () =>
    'Die Studie konnte auf dieser Seite nicht behalten werden: Der Browser gibt ihr keinen Platz mehr. Speichern Sie sie als Datei.',
};
