import type { Sentence } from '../types.js';

/** The German of `en/errors-page.ts`. */
export const pageErrors: Readonly<Record<string, Sentence>> = {
  'fetch-status': (p, n) =>
    `Die Datei konnte nicht von ${n.text(p.url)} geholt werden: Der Server antwortete ${n.text(p.status)}. Prüfen Sie die Adresse in „${n.text(p.name ?? 'src')}“.`,
  'fetch-failed': (p, n) =>
    `Die Datei konnte nicht von ${n.text(p.url)} geholt werden: Der Server ist nicht erreichbar oder lässt sie von dieser Seite nicht lesen. Prüfen Sie die Adresse in „${n.text(p.name ?? 'src')}“.`,
  'fetch-page': (p, n) =>
    `Was der Server von ${n.text(p.url)} gesandt hat, ist eine Webseite und keine Aufnahme. Prüfen Sie die Adresse in „${n.text(p.name ?? 'src')}“.`,
  'fetch-large': (p, n) =>
    `Die Datei unter ${n.text(p.url)} hat mehr als ${n.number(p.mostMegabytes, 0)} MB (bisher ${n.number(p.megabytes, 0)} MB), mehr als im Speicher gehalten wird. Sie wurde nicht weiter gelesen.`,
  'fetch-slow': (p, n) =>
    `Der Server von ${n.text(p.url)} hat ${n.number(p.seconds, 0)} s lang nichts gesandt, daher wurde die Datei aufgegeben. Laden Sie die Seite neu, oder prüfen Sie die Adresse in „${n.text(p.name ?? 'src')}“.`,
  'study-missing': (p, n) =>
    `Auf dieser Seite gibt es kein ringdown-study mit der Kennung „${n.text(p.id)}“, wie „for“ es verlangt. Prüfen Sie die Kennung.`,
  'attribute-number': (p, n) =>
    `Das Attribut ${n.text(p.name)}="${n.text(p.text)}" ist keine Zahl. Gelesen werden Ziffern mit Dezimalkomma oder -punkt.`,
  'attribute-range': (p, n) =>
    `Das Attribut ${n.text(p.name)} ist ${n.significant(p.value, 6)} und liegt außerhalb von ${n.significant(p.from, 6)} bis ${n.significant(p.to, 6)}.`,
  'attribute-choice': (p, n) =>
    `Das Attribut ${n.text(p.name)}="${n.text(p.text)}" ist keines von diesen: ${n.text(p.choices)}.`,
  'attribute-order': (p, n) =>
    `Das Attribut from (${n.hertz(p.fromHz)}) muss unter to (${n.hertz(p.toHz)}) liegen.`,
  'attribute-list': (p, n) =>
    `Das Attribut ${n.text(p.name)}="${n.text(p.text)}" ist keine Liste von Zahlen wie 0.1 oder 0.1 0.1 0.2 0.2 0.3 0.1.`,
  'place-unknown': (p, n) =>
    `„${n.text(p.text)}“ ist weder ein Ort dieser Studie noch drei Abstände in Metern wie 1.2 0.8 1.1.`,
  'link-version': (p, n) =>
    `Der Link zu einer Ansicht beginnt mit „${n.text(p.version)}“, gelesen wird hier Version ${n.text(p.known)}. Die Ansicht ist, wie sie war.`,
  'link-long': (p, n) =>
    `Der Link zu einer Ansicht hat ${n.integer(p.letters)} Zeichen, mehr als jede Ansicht braucht (${n.integer(p.most)}). Die Ansicht ist, wie sie war.`,
  'link-part': (p, n) =>
    `Der Link zu einer Ansicht ist nicht zu lesen: „${n.text(p.part)}“ ist nichts, was eine Ansicht hat, oder kein Wert dafür. Die Ansicht ist, wie sie war.`,
  'link-recording': () =>
    'Der Link zeigt eine Aufnahme, die nicht unter denen dieser Seite ist. Der Rest der Ansicht ist, wie der Link ihn hat.',
  'link-ridge': (p, n) =>
    `Der Link wählt einen Grat bei ${n.hertz(p.frequencyHz)}, und hier gibt es keinen. Der Rest der Ansicht ist, wie der Link ihn hat.`,
  'file-read': (p, n) =>
    `Der Browser konnte die Datei nicht lesen (${n.text(p.detail)}). Wählen Sie sie noch einmal.`,
  'more-missing': (p, n) =>
    `Dafür wird die Datei ${n.text(p.name)} neben der gebraucht, die die Seite lädt, und sie kam nicht (${n.text(p.detail)}). Beide aus einer Ausgabe gehören in einen Ordner.`,
  'more-words': (p, n) =>
    `Abgelehnt (${n.text(p.code)}). Der Grund steht in der Datei ${n.text(p.name)}, die von neben der geladenen Datei nicht gekommen ist.`,
  'words-language': (p, n) =>
    `Wörter brauchen eine Sprache wie „de“ oder „de-AT“ (BCP 47); „${n.text(p.text)}“ ist keine. Nichts davon wurde übernommen.`,
  'words-table': (p, n) =>
    `„${n.text(p.name)}“ ist keine nach Codes geordnete Tabelle von Wörtern. Nichts davon wurde übernommen.`,
  'words-unknown': (p, n) =>
    `Eine Tabelle von Wörtern namens „${n.text(p.name)}“ gibt es nicht; es gibt ${n.text(p.names)}. Nichts davon wurde übernommen.`,
  'words-sentence': (p, n) =>
    `„${n.text(p.code)}“ der Tabelle „${n.text(p.name)}“ muss Text sein oder eine Funktion, die Text ergibt. Nichts von den Wörtern wurde übernommen.`,
  'words-term': (p, n) =>
    `„${n.text(p.code)}“ der Tabelle „${n.text(p.name)}“ muss einen Namen (name) und eine Bedeutung (meaning) haben, beides Text. Nichts von den Wörtern wurde übernommen.`,
  'words-text': (p, n) =>
    `„${n.text(p.code)}“ der Tabelle „${n.text(p.name)}“ muss Text sein. Nichts von den Wörtern wurde übernommen.`,
};
