import type { Sentence } from '../types.js';

const plural = (count: unknown, one: string, many: string): string => (Number(count) === 1 ? one : many);

/** What the views of sources and seats say. */
export const systemViews: Readonly<Record<string, Sentence>> = {
  'system-title': (p, n) =>
    `${n.integer(p.sources)} ${plural(p.sources, 'source', 'sources')} at ${n.integer(p.seats)} ${plural(p.seats, 'seat', 'seats')}`,
  'seat-unnamed': () => 'a seat',
  'source-unnamed': () => 'a source',
  'point-at': (p, n) => `point ${n.text(p.x)}, ${n.text(p.y)}, ${n.text(p.z)} m`,

  // Sources.
  sources: () => 'Sources',
  'sources-name': (p, n) => `Level and phase of each source at one seat, with their sum: ${n.text(p.label)}`,
  'sources-help': () =>
    'Point at the picture to read it. The slider below moves the same cursor. The settings in the table are heard at once.',
  'choose-seat': () => 'Seat',
  'choose-against': () => 'Phase against',
  sum: () => 'sum',
  'phase-axis': (p, n) => `Phase against ${n.text(p.name)}, degrees`,
  'key-sum': () => 'all sources together',
  'key-source': () => 'one source',
  'key-phase-faint': () => 'phase where only one of the two plays: it means nothing',
  'sources-caption': (p, n) =>
    `Seat ${n.text(p.seat)}: ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)}, through the settings, not smoothed, read at every 1/24 octave, where a narrow peak may be missed by 2 or 3 dB. Phase against ${n.text(p.reference)} over the band in which both play within 12 dB of their loudest; the peak of an impulse says nothing of it.`,
  'source-readout': (p, n) => `${n.text(p.name)} ${n.decibels(p.levelDb, 0)}`,
  'source-readout-phase': (p, n) =>
    `${n.text(p.name)} ${n.decibels(p.levelDb, 0)} at ${n.integer(p.degrees)}°`,
  'sources-readout': (p, n) => `${n.hertz(p.frequencyHz)}: sum ${n.decibels(p.sumDb, 1)}; ${n.text(p.parts)}`,
  'settings-heading': () => 'Settings of the sources',
  'gain-column': () => 'Gain, dB',
  'delay-column': () => 'Delay, ms',
  'inverted-column': () => 'Inverted',
  'muted-column': () => 'Muted',
  'arrival-column': () => 'Arrives after',
  'in-phase-column': () => 'In phase now',
  'best-phase-column': () => 'At best',
  'gain-of': (p, n) => `Gain of ${n.text(p.name)}, dB`,
  'delay-of': (p, n) => `Delay of ${n.text(p.name)}, ms`,
  'inverted-of': (p, n) => `Invert ${n.text(p.name)}`,
  'muted-of': (p, n) => `Mute ${n.text(p.name)}`,
  milliseconds: (p, n) => `${n.number(p.ms, 1)}\u00a0ms`,
  reference: () => 'held against',
  'nothing-shared': () => 'no band shared',
  'best-phase': (p, n) =>
    `${n.percent(p.match, 0)} with ${Number(p.ms) <= -0.05 ? '−' : '+'}${n.number(Math.abs(Number(p.ms)), 1)}\u00a0ms${p.inverted ? ', inverted' : ''}${p.sure ? '' : '; polarity uncertain'}`,
  align: (p, n) => `Bring all into phase with ${n.text(p.name)}`,
  'align-hint': () => 'as well as all seats together allow',
  'filters-of': (p, n) =>
    Number(p.count) === 0
      ? `Filters of ${n.text(p.name)}`
      : `Filters of ${n.text(p.name)} (${n.integer(p.count)})`,
  'band-kind': () => 'Kind of filter',
  'band-peaking': () => 'peaking',
  'band-all-pass': () => 'all-pass',
  'band-low-shelf': () => 'low shelf',
  'band-high-shelf': () => 'high shelf',
  'band-frequencyHz': () => 'Hz',
  'band-gainDb': () => 'dB',
  'band-q': () => 'Q',
  'band-remove': (p, n) => `Remove filter ${n.integer(p.number)} of ${n.text(p.name)}`,
  'add-filter': () => 'Add a filter',
  'phase-of': (p, n) => `Phase of ${n.text(p.name)}`,
  'sources-table': () => 'Levels and phases over frequency',
  'proposal-heading': () => 'Better settings, looked for by the machine',
  'bound-lowestGainDb': () => 'No source down by more than, dB',
  'bound-longestDelaySeconds': () => 'Longest delay, ms',
  'bound-leastLevelDb': () => 'Output down by at most, dB',
  'bound-polarity': () => 'may invert',
  'proposal-look': () => 'Look for better settings',
  'proposal-cancel': () => 'Stop looking',
  'proposal-reset': () => 'All as measured',
  'proposal-best': () => 'proposed',
  'proposal-point': (p, n) => `trade-off ${n.integer(p.number)}`,
  'proposal-result': (p, n) =>
    `Mean spatial variance falls from ${n.number(p.before, 1)} to ${n.number(p.after, 1)} dB², the mean output level changes by ${n.decibels(p.levelDb, 1)}.`,
  'proposal-sure': () => 'That is more than repeats of one point differ by.',
  'proposal-unsure': () =>
    'That is less than repeats of one point differ by: it may be nothing but the next measurement.',
  'proposal-unrepeated': () =>
    'No point was measured twice, so nobody knows what of it another measurement would repeat.',
  trim: (p, n) =>
    `${n.text(p.name)}: ${n.decibels(p.gainDb, 1)}, ${n.number(p.ms, 2)}\u00a0ms${p.inverted ? ', inverted' : ''}`,
  'trade-off': () => 'What less spread costs in output',
  'hang-column': () => 'Worst ridge hangs',
  take: () => 'Take',
  'take-of': (p, n) => `Take: ${n.text(p.what)}`,
  'proposal-caution': () =>
    'Predicted from the recordings and not yet measured. Raise the level slowly after a change, and measure again at every seat.',

  // Seats.
  seats: () => 'Seats',
  'seats-name': (p, n) => `Responses of the seats with their mean and spread: ${n.text(p.label)}`,
  'seats-help': () =>
    'Point at the picture to read it. The slider below moves the same cursor. Weights, ridges and points stand in the tables below.',
  'stage-measured': () => 'as measured, all sources alike',
  'stage-measured-named': (p, n) => `“${n.text(p.stage)}” as measured, all sources alike`,
  'stage-designed': () => 'through the design',
  'choose-stage': () => 'Shown',
  mean: () => 'mean',
  'key-mean': () => 'mean of the seats',
  'key-seat': () => 'one seat',
  'key-lowest-highest': () => 'from the lowest seat to the highest',
  'seats-caption': (p, n) =>
    `${n.text(p.stage)}, ${Number(p.sources) === 1 ? 'its source' : `${n.integer(p.sources)} sources added up in time`} at each seat, ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)}, not smoothed, read at every 1/24 octave, where a narrow peak may be missed by 2 or 3 dB.`,
  'variance-meaning': () =>
    'Mean spatial variance: the variance over the seats of the level in dB, with their weights, averaged over frequency in octaves. Mean output level: the level in dB averaged over both.',
  repeats: (p, n) =>
    `${n.integer(p.pairs)} ${plural(p.pairs, 'point was', 'points were')} measured twice: they differ by ${n.decibels(p.levelDb, 1)} rms, which alone makes a variance of ${n.number(p.variance, 2)} dB².`,
  'seats-left-out': (p, n) =>
    `${n.integer(p.count)} ${plural(p.count, 'seat lacks', 'seats lack')} a source and ${plural(p.count, 'is', 'are')} left out.`,
  'seats-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)}: mean ${n.decibels(p.meanDb, 1)}, ±${n.decibels(p.deviationDb, 1)}; ${n.text(p.lowest)} ${n.decibels(p.lowestDb, 0)} to ${n.text(p.highest)} ${n.decibels(p.highestDb, 0)}`,
  'readout-beyond': (p, n) => `${n.hertz(p.frequencyHz)}: outside the band of the sources`,
  'spread-figures': () => 'How alike the seats are',
  'stage-column': () => 'Stage',
  'variance-column': () => 'Mean spatial variance',
  variance: (p, n) => `${n.number(p.variance, 1)} dB²`,
  'output-column': () => 'Mean output level',
  'within-3': () => 'Within ±3 dB (good)',
  'within-5': () => 'Within ±5 dB (workable)',
  'seats-heading': () => 'Seats and their weights',
  'seat-column': () => 'Seat',
  'weight-column': () => 'Weight',
  'weight-of': (p, n) => `Weight of ${n.text(p.name)}`,
  'level-of-seat': () => 'Mean level',
  'off-others': () => 'Off the mean, rms',
  'off-others-designed': () => 'Through the design',
  'ridges-by-seat': () => 'Ridges by seat: until each lies 30 dB below the loudest there',
  'no-shared-ridges': () => 'No ridge stands above its limit at any seat.',
  'where-column': () => 'Where',
  'where-everywhere': () => 'at every seat',
  'where-most': () => 'at most seats',
  'where-some': () => 'at some seats',
  'where-one': () => 'at one seat',
  'not-heard': () => 'not heard',
  'points-heading': () => 'Points measured',
  'point-there': () => 'measured',
  'point-missing': () => 'missing',
  'point-repeated': (p, n) => `${n.integer(p.count)} times`,
  'seats-table': () => 'Levels over frequency',
  'deviation-column': () => 'Spread',
  'points-edit': () => 'What each recording is a recording of',
  'point-of': (p, n) => `${n.text(p.what)} of ${n.text(p.label)}`,
  'points-guess': () => 'Read from the names',
  'one-clock': () => 'One clock timed all recordings',
  'one-clock-hint': () =>
    'Several sources can be added up only where all recordings share their time zero: with a loopback, or with one device that played and recorded all. Otherwise their delays mean nothing.',
  'save-tables': () => 'Save tables (CSV)',
  'csv-levels': () => 'Levels',
  'csv-seats': () => 'Seats',
  'csv-spread': () => 'Spread',
  'csv-ridges': () => 'Ridges',
  'csv-sources': () => 'Sources',
};
