import type { Sentence } from '../types.js';

/** The German of `en/errors-command.ts`. */
export const commandErrors: Readonly<Record<string, Sentence>> = {
  'command-none': (p, n) =>
    `Es fehlt, was zu tun ist: ${n.text(p.commands)}. „ringdown --help“ erklärt jeden Befehl.`,
  'command-unknown': (p, n) => `„${n.text(p.name)}“ ist kein Befehl. Es gibt: ${n.text(p.commands)}.`,
  'option-unknown': (p, n) =>
    `„${n.text(p.name)}“ ist keine Option von „ringdown ${n.text(p.command)}“. „ringdown ${n.text(p.command)} --help“ nennt sie.`,
  'option-value': (p, n) => `Die Option --${n.text(p.name)} braucht einen Wert hinter sich.`,
  'option-flag': (p, n) => `Die Option --${n.text(p.name)} nimmt keinen Wert.`,
  'option-once': (p, n) => `--${n.text(p.name)} wurde mehr als einmal angegeben.`,
  'option-integer': (p, n) => `--${n.text(p.name)} ${n.significant(p.value, 6)} ist keine ganze Zahl.`,
  'option-number': (p, n) =>
    `--${n.text(p.name)} „${n.text(p.text)}“ ist keine Zahl. Gelesen werden Ziffern mit Dezimalkomma oder -punkt.`,
  'option-range': (p, n) =>
    `--${n.text(p.name)} ${n.significant(p.value, 6)} liegt außerhalb von ${n.significant(p.from, 6)} bis ${n.significant(p.to, 6)}.`,
  'option-choice': (p, n) =>
    `--${n.text(p.name)} „${n.text(p.text)}“ ist keines von diesen: ${n.text(p.choices)}.`,
  'option-list': (p, n) =>
    `--${n.text(p.name)} „${n.text(p.text)}“ ist keine Liste von Zahlen wie 0.1,0.2 (mit Dezimalkomma: 0,1; 0,2).`,
  'option-lang': (p, n) =>
    `--lang „${n.text(p.text)}“ ist keine Sprachkennung wie en, de oder de-CH (BCP 47).`,
  'option-missing': (p, n) => `„ringdown ${n.text(p.command)}“ braucht --${n.text(p.name)}.`,
  'option-needs': (p, n) => `--${n.text(p.name)} braucht --${n.text(p.other)}.`,
  'option-both': (p, n) =>
    `--${n.text(p.name)} und --${n.text(p.other)} können nicht zusammen angegeben werden.`,
  'option-count': (p, n) =>
    `--${n.text(p.name)} wurde für ${n.text(p.files)} ${p.files === 1 ? 'Datei' : 'Dateien'} ${n.text(p.count)}-mal angegeben; nötig ist einmal oder einmal je Datei.`,
  'option-order': (p, n) =>
    `--from ${n.significant(p.from, 6)} muss unter --to ${n.significant(p.to, 6)} liegen.`,
  'figure-kind': (p, n) =>
    `„${n.text(p.path)}“ sagt nicht, was für ein Bild es werden soll. Der Name muss auf .svg oder .png enden.`,
  'figure-empty': (p, n) => `Für die Ansicht „${n.text(p.view)}“ gibt es in dieser Datei nichts zu zeigen.`,
  'figure-renderer': (p, n) =>
    `Ein PNG braucht das Paket ${n.text(p.name)}, das nicht installiert ist. Installieren Sie es, oder schreiben Sie ein SVG.`,
  'files-none': (p, n) => `„ringdown ${n.text(p.command)}“ braucht eine Datei zum Lesen.`,
  'files-two': (p, n) =>
    `„ringdown ${n.text(p.command)}“ braucht zwei Dateien, den abgespielten Sweep und dessen Aufnahme; ${Number(p.count) === 1 ? 'angegeben wurde' : 'angegeben wurden'} ${n.text(p.count)}.`,
  'files-many': (p, n) =>
    `„ringdown ${n.text(p.command)}“ ${p.most === 0 ? 'liest keine Datei' : 'liest eine Datei'}, ${p.count === 1 ? 'angegeben wurde' : 'angegeben wurden'} aber ${n.text(p.count)} („${n.text(p.extra)}“).`,
  'file-missing': () => 'Diese Datei gibt es nicht. Prüfen Sie den Pfad.',
  'file-folder': () => 'Das ist ein Ordner und keine Datei. Nennen Sie die Dateien darin.',
  'file-forbidden': () => 'Die Datei darf nicht gelesen werden: Die Berechtigung fehlt.',
  'file-unreadable': (p, n) => `Die Datei konnte nicht gelesen werden (${n.text(p.detail)}).`,
  'file-unwritable': (p, n) => `„${n.text(p.path)}“ konnte nicht geschrieben werden (${n.text(p.detail)}).`,
  'file-too-large': (p, n) =>
    `Die Datei hat ${n.integer(p.megabytes)} MB, mehr als gelesen wird (${n.integer(p.most)} MB). Exportieren Sie die Impulsantwort allein.`,
};
