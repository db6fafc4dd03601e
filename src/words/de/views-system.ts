import type { Sentence } from '../types.js';

const plural = (count: unknown, one: string, many: string): string => (Number(count) === 1 ? one : many);

/** What the views of sources and seats say. */
export const systemViews: Readonly<Record<string, Sentence>> = {
  'system-title': (p, n) =>
    `${n.integer(p.sources)} ${plural(p.sources, 'Quelle', 'Quellen')} an ${n.integer(p.seats)} ${plural(p.seats, 'Hörplatz', 'Hörplätzen')}`,
  'seat-unnamed': () => 'Hörplatz ohne Namen',
  'source-unnamed': () => 'Quelle ohne Namen',
  'point-at': (p, n) => `Punkt ${n.text(p.x)}; ${n.text(p.y)}; ${n.text(p.z)} m`,

  // Sources.
  sources: () => 'Quellen',
  'sources-name': (p, n) =>
    `Pegel und Phase jeder Quelle an einem Hörplatz mit ihrer Summe: ${n.text(p.label)}`,
  'sources-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen. Der Regler darunter verschiebt denselben Cursor. Die Einstellungen in der Tabelle wirken sofort.',
  'choose-seat': () => 'Hörplatz',
  'choose-against': () => 'Phase gegen',
  sum: () => 'Summe',
  'phase-axis': (p, n) => `Phase gegen ${n.text(p.name)}, Grad`,
  'key-sum': () => 'alle Quellen zusammen',
  'key-source': () => 'eine Quelle',
  'key-phase-faint': () => 'Phase, wo nur eine der beiden spielt: ohne Bedeutung',
  'sources-caption': (p, n) =>
    `Hörplatz ${n.text(p.seat)}: ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)}, durch die Einstellungen, nicht geglättet, gelesen je 1/24 Oktave, wobei eine schmale Überhöhung um 2 oder 3 dB verfehlt werden kann. Phase gegen ${n.text(p.reference)} über das Band, in dem beide höchstens 12 dB unter ihrem lautesten Wert spielen; die Spitze eines Impulses sagt darüber nichts.`,
  'source-readout': (p, n) => `${n.text(p.name)} ${n.decibels(p.levelDb, 0)}`,
  'source-readout-phase': (p, n) =>
    `${n.text(p.name)} ${n.decibels(p.levelDb, 0)} bei ${n.integer(p.degrees)}°`,
  'sources-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)}: Summe ${n.decibels(p.sumDb, 1)}; ${n.text(p.parts)}`,
  'settings-heading': () => 'Einstellungen der Quellen',
  'gain-column': () => 'Verstärkung, dB',
  'delay-column': () => 'Verzögerung, ms',
  'inverted-column': () => 'Verpolt',
  'muted-column': () => 'Stumm',
  'arrival-column': () => 'Trifft ein nach',
  'in-phase-column': () => 'In Phase jetzt',
  'best-phase-column': () => 'Bestenfalls',
  'gain-of': (p, n) => `Verstärkung von ${n.text(p.name)}, dB`,
  'delay-of': (p, n) => `Verzögerung von ${n.text(p.name)}, ms`,
  'inverted-of': (p, n) => `Polarität von ${n.text(p.name)} umkehren`,
  'muted-of': (p, n) => `${n.text(p.name)} stummschalten`,
  milliseconds: (p, n) => `${n.number(p.ms, 1)}\u00a0ms`,
  reference: () => 'Bezug',
  'nothing-shared': () => 'kein gemeinsames Band',
  'best-phase': (p, n) =>
    `${n.percent(p.match, 0)} mit ${Number(p.ms) <= -0.05 ? '−' : '+'}${n.number(Math.abs(Number(p.ms)), 1)}\u00a0ms${p.inverted ? ', verpolt' : ''}${p.sure ? '' : '; Polarität unsicher'}`,
  align: (p, n) => `Alle mit ${n.text(p.name)} in Phase bringen`,
  'align-hint': () => 'so gut, wie alle Hörplätze zusammen es erlauben',
  'filters-of': (p, n) =>
    Number(p.count) === 0
      ? `Filter von ${n.text(p.name)}`
      : `Filter von ${n.text(p.name)} (${n.integer(p.count)})`,
  'band-kind': () => 'Art des Filters',
  'band-peaking': () => 'Glocke',
  'band-all-pass': () => 'Allpass',
  'band-low-shelf': () => 'Tiefen-Kuhschwanz',
  'band-high-shelf': () => 'Höhen-Kuhschwanz',
  'band-frequencyHz': () => 'Hz',
  'band-gainDb': () => 'dB',
  'band-q': () => 'Q',
  'band-remove': (p, n) => `Filter ${n.integer(p.number)} von ${n.text(p.name)} entfernen`,
  'add-filter': () => 'Filter hinzufügen',
  'phase-of': (p, n) => `Phase von ${n.text(p.name)}`,
  'sources-table': () => 'Pegel und Phasen über der Frequenz',
  'proposal-heading': () => 'Bessere Einstellungen, maschinell gesucht',
  'bound-lowestGainDb': () => 'Keine Quelle leiser um mehr als, dB',
  'bound-longestDelaySeconds': () => 'Längste Verzögerung, ms',
  'bound-leastLevelDb': () => 'Ausgangspegel niedriger um höchstens, dB',
  'bound-polarity': () => 'darf verpolen',
  'proposal-look': () => 'Bessere Einstellungen suchen',
  'proposal-cancel': () => 'Suche beenden',
  'proposal-reset': () => 'Alle wie gemessen',
  'proposal-best': () => 'Vorschlag',
  'proposal-point': (p, n) => `Kompromiss ${n.integer(p.number)}`,
  'proposal-result': (p, n) =>
    `Die mittlere räumliche Varianz fällt von ${n.number(p.before, 1)} auf ${n.number(p.after, 1)} dB², der mittlere Ausgangspegel ändert sich um ${n.decibels(p.levelDb, 1)}.`,
  'proposal-sure': () => 'Das ist mehr, als Wiederholungen eines Punktes voneinander abweichen.',
  'proposal-unsure': () =>
    'Das ist weniger, als Wiederholungen eines Punktes voneinander abweichen: Es kann bloß die nächste Messung sein.',
  'proposal-unrepeated': () =>
    'Kein Punkt wurde zweimal gemessen; niemand weiß daher, was davon eine weitere Messung wiederholen würde.',
  trim: (p, n) =>
    `${n.text(p.name)}: ${n.decibels(p.gainDb, 1)}, ${n.number(p.ms, 2)}\u00a0ms${p.inverted ? ', verpolt' : ''}`,
  'trade-off': () => 'Was weniger Streuung an Ausgangspegel kostet',
  'hang-column': () => 'Längster Grat',
  take: () => 'Übernehmen',
  'take-of': (p, n) => `Übernehmen: ${n.text(p.what)}`,
  'proposal-caution': () =>
    'Aus den Aufnahmen vorhergesagt und noch nicht gemessen. Erhöhen Sie den Pegel nach einer Änderung langsam, und messen Sie an jedem Hörplatz noch einmal.',

  // Seats.
  seats: () => 'Hörplätze',
  'seats-name': (p, n) => `Frequenzgänge der Hörplätze mit Mittel und Streuung: ${n.text(p.label)}`,
  'seats-help': () =>
    'Zeigen Sie in das Bild, um es abzulesen. Der Regler darunter verschiebt denselben Cursor. Gewichte, Grate und Punkte stehen in den Tabellen darunter.',
  'stage-measured': () => 'wie gemessen, alle Quellen gleich',
  'stage-measured-named': (p, n) => `„${n.text(p.stage)}“ wie gemessen, alle Quellen gleich`,
  'stage-designed': () => 'durch die Einstellungen',
  'choose-stage': () => 'Gezeigt',
  mean: () => 'Mittel',
  'key-mean': () => 'Mittel der Hörplätze',
  'key-seat': () => 'ein Hörplatz',
  'key-lowest-highest': () => 'vom leisesten zum lautesten Hörplatz',
  'seats-caption': (p, n) =>
    `${n.text(p.stage)}, ${Number(p.sources) === 1 ? 'die eine Quelle' : `${n.integer(p.sources)} Quellen zeitrichtig summiert`} an jedem Hörplatz, ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)}, nicht geglättet, gelesen je 1/24 Oktave, wobei eine schmale Überhöhung um 2 oder 3 dB verfehlt werden kann.`,
  'variance-meaning': () =>
    'Mittlere räumliche Varianz: die Varianz des Pegels in dB über die Hörplätze mit ihren Gewichten, gemittelt über die Frequenz in Oktaven. Mittlerer Ausgangspegel: der Pegel in dB, über beides gemittelt.',
  repeats: (p, n) =>
    `${n.integer(p.pairs)} ${plural(p.pairs, 'Punkt wurde', 'Punkte wurden')} zweimal gemessen: Die Abweichung beträgt effektiv ${n.decibels(p.levelDb, 1)}, was allein eine Varianz von ${n.number(p.variance, 2)} dB² ergibt.`,
  'seats-left-out': (p, n) =>
    `${n.integer(p.count)} ${plural(p.count, 'Hörplatz', 'Hörplätzen')} fehlt eine Quelle; ${plural(p.count, 'er bleibt', 'sie bleiben')} weg.`,
  'seats-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)}: Mittel ${n.decibels(p.meanDb, 1)}, ±${n.decibels(p.deviationDb, 1)}; ${n.text(p.lowest)} ${n.decibels(p.lowestDb, 0)} bis ${n.text(p.highest)} ${n.decibels(p.highestDb, 0)}`,
  'readout-beyond': (p, n) => `${n.hertz(p.frequencyHz)}: außerhalb des Bandes der Quellen`,
  'spread-figures': () => 'Wie ähnlich sich die Hörplätze sind',
  'stage-column': () => 'Stand',
  'variance-column': () => 'Mittlere räumliche Varianz',
  variance: (p, n) => `${n.number(p.variance, 1)} dB²`,
  'output-column': () => 'Mittlerer Ausgangspegel',
  'within-3': () => 'Innerhalb von ±3 dB (gut)',
  'within-5': () => 'Innerhalb von ±5 dB (brauchbar)',
  'seats-heading': () => 'Hörplätze und ihre Gewichte',
  'seat-column': () => 'Hörplatz',
  'weight-column': () => 'Gewicht',
  'weight-of': (p, n) => `Gewicht von ${n.text(p.name)}`,
  'level-of-seat': () => 'Mittlerer Pegel',
  'off-others': () => 'Abweichung vom Mittel, effektiv',
  'off-others-designed': () => 'Durch die Einstellungen',
  'ridges-by-seat': () => 'Grate je Hörplatz: bis jeder 30 dB unter dem lautesten dort liegt',
  'no-shared-ridges': () => 'An keinem Hörplatz liegt ein Grat über seiner Grenze.',
  'where-column': () => 'Wo',
  'where-everywhere': () => 'an jedem Hörplatz',
  'where-most': () => 'an den meisten Hörplätzen',
  'where-some': () => 'an einigen Hörplätzen',
  'where-one': () => 'an einem Hörplatz',
  'not-heard': () => 'nicht zu hören',
  'points-heading': () => 'Gemessene Punkte',
  'point-there': () => 'gemessen',
  'point-missing': () => 'fehlt',
  'point-repeated': (p, n) => `${n.integer(p.count)}-mal`,
  'seats-table': () => 'Pegel über der Frequenz',
  'deviation-column': () => 'Streuung',
  'points-edit': () => 'Wovon jede Aufnahme eine Aufnahme ist',
  'point-of': (p, n) => `${n.text(p.what)} von ${n.text(p.label)}`,
  'points-guess': () => 'Aus den Namen ablesen',
  'one-clock': () => 'Alle Aufnahmen haben einen gemeinsamen Zeitbezug',
  'one-clock-hint': () =>
    'Mehrere Quellen lassen sich nur summieren, wenn alle Aufnahmen ihre Zeitnull teilen: durch einen Loopback oder durch ein Gerät, das alle abspielte und aufnahm. Sonst bedeuten ihre Verzögerungen nichts.',
  'save-tables': () => 'Tabellen speichern (CSV)',
  'csv-levels': () => 'Pegel',
  'csv-seats': () => 'Hörplätze',
  'csv-spread': () => 'Streuung',
  'csv-ridges': () => 'Grate',
  'csv-sources': () => 'Quellen',
};
