import type { Sentence } from '../types.js';

const sides: Readonly<Record<string, string>> = { length: 'Länge', width: 'Breite', height: 'Höhe' };

const wallsOf = (walls: unknown): string =>
  typeof walls === 'number' && walls !== 6
    ? `${walls} (der Reihe nach die ${walls - 2} Wände des Grundrisses, Boden, Decke)`
    : 'sechs (zwei Stirnwände, zwei Seitenwände, Boden, Decke)';

/** The German of `en/errors-house.ts`. */
export const houseErrors: Readonly<Record<string, Sentence>> = {
  'room-size-form': (p, n) =>
    `„${n.text(p.text)}“ ist keine Raumgröße. Geben Sie Länge, Breite und Höhe an wie in 5,3x4,1x2,7 (Meter; 4.5 gilt wie 4,5) oder 16x12x8 ft.`,
  'room-side-bounds': (p, n) =>
    `Die ${sides[n.text(p.side)] ?? 'Seite'} des Raums ist mit ${n.significant(p.value, 4)} m angegeben; berechnet werden Seiten von ${n.text(p.from)} bis ${n.text(p.to)} m: Darunter passt niemand hinein, der hört; darüber liegen die Moden so dicht, dass es nichts bedeutet, eine zu nennen. Prüfen Sie Zahl und Einheit.`,
  'length-form': (p, n) =>
    `„${n.text(p.text)}“ ist keine Länge. Geben Sie eine an wie in 4,5 oder 4.5 (Meter), 450 cm oder 14 ft 9 in.`,
  'number-form': (p, n) => `„${n.text(p.text)}“ ist keine Zahl.`,
  'place-form': (p, n) =>
    `„${n.text(p.text)}“ ist kein Ort. Geben Sie drei Abstände in Metern von einer unteren Ecke an wie in 1.2,0.8,1.1 (mit Dezimalkomma: 1,2; 0,8; 1,1).`,
  'place-outside': (p, n) =>
    `Ein Ort liegt außerhalb des Raums: ${n.text(p.axis)} ist ${n.significant(p.value, 4)} m, der Raum reicht von 0 bis ${n.significant(p.to, 4)} m.`,
  'temperature-bounds': (p, n) =>
    `Eine Temperatur von ${n.significant(p.value)} °C liegt außerhalb dessen, was Räume haben (${n.text(p.from)} bis ${n.text(p.to)} °C). Geben Sie Grad Celsius an.`,
  'humidity-bounds': (p, n) =>
    `Eine relative Feuchte von ${n.significant(p.value)} % liegt außerhalb von ${n.text(p.from)} bis ${n.text(p.to)} %.`,
  'speed-bounds': (p, n) =>
    `Eine Schallgeschwindigkeit von ${n.significant(p.value, 4)} m/s liegt außerhalb dessen, was Raumluft hat (${n.text(p.from)} bis ${n.text(p.to)} m/s). Geben Sie Meter je Sekunde an.`,
  'absorption-count': (p, n) =>
    `Die Absorption ist ein Grad für alle Wände, oder es sind ${wallsOf(p.walls)}; angegeben wurden ${n.text(p.count)}.`,
  'absorption-bounds': (p, n) =>
    `Ein Absorptionsgrad von ${n.significant(p.value)} liegt außerhalb von ${n.text(p.from)} bis ${n.text(p.to)}.`,
  'wall-name': (p, n) =>
    `„${n.text(p.text)}“ ist hier als Wand nicht bekannt. Es gibt: ${n.text(p.names)}. Oder geben Sie Absorptionsgrade an.`,
  'walls-partly': (p, n) =>
    `${n.integer(p.missing)} der Wände sind nicht benannt. Sagen Sie von jeder, woraus sie ist, oder nennen Sie eine Bauart für alle.`,
  'wall-count': (p, n) =>
    `Wände sind eine Bauart für alle, oder es sind ${wallsOf(p.walls)}; angegeben wurden ${n.text(p.count)}.`,
  'plan-form': (p, n) =>
    `„${n.text(p.text)}“ ist kein Grundriss. Geben Sie seine Ecken der Reihe nach an, jede als x,y in Metern, wie in „0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5“ (mit Dezimalkomma: „0;0 6;0 6;3,2“).`,
  'plan-corners': (p, n) =>
    `Der Grundriss hat ${n.text(p.count)} Ecken; berechnet werden ${n.text(p.from)} bis ${n.text(p.to)}.`,
  'plan-side': (p, n) =>
    `Wand ${n.text(p.wall)} des Grundrisses ist ${n.significant(p.value, 3)} m lang; berechnet werden Wände von ${n.significant(p.from, 2)} bis ${n.text(p.to)} m.`,
  'plan-crossing': (p, n) =>
    `Die Wände ${n.text(p.first)} und ${n.text(p.second)} des Grundrisses kreuzen oder berühren sich. Geben Sie die Ecken in der Reihenfolge an, in der man den Raum umschreitet.`,
  'plan-area': (p, n) =>
    `Der Grundriss umschließt ${n.significant(p.value, 2)} m2; berechnet wird ein Raum ab ${n.text(p.from)} m2.`,
  'plan-modes': (p, n) =>
    `Der Grundriss hat bis zu dieser Frequenz etwa ${n.integer(p.count)} Wellen; berechnet werden höchstens ${n.integer(p.most)}. Senken Sie die obere Frequenz.`,
  'plan-place': (p, n) =>
    `Ein Ort liegt außerhalb des Grundrisses: ${n.significant(p.x, 4)}; ${n.significant(p.y, 4)} liegt nicht innerhalb seiner Wände.`,
  'ceiling-sloped': (p, n) =>
    `„${n.text(p.text)}“ ist eine Decke mit mehreren Höhen. Eine schräge oder gestufte Decke liegt außerhalb dessen, was hier berechnet werden kann: Ein Raum ist ein Grundriss mal eine Höhe. Ihre mittlere Höhe gibt bestenfalls einen groben Anhalt.`,
  'plan-mesh': () =>
    'Der Grundriss ließ sich nicht in Dreiecke zerlegen, daher werden seine Moden nicht berechnet. Verschieben Sie eine Ecke um einige Zentimeter.',
  'fit-room-plan': () =>
    'Nur die drei Seiten eines Quaders werden an Resonanzen angepasst; dieser Raum ist durch einen Grundriss gegeben.',
  'fit-room-few': (p, n) =>
    `Seiten werden an Resonanzen unter ${n.hertz(p.toHz, 0)} angepasst, die auf 1 % bekannt sind; darüber hat jede Resonanz eine Mode in der Nähe. Hier sind es ${n.integer(p.count)}; für drei Seiten braucht es mindestens ${n.integer(p.needed)}.`,
  'fit-room-nothing': () =>
    'Die Seiten eines Raums werden an die Resonanzen einer Aufnahme angepasst: Geben Sie beides, und warten Sie, bis sie gelesen ist.',
  'plan-height': () => 'Ein Raum, der durch einen Grundriss gegeben ist, braucht auch seine Höhe.',
  'height-form': (p, n) =>
    `„${n.text(p.text)}“ ist keine Höhe. Geben Sie eine einzige Länge an wie in 2,6 (Meter).`,
  'mode-count': (p, n) =>
    `Der Raum hat bis ${n.hertz(p.toHz, 0)} etwa ${n.integer(p.count)} Moden, zu viele, um eine zu nennen (aufgeführt werden höchstens ${n.integer(p.most)}). Senken Sie die obere Frequenz.`,

  cancelled: () => 'Die Berechnung wurde abgebrochen.',
  'worker-crashed': () =>
    'Die Berechnung brach zweimal ab, weil der Speicher fehlte oder der Browser sie beendete. Versuchen Sie es mit einer kürzeren Datei, oder schließen Sie andere Seiten.',
  'out-of-memory': () =>
    'Dafür reicht der Speicher nicht. Versuchen Sie es mit einer kürzeren Datei, oder schließen Sie andere Seiten.',
  unexpected: (p, n) =>
    `Etwas ging schief, das nicht hätte schiefgehen dürfen (${n.text(p.detail)}). Bitte melden Sie es mit der Datei, die dazu führte.`,
};
