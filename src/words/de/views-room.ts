import type { Sentence } from '../types.js';

/** What the views of the room say: modes, the room itself, where a mode is loud. */
export const roomViews: Readonly<Record<string, Sentence>> = {
  'this-room': () => 'Dieser Raum',
  'room-none': () => 'Noch kein Raum: Mit seinen Seiten stehen hier seine Moden.',
  'room-coming': () => 'Moden des Raums werden berechnet',
  'room-of-sides': (p, n) => `Raum von ${n.text(p.length)} × ${n.text(p.width)} × ${n.text(p.height)} m`,
  'room-of-plan': (p, n) => `Raum mit ${n.integer(p.corners)} Wänden, ${n.metres(p.height)} hoch`,

  // The room.
  'room-name': (p, n) => `Grundriss: ${n.text(p.room)}`,
  'room-help': () =>
    'Ziehen Sie einen Hörplatz, eine Quelle oder eine Ecke, oder verschieben Sie sie mit den Pfeiltasten (um 0,1 m; mit Umschalt um 0,5 m). Die Felder enthalten dieselben Orte mit ihrer Höhe.',
  'room-caption': (p, n) =>
    `${n.text(p.room)}: ${n.number(p.volume, 1)} m³. Schallgeschwindigkeit ${n.number(p.speed, 1)} m/s.`,
  'room-fit': () => 'Seiten an die Grate anpassen',
  'room-fit-working': () => 'Passe die Seiten an, und mit ihnen 99 Sätze zufälliger Resonanzen',
  'room-fit-heading': () => 'Seiten, an die Resonanzen angepasst',
  'room-fit-sides': (p, n) =>
    `${n.text(p.sides)} m statt ${n.text(p.typed)} m, bei ${n.number(p.speed, 1)} m/s. Eine Seite darf um ${n.percent(p.tolerance)} abweichen, die Luft um ${n.integer(p.air)} K: Wände sind nicht starr, und kein Maßband ist vollkommen.`,
  'room-fit-unknown': (p, n) =>
    `${n.text(p.side)}: Keine zugeordnete Resonanz hängt genug davon ab; die Zahl ist keine Messung.`,
  'room-fit-bound': (p, n) =>
    `${n.text(p.side)}: am Ende dessen, was sie abweichen darf; die wahre kann jenseits liegen.`,
  'room-fit-explains': (p, n) =>
    `${n.integer(p.explained)} von ${n.integer(p.count)} Resonanzen bis ${n.hertz(p.toHz, 0)} haben eine Mode innerhalb von 2 %${p.rms === null ? '' : `, ${n.percent(p.rms, 1)} entfernt (Effektivwert)`}; mit den Seiten wie eingegeben ${n.integer(p.asTyped)}${p.rmsAsTyped === null ? '' : `, ${n.percent(p.rmsAsTyped, 1)} entfernt`}.`,
  'room-fit-left': (p, n) => `Keine Mode liegt nahe bei ${n.text(p.list)} Hz.`,
  'room-fit-above': (p, n) =>
    `${n.integer(p.count)} über ${n.hertz(p.toHz, 0)} blieben aus: Dort hat jede Resonanz eine Mode in der Nähe.`,
  'room-fit-chance': (p, n) =>
    `Von ${n.integer(p.trials)} Sätzen zufälliger Resonanzen, ebenso vielen und ebenso dichten, passten ${n.integer(p.asGood)} ebenso gut. ${Number(p.chance) > 0.1 ? 'Diese Anpassung sagt nichts über den Raum.' : 'Das ist besser als Zufall, was die Seiten nicht beweist.'}`,
  'room-fit-common': (p, n) =>
    `Zusammen liegen die Frequenzen ${n.percent(Math.abs(Number(p.share)), 1)} ${Number(p.share) < 0 ? 'tiefer' : 'höher'} als die der eingegebenen Seiten. Luft von ${n.number(p.celsius, 0)} °C bewirkt dasselbe wie eine solche Änderung aller Seiten: Eine Aufnahme kann nicht sagen, was davon.${p.within === false ? ' Aber das ist mehr, als die Luft abweichen darf.' : ''}`,
  'room-fit-rival': (p, n) => `${n.text(p.sides)} m passen ebenso gut.`,
  'room-fit-take': () => 'Diese Seiten übernehmen',
  'room-fit-leave': () => 'Den Raum lassen, wie er eingegeben ist',
  'room-fit-mode': () => 'Mode',
  'room-fit-measured': () => 'Gemessen, Hz',
  'room-fit-fitted': () => 'Angepasst, Hz',
  'room-fit-typed': () => 'Wie eingegeben, Hz',
  'room-fit-off': () => 'Abstand, %',
  'room-empty': () => 'Geben Sie die Seiten des Raums an, oder zeichnen Sie seinen Grundriss.',
  'room-shape': () => 'Form',
  'shape-box': () => 'Quader',
  'shape-plan': () => 'Grundriss',
  'room-unit': () => 'Längen in',
  'unit-m': () => 'Metern',
  'unit-ft': () => 'Fuß und Zoll',
  'feet-inches': (p, n) => `${n.text(p.feet)} ft ${n.text(p.inches)} in`,
  'length-m': (p, n) => `${n.text(p.length)} m`,
  'length-ft': (p, n) => n.text(p.length),
  'room-length': () => 'Länge',
  'room-width': () => 'Breite',
  'room-height': () => 'Höhe',
  'room-temperature': () => 'Luft, °C',
  'room-humidity': () => 'Feuchte, %',
  'room-corners': () => 'Ecken der Reihe nach: x, y',
  'corner-axis': (p, n) => `Ecke ${n.integer(p.number)}: ${n.text(p.axis)}`,
  'corner-remove': (p, n) => `Ecke ${n.integer(p.number)} entfernen`,
  'add-corner': () => 'Ecke hinzufügen',
  'room-walls': () => 'Wände',
  'walls-all': () => 'Alle aus',
  'walls-each': () => 'Einzeln',
  'walls-each-differ': () => 'Einzeln (sie unterscheiden sich)',
  'walls-hint': () =>
    'Nur die erwarteten Abklingzeiten beruhen darauf. Übliche Werte aus dem Gedächtnis: Gebaute Wände gleichen Namens unterscheiden sich um den Faktor zwei und mehr, und kaum welche sind unter 125 Hz gemessen. Wer es besser weiß, trägt einen Absorptionsgrad ein.',
  'wall-own': () => 'eigener Absorptionsgrad',
  'wall-coefficient': (p, n) => `Absorptionsgrad ${n.number(p.value, 2)}`,
  'wall-own-of': (p, n) => `Absorptionsgrad, 0 bis 1, von: ${n.text(p.wall)}`,
  'constructions-table': () => 'Was jede davon absorbieren soll',
  'construction-column': () => 'Bauweise',
  'construction-spread': (p, n) => `Bei ${n.hertz(p.frequencyHz, 0)} zwischen`,
  'construction-from-to': (p, n) => `${n.text(p.from)} und ${n.text(p.to)}`,
  'construction-source': () => 'Quelle',
  'construction-source-memory': () => 'aus dem Gedächtnis; üblich, ohne Beleg',
  'wall-unknown': () => 'nicht bekannt',
  'wall-given': () => 'wie angegeben',
  'wall-0': () => 'Stirnwand bei x = 0',
  'wall-1': () => 'Stirnwand gegenüber',
  'wall-2': () => 'Seite bei y = 0',
  'wall-3': () => 'Seite gegenüber',
  'wall-number': (p, n) => `Wand ${n.integer(p.number)}`,
  'wall-floor': () => 'Boden',
  'wall-ceiling': () => 'Decke',
  places: () => 'Hörplätze und Quellen',
  'place-kind': () => 'Art',
  'place-name': () => 'Name',
  'axis-x': () => 'x',
  'axis-y': () => 'y',
  'axis-z': () => 'Höhe',
  'kind-seat': () => 'Hörplatz',
  'kind-source': () => 'Quelle',
  'seat-number': (p, n) => `Hörplatz ${n.integer(p.number)}`,
  'source-number': (p, n) => `Quelle ${n.integer(p.number)}`,
  'of-recording': () => 'aus einer Aufnahme',
  'place-name-of': (p, n) => `Name von ${n.text(p.name)}`,
  'place-axis': (p, n) => `${n.text(p.name)}: ${p.axis === 'z' ? 'Höhe' : n.text(p.axis)}`,
  'place-remove': (p, n) => `${n.text(p.name)} entfernen`,
  'place-beyond': (p, n) => `${n.text(p.name)} liegt außerhalb der Wände: Dafür wird nichts berechnet.`,
  'add-seat': () => 'Hörplatz hinzufügen',
  'add-source': () => 'Quelle hinzufügen',
  'handle-place': (p, n) => `${n.text(p.name)}: x ${n.text(p.x)}, y ${n.text(p.y)}`,
  'handle-corner': (p, n) => `Ecke ${n.integer(p.number)}: x ${n.text(p.x)}, y ${n.text(p.y)}`,

  // Where a mode is loud.
  'pressure-map': () => 'Schalldruck einer Mode',
  'pressure-map-name': (p, n) => `Schalldruck einer Mode in Grundriss und Schnitt: ${n.text(p.label)}`,
  'pressure-map-help': () =>
    'Zeigen Sie in Grundriss oder Schnitt, um sie abzulesen; Drücken setzt den Cursor dorthin; der Raum wird durch Ziehen gedreht. Die Regler darunter verschieben ihn längs, quer und in der Höhe. Hörplätze und Quellen stehen in der Tabelle.',
  'pressure-room-name': (p, n) => `Druck einer Mode von ${n.text(p.label)} auf Wänden und Boden`,
  'pressure-view-plan': () => 'Grundriss und Schnitt',
  'pressure-view-room': () => 'Raum',
  'room-needs-webgl': () =>
    'Der drehbare Raum braucht WebGL, das hier fehlt oder verweigert wurde; Grundriss und Schnitt zeigen dasselbe.',
  'pressure-room-caption': () =>
    'Die Wände zum Auge hin und die Decke sind weggelassen. Gestrichelte Linien führen von Hörplätzen, Quellen und Cursor zum Boden darunter.',
  'choose-mode': () => 'Mode',
  'mode-choice': (p, n) => `${n.text(p.order)}, ${n.hertz(p.frequencyHz)}`,
  swing: () => 'Schwingen',
  'choose-quantity': () => 'Gezeigt',
  'quantity-pressure': () => 'Schalldruck',
  'quantity-motion': () => 'Schallschnelle',
  'no-motion': () => 'keine Bewegung',
  'motion-readout': (p, n) =>
    `x ${n.metres(p.x, 2)}, y ${n.metres(p.y, 2)}, Höhe ${n.metres(p.z, 2)}: Schnelle ${n.text(p.level)}`,
  'key-motion': () => 'hier bewegt sich die Luft am meisten',
  'motion-caption': () =>
    'Schallschnelle bezogen auf ihren größten Wert, ohne Richtung; sie ist nicht, was man hört: Am größten ist sie in den Druckknoten, und senkrecht zu einer Wand gibt es dort keine. Poröse Absorber wirken, wo sich die Luft bewegt, Platten und Resonatoren, wo der Druck groß ist.',
  'motion-level': () => 'Schnelle',
  'plan-at': (p, n) => `Grundriss in ${n.metres(p.z, 2)} Höhe`,
  'section-at': (p, n) => `Schnitt entlang x bei y = ${n.metres(p.y, 2)}`,
  'cursor-x': () => 'Cursor: x',
  'cursor-y': () => 'Cursor: y',
  'cursor-z': () => 'Cursor: Höhe',
  'on-a-node': () => 'in einem Knoten',
  'pressure-readout': (p, n) =>
    `x ${n.metres(p.x, 2)}, y ${n.metres(p.y, 2)}, Höhe ${n.metres(p.z, 2)}: ${n.text(p.level)}${p.sign === 'none' ? '' : p.sign === 'above' ? ', Überdruck' : ', Unterdruck'}`,
  'pressure-readout-outside': (p, n) => `x ${n.metres(p.x, 2)}, y ${n.metres(p.y, 2)}: außerhalb der Wände`,
  'key-pressure-above': () => 'Überdruck in einem Augenblick',
  'key-pressure-below': () => 'Unterdruck im selben Augenblick',
  'key-node': () => 'Druckknoten: Dort ist die Mode nicht zu hören',
  'pressure-caption': (p, n) =>
    `Mode ${n.text(p.order)}, ${n.text(p.kind)}, ${n.hertz(p.frequencyHz)}. Pegel bezogen auf ihren lautesten Ort; dünne Linien bei halbem Druck${p.inRoom ? '' : ', gestrichelt, wo Unterdruck ist'}.`,
  'pressure-decay': (p, n) => `Nach den Wänden sollte sie ${n.seconds(p.decayTimeSeconds)} nachklingen.`,
  'pressure-limits': () =>
    'Schallharte Wände und leerer Raum: Möbel, Türen und weiche Wände verbiegen die Form, am meisten nahe den Druckknoten.',
  'pressure-no-places': () => 'Noch kein Hörplatz und keine Quelle: nichts, wofür ein Pegel zu nennen wäre.',
  'pressure-at-places': () => 'Die Mode an Hörplätzen und Quellen',
  'pressure-column': () => 'Druck',
  'pressure-level': () => 'Pegel',
  'levels-known': () =>
    'Dauerton auf der Mode, jede Quelle an jedem Hörplatz, dB bezogen auf dieselbe Quelle im Freifeld in 1 m',
  'levels-relative': () => 'Jede Quelle an jedem Hörplatz, dB bezogen auf beide in Ecken',

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
