import type { Sentence } from '../types.js';

/** What the element says through which a room is listened to. */
export const listenViews: Readonly<Record<string, Sentence>> = {
  listen: () => 'Anhören',
  'listen-material': () => 'Gespielt',
  'material-bass-line': () => 'eine Basslinie',
  'material-tone-walk': () => 'eine Tonfolge',
  'material-burst': () => 'drei Bursts',
  'listen-response': () => 'Durch',
  'response-measured': () => 'die Messung',
  'response-predicted': () => 'den berechneten Raum',
  'listen-heard': () => 'Zu hören',
  'heard-dry': () => 'trocken',
  'heard-room': () => 'durch den Raum',
  'heard-treated': () => 'behandelt',
  'heard-mode': () => 'die Mode allein',
  'listen-play': () => 'Abspielen',
  'listen-stop': () => 'Anhalten',
  'listen-render': () => 'Berechnen',
  'listen-mute': () => 'Stumm',
  'listen-volume': () => 'Pegel',
  'listen-muted': () => 'stumm',

  // What is going on.
  'listen-idle': () => 'Es spielt nichts, und der Ton ist stummgeschaltet.',
  'listen-idle-loud': () => 'Es spielt nichts.',
  'listen-working': (p, n) => `Klang wird berechnet: ${n.percent(p.fraction)}`,
  'listen-ready': () =>
    'Der Klang ist berechnet; er lässt sich speichern und in der Tabelle darunter ablesen.',
  'listen-playing-muted': (p, n) =>
    `Es spielt ${n.text(p.material)}, ${n.text(p.heard)}, stummgeschaltet. Drehen Sie die Lautsprecher herunter, und drücken Sie dann „Stumm“.`,
  'listen-playing': (p, n) =>
    `Es spielt ${n.text(p.material)}, ${n.text(p.heard)}, ${n.decibels(p.volumeDb)} unter dem vollen Pegel.`,
  'listen-blocked': () =>
    'Der Browser hält den Ton zurück, bis eine Taste oder ein Knopf gedrückt wird: Drücken Sie „Anhalten“, dann „Abspielen“.',
  'listen-no-audio': () =>
    'Dieser Browser spielt hier keinen Ton; was zu hören wäre, lässt sich berechnen, in der Tabelle ablesen und als WAV-Datei speichern.',

  // Why.
  'listen-why-muted': (p, n) =>
    `Es beginnt stumm, weil ein Klang, den niemand erwartet, Ohren und Lautsprechern schaden kann. Kein Abtastwert überschreitet ${n.decibels(p.ceilingDb)} re Vollaussteuerung: Ein weicher Begrenzer biegt, was über ${n.decibels(p.kneeDb)} liegt, und der Regler macht nur leiser.`,
  'listen-why-bass': () =>
    'Bass bewegt eine Membran weit, bevor er laut klingt: Beginnen Sie leise, erhöhen Sie in Stufen, hören Sie beim ersten Klappern auf, und bleiben Sie innerhalb der Grenzen des Lautsprecherherstellers. Lauter Schall schadet dem Gehör: 85 dBA über 8 h am Tag sind ein empfohlener Grenzwert, je 3 dB mehr halbieren die Zeit, und nationales Recht kann strenger sein.',
  'listen-why-small': (p, n) =>
    `Lautsprecher von Laptops und Telefonen geben unter etwa 60 bis 80 Hz fast nichts wieder (Erfahrung der Praxis)${typeof p.frequencyHz === 'number' && p.frequencyHz < 80 ? `, also auch nicht die ${n.hertz(p.frequencyHz)}, auf die es hier ankommt` : ''}. Nehmen Sie Kopfhörer oder Lautsprecher, die tiefer reichen.`,
  'listen-why-room': () =>
    'Lautsprecher fügen dem Raum, den Sie anhören, den Raum hinzu, in dem Sie sitzen; Kopfhörer nicht.',
  'listen-why-matched': (p, n) =>
    `Alle Klänge sind auf eine mittlere Leistung gebracht (${n.decibels(p.meanDb, 0)} re Vollaussteuerung oder weniger, wo Spitzen es verlangen), damit sie sich darin unterscheiden, wie sie nachklingen, und nicht, wie laut sie sind.`,

  // What is heard.
  'listen-line': (p, n) =>
    `Eine Basslinie auf ${n.hertz(p.rootHz)}, dem Ton, der ${n.hertz(p.centreHz)} am nächsten liegt.`,
  'listen-walk': (p, n) =>
    `Töne in Halbtonschritten von einer halben Oktave unter ${n.hertz(p.centreHz)} bis zu einer halben Oktave darüber.`,
  'listen-burst': (p, n) =>
    `Bursts aus fünf Schwingungen, eine halbe Oktave unter ${n.hertz(p.centreHz)}, genau dort und eine halbe Oktave darüber.`,
  'listen-through-measured': (p, n) =>
    `Durch die Aufnahme ${n.text(p.label)}, verwendet für ${n.seconds(p.seconds)} ab ihrem Einsatz: Danach trifft sie auf ihr Rauschen oder endet.`,
  'listen-through-reduced': (p, n) =>
    `Diese gespeicherte Studie enthält den Bass ihrer Aufnahmen und nicht deren Dateien; alles ist daher nur bis ${n.hertz(p.toHz, 0)} zu hören, auch trocken.`,
  'listen-through-low-rate': (p, n) =>
    `Die Aufnahme hat eine niedrige Abtastrate; alles ist daher nur bis ${n.hertz(p.toHz, 0)} zu hören, auch trocken.`,
  'listen-through-predicted': (p, n) =>
    `Durch eine Impulsantwort, die aus dem Raum berechnet ist: bis 400 Hz aus seinen Moden, darüber der Direktschall${p.assumed ? `, mit einem angenommenen Absorptionsgrad von ${n.number(p.absorption, 1)}, da keine Wände angegeben sind` : ''}. Ein wirklicher Raum ist nicht so einfach.`,
  'listen-through-nothing': () =>
    'Es gibt keine Impulsantwort, durch die zu hören wäre: Geben Sie eine Aufnahme an oder einen Raum mit Hörplatz und Quelle.',
  'listen-treated-design': (p, n) =>
    `Behandelt mit ${Number(p.count) === 1 ? 'dem Filter' : `den ${n.integer(p.count)} Filtern`} dieser Studie: ${n.text(p.bands)}.`,
  'listen-treated-proposed': (p, n) =>
    `Behandelt mit abgestimmten Absenkungen, die für die Grate über ihrer Grenze vorgeschlagen sind: ${n.text(p.bands)}.`,
  'listen-treated-nothing': () =>
    'Nichts zu behandeln: Die Studie hat keine Filter, und kein Grat hier verlangt eine Absenkung.',
  'listen-band': (p, n) => `${n.decibels(p.gainDb, 1)} bei ${n.hertz(p.frequencyHz)}, Q ${n.number(p.q, 1)}`,
  'listen-mode': (p, n) =>
    `Die Mode allein ist ein Resonator von ${n.hertz(p.frequencyHz)}, der in ${n.seconds(p.decayTimeSeconds)} abklingt, angeregt von denselben Tönen.`,
  'listen-mode-nothing': () => 'Es ist keine Mode in Sicht, die sich allein hören ließe.',
  'listen-level-axis': () => 'Pegel, dB re Höchstwert',
  'key-note': () => 'ein Ton wird gespielt',
  'listen-name': (p, n) => `Klänge mit ihrem Pegel über der Zeit: ${n.text(p.label)}`,
  'listen-picture': (p, n) =>
    `Pegel jedes Klangs über der Zeit, der lauteste oben; im Vordergrund, was zu hören ist: ${n.text(p.heard)}`,

  // Table and file.
  'listen-sound-column': () => 'Klang',
  'listen-now-column': () => 'Jetzt',
  'listen-mean-column': () => 'Mittlere Leistung, re Vollaussteuerung',
  'listen-peak-column': () => 'Spitze, re Vollaussteuerung',
  'listen-match-column': () => 'Auf gleiche Leistung gebracht um',
  'listen-limiter-column': () => 'Begrenzer',
  'listen-rings-column': () => 'Klingt nach dem letzten Ton nach, bis −30 dB',
  'listen-untouched': () => 'unberührt',
  'listen-save': (p, n) => `Als WAV speichern: ${n.text(p.heard)}`,
};
