import type { Sentence } from '../types.js';

const one = (count: unknown): boolean => Number(count) === 1;

/** What the printed sheet says, and the form around it. */
export const sheetViews: Readonly<Record<string, Sentence>> = {
  report: () => 'Das Messblatt',
  'report-preview': () => 'Das Messblatt, wie es gedruckt wird',
  'report-empty': () => 'Noch keine Aufnahme: Mit einer steht hier das Messblatt.',
  'report-print': () => 'Messblatt drucken',
  'report-save': () => 'Messblatt als HTML speichern',
  'report-seat': () => 'Bilder am',
  'report-worst-seat': () => 'Hörplatz, an dem am meisten nachklingt',
  'report-paper': () => 'Papier',
  'report-typed': () =>
    'Was Sie eingeben, steht auf dem Messblatt und in der gespeicherten Studie und sonst nirgends.',
  'report-decisions': () => 'Was entschieden wurde, Grat für Grat',
  'report-decision-of': (p, n) => `Entscheidung zum Grat bei ${n.hertz(p.frequencyHz)}`,
  'report-note-of': (p, n) => `Was genau oder warum, bei ${n.hertz(p.frequencyHz)}`,
  'sheet-title': () => 'Titel',
  'sheet-client': () => 'Für',
  'sheet-author': () => 'Von',
  'sheet-date': () => 'Datum',
  'sheet-notes': () => 'Bemerkungen',
  'sheet-page': (p, n) => `Seite ${n.text(p.page)} von ${n.text(p.pages)}`,
  'action-': () => 'nicht entschieden',
  'action-move-seat': () => 'Hörplatz verschieben',
  'action-move-source': () => 'Quelle verschieben',
  'action-add-source': () => 'Quelle hinzufügen',
  'action-absorb': () => 'absorbieren',
  'action-cut': () => 'abgestimmt absenken',
  'action-leave': () => 'lassen, wie es ist',
  'action-measure-again': () => 'noch einmal messen',

  // Heads.
  'sheet-untitled': (p, n) => `Wie der Bass ausschwingt${p.room ? `: ${n.text(p.room)}` : ''}`,
  'sheet-summary': () => 'In einfachen Worten',
  'sheet-room': () => 'Raum und Aufbau',
  'sheet-result': () => 'Vorher und nachher',
  'sheet-shown': () => 'Was gemessen wurde',
  'sheet-ridges': () => 'Was nachklingt und was dagegen getan wird',
  'sheet-not-done': () => 'Was nicht getan wurde und warum',
  'sheet-settings': () => 'Einstellungen der Quellen',
  'sheet-recordings': () => 'Aufnahmen',
  'sheet-ranges': () => 'Nutzbare Dynamik des Abklingens, dB, je Terz',
  'sheet-cautions': () => 'Warnhinweise',
  'sheet-made': () => 'Wie dies entstand',
  'sheet-places': () => 'Hörplätze und Quellen, m von einer unteren Ecke des Raums',

  // In plain words.
  'sum-measured': (p, n) =>
    `${p.room ? `${n.text(p.room)}. ` : ''}Der Bass wurde zwischen ${n.hertz(p.fromHz, 0)} und ${n.hertz(p.toHz, 0)} mit ${one(p.sources) ? 'einer Quelle' : `${n.integer(p.sources)} Quellen`} an ${one(p.seats) ? 'einem Hörplatz' : `${n.integer(p.seats)} Hörplätzen`} gemessen${p.stages ? `, in ${n.integer(p.stages)} Ständen der Arbeit` : ''}.`,
  'sum-none': (p, n) =>
    `Kein Ton klingt länger nach als die Grenze „${n.text(p.limit)}“. Das ist gut: Basstöne hören auf, wenn sie sollen.`,
  'sum-refused': () =>
    'Aus der Aufnahme ließ sich kein Ausschwingen lesen; die Hinweise sagen, warum. Messen Sie noch einmal, bevor etwas entschieden wird.',
  'sum-hangs': (p, n) =>
    `${one(p.count) ? 'Ein Ton klingt' : `${n.integer(p.count)} Töne klingen`} länger nach als die Grenze „${n.text(p.limit)}“. ${one(p.count) ? 'Er liegt' : 'Der schlimmste liegt'} nahe ${n.hertz(p.frequencyHz, 0)}: Er braucht ${n.seconds(p.decayTimeSeconds)}, um sich um 60 dB zu verlieren${typeof p.limitSeconds === 'number' ? `, bei einer Grenze von ${n.seconds(p.limitSeconds)}` : ''}. Töne in seiner Nähe dröhnen oder verschwimmen ineinander.`,
  'sum-everywhere': () =>
    'Er ist an jedem Hörplatz zu hören; ein Wechsel des Platzes hilft daher nicht, wohl aber Absorption oder eine abgestimmte Absenkung.',
  'sum-most': (p, n) => `Er ist an ${n.integer(p.heard)} von ${n.integer(p.seats)} Hörplätzen zu hören.`,
  'sum-spread': (p, n) =>
    `Von Hörplatz zu Hörplatz unterscheidet sich der Bass um etwa ±${n.decibels(p.deviationDb, 1)} (effektiv); innerhalb von ±3 dB gilt als gut, innerhalb von ±5 dB als brauchbar.`,
  'sum-after': (p, n) =>
    `Nach der Arbeit ${one(p.left) ? 'klingt ein Ton' : Number(p.left) === 0 ? 'klingt keiner' : `klingen ${n.integer(p.left)}`} länger nach als die Grenze; vorher ${one(p.count) ? 'war es' : 'waren es'} ${n.integer(p.count)}. ${Number(p.shorter) === 0 ? 'Kein Ausschwingen wurde um mehr als die Messunsicherheit kürzer.' : `${one(p.shorter) ? 'Ein Ausschwingen wurde' : `${n.integer(p.shorter)} wurden`} um mehr als die Messunsicherheit kürzer.`}${Number(p.longer) > 0 ? ` ${one(p.longer) ? 'Eines wurde' : `${n.integer(p.longer)} wurden`} länger.` : ''}`,
  'sum-worst-after': (p, n) =>
    `Der nahe ${n.hertz(p.frequencyHz, 0)} ging von ${n.seconds(p.beforeSeconds)} auf ${n.seconds(p.afterSeconds)}.`,
  'sum-spread-after': (p, n) =>
    `Die Hörplätze unterscheiden sich nun um etwa ±${n.decibels(p.afterDb, 1)}; vorher waren es ±${n.decibels(p.beforeDb, 1)}.`,
  'sum-designed': () =>
    'Was daneben steht, ist aus den Aufnahmen mit neuen Einstellungen der Quellen vorhergesagt und noch nicht gemessen.',
  'sum-no-after': () =>
    'In dieser Studie wurde nach keiner Änderung gemessen: Ob eine hilft, ist noch nicht bekannt.',

  // Pictures.
  'side-recording': (p, n) => `${p.stage ? `„${n.text(p.stage)}“, ` : ''}wie gemessen: ${n.text(p.seat)}`,
  'side-summed': (p, n) =>
    `${p.stage ? `„${n.text(p.stage)}“, ` : ''}alle Quellen zusammen wie gemessen: ${n.text(p.seat)}`,
  'side-designed': (p, n) =>
    `Durch die neuen Einstellungen, vorhergesagt und nicht gemessen: ${n.text(p.seat)}`,
  'sheet-same-scales': () =>
    'Beide Bilder haben dieselben Achsen, denselben Pegelumfang, dasselbe Fenster und Verfahren. Jeder Pegel ist auf den lautesten Punkt des eigenen ersten Schnitts bezogen: Vergleichen Sie, wie lange etwas dauert, nicht, wie hoch es steht.',
  'sheet-same-axes': () => 'Beide haben dieselben Achsen.',
  'sheet-waterfall': (p, n) => `Pegel über Frequenz und Zeit. ${n.text(p.side)}`,
  'sheet-decay': (p, n) => `Abklingzeit über der Frequenz. ${n.text(p.side)}`,
  'sheet-levels': (p, n) => `Pegel an jedem Hörplatz. ${n.text(p.stage)}`,
  'sheet-response': (p, n) => `Pegel über der Frequenz. ${n.text(p.label)}`,
  'sheet-plan': () => 'Grundriss, Hörplätze als Ringe und Quellen als Quadrate',

  // Tables.
  'sheet-decay-limit': () => 'Abklingzeit; Grenze',
  'sheet-fitted': () => 'Angepasst über',
  'sheet-cause': () => 'Ursache; Kandidaten',
  'sheet-seats': () => 'Zu hören',
  'sheet-action': () => 'Maßnahme',
  'sheet-outcome': () => 'Ergebnis',
  'sheet-limit-of': (p, n) =>
    typeof p.excess === 'number'
      ? `Grenze ${n.seconds(p.limitSeconds)}, ${n.number(p.excess, 1)}\u00a0×`
      : 'hier keine Grenze',
  'sheet-fit-range': (p, n) => `${n.number(p.fromSeconds, 2)} bis ${n.seconds(p.toSeconds)}`,
  'sheet-here': () => 'hier',
  'sheet-may-help': (p, n) => `nicht entschieden; kann helfen: ${n.text(p.list)}`,
  'sheet-not-measured': () => 'seither nicht gemessen',
  'sheet-predicted': (p, n) => `vorhergesagt: ${n.text(p.change)}`,
  'sheet-gone': () => 'nicht mehr gefunden',
  'sheet-new': () => 'neu',
  'sheet-change': (p, n) =>
    `${n.plusMinus(p.afterSeconds, p.afterSdSeconds, 's')}: ${p.sure === null ? 'unsicher' : p.sure ? (Number(p.changeSeconds) < 0 ? 'kürzer' : 'länger') : 'keine sichere Änderung'}`,
  'sheet-still-above': () => 'noch über der Grenze',
  'sheet-ridges-more': (p, n) =>
    `${one(p.count) ? 'Ein weiterer liegt' : `${n.integer(p.count)} weitere liegen`} weniger weit über der Grenze: ${n.text(p.list)}.`,
  'sheet-ridges-foot': (p, n) =>
    `Geordnet danach, wie weit jeder über seiner Grenze liegt („${n.text(p.limit)}“). Unsicherheiten sind eine Standardabweichung; ab zweien gilt eine Änderung als sicher. Prozente sind die Wahrscheinlichkeit jedes Kandidaten.`,
  'sheet-alike': (p, n) => `${n.text(p.note)} (Ein Hinweis dieser Art auch: ${n.text(p.names)}.)`,
  'sheet-weak': () =>
    'Ein Stern bezeichnet weniger Dynamik, als T20 braucht: mit Vorsicht zu lesen. Ein Strich bezeichnet zu wenig, um überhaupt gelesen zu werden.',
  'sheet-rate': () => 'Abtastrate, Hz',
  'sheet-length': () => 'Länge',
  'sheet-hash': () => 'SHA-256',
  'sheet-notes-column': () => 'Hinweise',
  'sheet-recording': () => 'Aufnahme',
  'sheet-volume': () => 'Volumen',
  'sheet-speed': () => 'Schallgeschwindigkeit',
  'sheet-air': () => 'Luft',
  'sheet-air-of': (p, n) =>
    `${n.number(p.temperature, 1)} °C${typeof p.humidity === 'number' ? `, ${n.number(p.humidity, 0)} % relative Feuchte` : ''}`,
  'sheet-walls': () => 'Wände',
  'sheet-sides': () => 'Länge, Breite, Höhe',
  'sheet-sides-of': (p, n) =>
    `${n.number(p.length, 2)}\u00a0×\u00a0${n.number(p.width, 2)}\u00a0×\u00a0${n.metres(p.height, 2)}`,
  'sheet-wall-of': (p, n) => `${n.text(p.wall)}: ${n.text(p.material)}`,
  'sheet-cubic': (p, n) => `${n.number(p.volume, 1)} m³`,
  'sheet-speed-of': (p, n) => `${n.number(p.speed, 1)} m/s`,
  'sheet-filters': () => 'Filter',
  'sheet-filters-all': () => 'Über alle Quellen',
  'sheet-band': (p, n) =>
    `${n.text(p.kind)} ${n.hertz(p.frequencyHz)}${p.kind === 'all-pass' ? '' : `, ${n.decibels(p.gainDb, 1)}`}, Q ${n.number(p.q, 2)}`,
  'sheet-normal': () => 'wie verdrahtet',
  'sheet-inverted': () => 'verpolt',

  // What was not done.
  'not-left': (p, n) => `${n.hertz(p.frequencyHz)} bleibt, wie es ist${p.note ? `: ${n.text(p.note)}` : '.'}`,
  'not-decided': (p, n) =>
    `Noch nicht entschieden ist über ${n.text(p.list)}${Number(p.more) > 0 ? ` und ${n.integer(p.more)} weitere` : ''}.`,
  'not-after': () => 'Nach keiner Änderung wurde aufgenommen; daher ist kein Ergebnis belegt.',
  'not-predicted': () =>
    'Die neuen Einstellungen wurden nicht gemessen: Messen Sie an jedem Hörplatz noch einmal, bevor Sie sich darauf verlassen.',
  'not-repeated': () =>
    'Kein Punkt wurde zweimal gemessen; niemand weiß daher, wie viel von einem Unterschied eine weitere Messung wiederholen würde.',
  'not-calibrated': () =>
    'Es ist keine Kalibrierung angegeben: Pegel sind relativ, und es wird nichts darüber gesagt, wie laut der Raum oder die Quellen sind.',
  'not-room': () => 'Es ist kein Raum angegeben; daher trägt kein Grat den Namen einer Mode.',
  'not-seats': (p, n) =>
    `${one(p.count) ? 'Einem Hörplatz fehlt' : `${n.integer(p.count)} Hörplätzen fehlt`} eine Quelle; ${one(p.count) ? 'er bleibt' : 'sie bleiben'} aus allen Summen weg.`,
  'not-one-seat': () =>
    'Ein einziger Hörplatz wurde gemessen: Ob der übrige Raum ebenso nachklingt, ist nicht bekannt.',
  'not-clock': () =>
    'Die Aufnahmen haben keinen gemeinsamen Zeitbezug: Quellen wurden nicht summiert, und über ihre Verzögerungen wird nichts gesagt.',
  'not-band': (p, n) =>
    `Außerhalb von ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)} wurde nichts betrachtet.`,
  'not-boosted': () =>
    'Kein Einbruch wurde durch eine Anhebung gefüllt: Eine Auslöschung schluckt sie, und die Quelle zahlt dafür.',
  'not-read': (p, n) => `Nicht übernommen: ${n.text(p.sentence)}`,

  // How it was made.
  'made-by': (p, n) =>
    `ringdown ${n.text(p.version)} aus ${one(p.count) ? 'einer Aufnahme' : `${n.integer(p.count)} Aufnahmen`}; jede Zahl folgt aus deren Abtastwerten, dem Raum und den Parametern darunter.`,
  'made-limit': (p, n) => `Grenze „${n.text(p.limit)}“: ${n.text(p.meaning)}`,
  'made-band': (p, n) =>
    `Gelesen von ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)}. Resonanzen sind an die Abtastwerte angepasst; eine Abklingzeit ist die für 60 dB.`,
  'csv-recordings': () => 'Aufnahmen',
  'csv-resonances': () => 'Resonanzen',
  'csv-comparison': () => 'Vergleich',
};
