import type { Sentence } from '../types.js';

/** What elements say around their pictures and tables: names, instructions, read-outs, states. */
export const views: Readonly<Record<string, Sentence>> = {
  // Names of pictures and parts: static, without changing state.
  'waterfall-name': (p, n) => `Wasserfall-Darstellung von ${n.text(p.label)}: Pegel über Frequenz und Zeit`,
  'spectrogram-name': (p, n) => `Spektrogramm von ${n.text(p.label)}: Pegel über Zeit und Frequenz`,
  'ridges-name': (p, n) => `Grate von ${n.text(p.label)}`,
  'this-recording': () => 'Aufnahme ohne Namen',
  waterfall: () => 'Wasserfall',
  spectrogram: () => 'Spektrogramm',
  ridges: () => 'Grate',

  'waterfall-help': () =>
    'Ziehen dreht das Bild; Ziehen mit zwei Fingern oder das Mausrad bei gedrückter Strg-Taste bringt es näher. Die Regler darunter verschieben den Cursor und drehen die Ansicht; die Tabelle der Grate enthält dieselben Ergebnisse.',
  'spectrogram-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen. Die Regler darunter verschieben denselben Cursor; die Tabelle der Grate enthält dieselben Ergebnisse.',

  // Axes.
  'frequency-axis': () => 'Frequenz, Hz',
  'time-axis': () => 'Zeit, s',
  'level-axis': () => 'Pegel, dB',

  // On the pictures.
  several: () => 'mehrere',
  'best-candidate': (p, n) =>
    `${n.text(p.order)} ${Number(p.weight) > 0.99 ? '>\u00a0' : ''}${n.percent(Math.min(0.99, Number(p.weight)))}`,
  curtain: (p, n) => `Grenze „${n.text(p.limit)}“`,

  // The cursor.
  'cursor-frequency': () => 'Cursor: Frequenz',
  'cursor-time': () => 'Cursor: Zeit',
  readout: (p, n) => `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: ${n.decibels(p.levelDb)}`,
  'readout-noise': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: im Rauschen (${n.decibels(p.levelDb)})`,
  'readout-past-end': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: nach dem Ende der Aufnahme`,
  'readout-unresolved': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: zu tief für das, was von der Aufnahme bleibt`,
  'readout-fast': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: ${n.decibels(p.levelDb)}, nicht langsamer als das Fenster`,
  'readout-none': () => 'Kein Cursor',

  // Viewpoints and turning.
  'view-group': () => 'Blickpunkt',
  'view-corner': () => 'Ecke',
  'view-front': () => 'Vorn',
  'view-side': () => 'Seite',
  'view-high': () => 'Oben',
  'view-plan': () => 'Aufsicht',
  'turn-and-tilt': () => 'Drehen und neigen',
  turn: () => 'Drehung',
  tilt: () => 'Neigung',
  nearer: () => 'Nähe',
  degrees: (p, n) => `${n.integer(p.degrees)}°`,
  times: (p, n) => `${n.number(p.factor, 1)} ×`,
  'drawn-flat': () =>
    'Ohne WebGL gezeichnet, das hier fehlt oder verweigert wurde; die Daten sind dieselben.',
  'key-ridge': () => 'Grat, bis er versinkt',
  'key-noise': () => 'im Rauschen',
  'key-fast': () => 'nicht langsamer als das Fenster',
  'key-past-end': () => 'nach dem Ende der Aufnahme',
  'key-curtain': (p, n) => `${n.text(p.limit)}: was dort noch steht, liegt darüber`,
  'key-axial': () => 'axiale Mode, berechnet',
  'key-tangential': () => 'tangentiale',
  'key-oblique': () => 'oblique',
  'figure-title': (p, n) => `${n.text(p.label)}: ${n.text(p.picture)}`,
  'figure-origin': (p, n) => `Datei ${n.text(p.hash)} …, ringdown ${n.text(p.version)}.`,
  'figure-origin-several': (p, n) =>
    `Aus ${n.integer(p.count)} Aufnahmen, deren Prüfsummen diese Datei enthält; ringdown ${n.text(p.version)}.`,
  'figure-origin-room': (p, n) => `Berechnet von ringdown ${n.text(p.version)}.`,
  save: () => 'Bild speichern',
  'save-width': () => 'Breite des PNG',
  pixels: (p, n) => `${n.integer(p.width)} px`,
  'copy-link': () => 'Link zu dieser Ansicht kopieren',
  'link-copied': () => 'Kopiert.',
  'link-by-hand': () => 'Der Browser lässt diese Seite nicht kopieren; nehmen Sie die Adresse von hier:',
  'link-address': () => 'Link zu dieser Ansicht',
  'save-failed': () => 'Der Browser konnte kein Bild dieser Größe erzeugen; wählen Sie ein kleineres.',
  'key-line': () =>
    'Markierte Grate; die Zeichen darunter sind berechnete Moden: ein Strich axial, zwei tangential, drei oblique.',

  // The study.
  'choose-file': () => 'Datei wählen …',
  'drop-hint': () => 'oder eine Impulsantwort hier ablegen (WAV, FLAC, AES69 oder Text)',
  'drop-now': () => 'Zum Auswerten ablegen',
  'choices-summary': () => 'Achsen, Farben und Ablesung',
  'choices-now': (p, n) =>
    `${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)}, ${n.text(p.axis)}; ${n.seconds(p.spanSeconds)}; ${n.decibels(p.rangeDb)}`,
  'choose-fromHz': () => 'Von, Hz',
  'choose-toHz': () => 'bis, Hz',
  'choose-axis': () => 'Frequenzachse',
  'choose-spanSeconds': () => 'Gezeigte Zeit',
  'choose-rangeDb': () => 'Pegelumfang',
  'choose-method': () => 'Schnitte',
  'choose-windowSeconds': () => 'Fenster',
  'choose-limit': () => 'Verglichen mit',
  'choose-scale': () => 'Farben',
  'scale-auto': () => 'wie die Seite',
  'scale-dusk': () => 'Nachtblau bis Elfenbein',
  'scale-dawn': () => 'Papier bis Tinte',
  'scale-clear': () => 'bei Farbfehlsichtigkeit',
  'choose-recording': () => 'Gezeigt',
  empty: () => 'Noch keine Aufnahme.',
  fetching: () => 'Aufnahme wird geholt',
  working: (p, n) => `${n.text(p.stage)}: ${n.percent(p.fraction)}`,
  'notes-summary': (p, n) =>
    Number(p.count) === 1
      ? 'Ein Hinweis zu dieser Aufnahme'
      : `${n.integer(p.count)} Hinweise zu dieser Aufnahme`,
  'failure-of': (p, n) => `${n.text(p.label)}: ${n.text(p.sentence)}`,
  'open-study': () => 'Studie öffnen …',
  'save-study': () => 'Studie speichern',
  'clear-study': () => 'Leeren …',
  'clear-meaning': (p) =>
    `Nimmt alle Aufnahmen, den Raum und alles Geschriebene weg${p.kept ? ', auch die Kopie in diesem Browser' : ''}. Eine gespeicherte Datei bleibt.`,
  'clear-all': () => 'Alles leeren',
  'study-kept': () => 'In diesem Browser aufbewahrt.',
  remove: (p, n) => `${n.text(p.label)} entfernen`,
  'ready-none': (p, n) => `Kein Grat über der Grenze „${n.text(p.limit)}“.`,
  ready: (p, n) =>
    `${Number(p.count) === 1 ? 'Ein Grat' : `${n.integer(p.count)} Grate`} über der Grenze „${n.text(p.limit)}“. ${Number(p.count) === 1 ? 'Er liegt' : 'Der schlimmste liegt'} bei ${n.hertz(p.frequencyHz)}${typeof p.decayTimeSeconds === 'number' ? `: ${n.seconds(p.decayTimeSeconds)}${typeof p.limitSeconds === 'number' ? ` bei einer Grenze von ${n.seconds(p.limitSeconds)}` : ''}` : ''}.`,
  refused: () => 'Aus dieser Aufnahme wird kein Ausschwingen gelesen; die Hinweise sagen, warum.',

  // The table of ridges.
  'first-answer': (p, n) =>
    `Erste Antwort, wird noch verfeinert: ${Number(p.count) === 1 ? 'der längste Ausklang' : `die ${n.integer(p.count)} längsten Ausklänge`}`,
  'no-ridges': (p, n) =>
    `Zwischen ${n.hertz(p.fromHz, 0)} und ${n.hertz(p.toHz, 0)} klingt nichts über die Grenze „${n.text(p.limit)}“ hinaus nach. Hier angepasst: ${Number(p.count) === 1 ? 'eine Resonanz' : `${n.integer(p.count)} Resonanzen`}.`,
  'no-ridges-node': () =>
    'Kein Grat hier heißt nicht, dass der Raum keine Mode hat: Der Hörplatz oder die Quelle kann in einem Druckknoten liegen.',
  'no-room': () => 'Es ist kein Raum angegeben, daher wird keine Mode genannt.',
  'no-candidates': () => 'keine Mode in der Nähe',
  'none-share': (p, n) => `keiner davon ${n.percent(p.share)}`,
  'more-candidates': (p, n) => `${n.integer(p.count)} weitere`,
  candidate: (p, n) =>
    `${n.text(p.order)} ${n.text(p.kind)}, berechnet ${n.hertz(p.frequencyHz)}: ${n.percent(p.weight)}`,
  'same-group': () => 'Zu nah beieinander, um sie in dieser Aufnahme an der Frequenz zu unterscheiden.',
  remedies: () => 'Was helfen kann',
  evidence: () => 'Alle Kandidaten und was helfen kann',
  'all-rows': (p, n) => `Alle ${n.integer(p.count)} Grate zeigen`,
  'fewer-rows': (p, n) => `Die ${n.integer(p.count)} schlimmsten zeigen`,
  'select-ridge': (p, n) => `Grat bei ${n.text(p.frequency)}`,
  excess: (p, n) => `${n.number(p.excess, 1)} ×`,
  'excess-bar': (p, n) =>
    `${n.seconds(p.decayTimeSeconds)} bei einer Grenze von ${n.seconds(p.limitSeconds)}`,
  audible: (p, n) => `hörbar: ${n.text(p.audible)}`,
  'why-hum': (p, n) =>
    `Eine stetige Linie, ${n.hertz(Math.abs(Number(p.offHz)), 2)} neben ${n.integer(p.multiple)} × ${n.integer(p.mainsHz)} Hz, die nicht abklingt.`,
  'why-alone': (p, n) =>
    `Sie klingt allein, wo ein Raum etwa ${n.integer(p.expectedModes)} Moden hat: Das tut eine Anhebung oder ein anderes schwingendes Gerät (Q ${n.number(p.q, 1)}).`,
  'why-two-slopes': (p, n) =>
    `Zwei Abklingzeiten bei einer Frequenz, ${n.seconds(p.earlySeconds)} und ${n.seconds(p.lateSeconds)}${p.lateDb === null ? '' : `, die spätere am Beginn ${n.decibels(Math.abs(Number(p.lateDb)))} ${Number(p.lateDb) < 0 ? 'unter' : 'über'} der früheren`}: So gibt eine Platte oder ein gekoppelter Raum den Schall zurück, oder zwei Moden liegen zu dicht, um sie zu trennen.`,
  'why-modes': (p, n) =>
    `Dass eine der vorhergesagten Moden in der Nähe zutrifft, hat eine Wahrscheinlichkeit von ${n.percent(p.chance)}.`,
  'why-one-shape': (p, n) =>
    `Alle ${n.integer(p.seats)} Plätze hören sie gleich laut (${n.decibels(p.spreadDb, 1)} Effektivwert der Abstände, andere Resonanzen ${n.decibels(p.othersDb, 1)}) und in gleicher Phase (innerhalb von ${n.integer(p.degrees)}°): So klingt der Lautsprecher oder seine Öffnung nach, und so auch eine Mode, die an diesen Plätzen gleich ist. Eine Aufnahme nahe an der Quelle entscheidet.`,
  'why-near-field': (p, n) =>
    `Eine Aufnahme ${n.metres(p.metres)} vor der Quelle klingt bei derselben Frequenz (${n.hertz(p.frequencyHz, 1)} ± ${n.hertz(p.frequencySdHz, 1)}) und ebenso lange nach (${n.seconds(p.decayTimeSeconds)} ± ${n.seconds(p.decayTimeSdSeconds)}). Auch eine Raummode ist dort zu hören, in diesem Raum aber höchstens mit ${n.decibels(p.mostDb, 0)} re Direktschall; hier sind es ${n.decibels(p.aboveDirectDb, 0)}. Also schwingt die Quelle, ihre Öffnung oder ein Filter davor. Umstellen und Absorber ändern daran nichts.`,
  'why-not-near-field': (p, n) =>
    `Alle Plätze hören sie gleich, wie man das Nachklingen einer Quelle hören würde, aber eine Aufnahme ${n.metres(p.metres)} vor der Quelle klingt dort nicht nach: Es ist weder die Quelle noch ihre Öffnung.`,
  'near-field-tag': () => 'Nahfeld',
  'near-field-column': () => 'Abstand in m, falls nahe an der Quelle',
  'near-field-hint': () =>
    'Eine Aufnahme dicht an ihrer Quelle zeigt, ob die Quelle selbst nachklingt; sie ist kein Hörplatz und geht in keinen Mittelwert und keinen Plan ein. Abstand zur Öffnung oder zur Mitte der Membran, 0,005 bis 0,3 m (der halbe Membranradius, wenn er größer ist); leer bei einer Aufnahme an einem Hörplatz.',
  'cause-and-candidates': () => 'Ursache und Kandidaten',
  unexplained: () => 'Ein Band, das nachklingt, obwohl keine Resonanz es erklärt.',
  'ridges-foot': () =>
    'Geordnet danach, wie weit jeder über seiner Grenze liegt. Unsicherheiten sind eine Standardabweichung. Prozente sind die Wahrscheinlichkeit jedes Kandidaten; wirkliche Wände verschieben Moden um bis zu 5 oder 6 % gegenüber dem schallharten Quader.',
  'fit-quality': (p, n) =>
    `Die Resonanzen enthalten ${n.percent(p.explained, Number(p.explained) > 0.99 ? 1 : 0)} der angepassten Energie, Rauschen eingeschlossen. Was sie übrig lassen, ist zu ${n.number(p.whiteness, 2)} weiß: 1 ist Rauschen, übersehenes Nachklingen zieht den Wert gegen 0.`,
  'ridge-flag': (p, n) =>
    typeof p.decayTimeSeconds === 'number'
      ? `${n.hertz(p.frequencyHz)} · ${n.seconds(p.decayTimeSeconds)}`
      : n.hertz(p.frequencyHz),
  'mode-mark': (p, n) => `${n.text(p.order)} ${n.text(p.kind)} ${n.hertz(p.frequencyHz)}`,
};
