import type { Sentence } from '../types.js';

const one = (count: unknown): boolean => Number(count) === 1;

/** What the printed sheet says, and the form around it. */
export const sheetViews: Readonly<Record<string, Sentence>> = {
  report: () => 'The sheet',
  'report-preview': () => 'The sheet as it prints',
  'report-empty': () => 'No recording yet: with one, the sheet stands here.',
  'report-print': () => 'Print the sheet',
  'report-save': () => 'Save the sheet as HTML',
  'report-seat': () => 'Pictures at',
  'report-worst-seat': () => 'the seat where most hangs',
  'report-paper': () => 'Paper',
  'report-typed': () => 'What you type stands on the sheet and in the saved study, and nowhere else.',
  'report-decisions': () => 'What was decided, ridge by ridge',
  'report-decision-of': (p, n) => `Decision on the ridge at ${n.hertz(p.frequencyHz)}`,
  'report-note-of': (p, n) => `What exactly, or why, at ${n.hertz(p.frequencyHz)}`,
  'sheet-title': () => 'Title',
  'sheet-client': () => 'For',
  'sheet-author': () => 'By',
  'sheet-date': () => 'Date',
  'sheet-notes': () => 'Notes',
  'sheet-page': (p, n) => `Page ${n.text(p.page)} of ${n.text(p.pages)}`,
  'action-': () => 'not decided',
  'action-move-seat': () => 'move the seat',
  'action-move-source': () => 'move the source',
  'action-add-source': () => 'add a source',
  'action-absorb': () => 'absorb',
  'action-cut': () => 'matched cut',
  'action-leave': () => 'leave as it is',
  'action-measure-again': () => 'measure again',

  // Heads.
  'sheet-untitled': (p, n) => `How the bass rings down${p.room ? `: ${n.text(p.room)}` : ''}`,
  'sheet-summary': () => 'In plain words',
  'sheet-room': () => 'Room and set-up',
  'sheet-result': () => 'Before and after',
  'sheet-shown': () => 'What was measured',
  'sheet-ridges': () => 'What hangs, and what is done about it',
  'sheet-not-done': () => 'What was not done, and why',
  'sheet-settings': () => 'Settings of the sources',
  'sheet-recordings': () => 'Recordings',
  'sheet-ranges': () => 'Usable decay range, dB, by third-octave',
  'sheet-cautions': () => 'Cautions',
  'sheet-made': () => 'How this was made',
  'sheet-places': () => 'Seats and sources, m from one low corner of the room',

  // In plain words.
  'sum-measured': (p, n) =>
    `${p.room ? `${n.text(p.room)}. ` : ''}The bass was measured between ${n.hertz(p.fromHz, 0)} and ${n.hertz(p.toHz, 0)} with ${one(p.sources) ? 'one source' : `${n.integer(p.sources)} sources`} at ${one(p.seats) ? 'one seat' : `${n.integer(p.seats)} seats`}${p.stages ? `, at ${n.integer(p.stages)} stages of the work` : ''}.`,
  'sum-none': (p, n) =>
    `No tone hangs on longer than the ${n.text(p.limit)} limit. That is good: bass notes stop when they should.`,
  'sum-refused': () =>
    'No decay could be read from the recording; the notes say why. Measure again before anything is decided.',
  'sum-hangs': (p, n) =>
    `${one(p.count) ? 'One tone hangs' : `${n.integer(p.count)} tones hang`} on longer than the ${n.text(p.limit)} limit. ${one(p.count) ? 'It is' : 'The worst is'} near ${n.hertz(p.frequencyHz, 0)}: it takes ${n.seconds(p.decayTimeSeconds)} to die away by 60 dB${typeof p.limitSeconds === 'number' ? `, where ${n.seconds(p.limitSeconds)} is the limit` : ''}. Notes near it boom or blur into each other.`,
  'sum-everywhere': () =>
    'It is heard at every seat, so that moving to another does not help; absorption or a matched cut does.',
  'sum-most': (p, n) => `It is heard at ${n.integer(p.heard)} of ${n.integer(p.seats)} seats.`,
  'sum-spread': (p, n) =>
    `From seat to seat the bass differs by about ±${n.decibels(p.deviationDb, 1)} (rms); within ±3 dB counts as good, within ±5 dB as workable.`,
  'sum-after': (p, n) =>
    `After the work ${one(p.left) ? 'one tone hangs' : Number(p.left) === 0 ? 'none hangs' : `${n.integer(p.left)} hang`} above the limit, where there ${one(p.count) ? 'was' : 'were'} ${n.integer(p.count)}. ${Number(p.shorter) === 0 ? 'No decay became shorter by more than the uncertainty of measuring it.' : `${one(p.shorter) ? 'One decay' : `${n.integer(p.shorter)} decays`} became shorter by more than the uncertainty of measuring it.`}${Number(p.longer) > 0 ? ` ${one(p.longer) ? 'One' : n.integer(p.longer)} became longer.` : ''}`,
  'sum-worst-after': (p, n) =>
    `The one near ${n.hertz(p.frequencyHz, 0)} went from ${n.seconds(p.beforeSeconds)} to ${n.seconds(p.afterSeconds)}.`,
  'sum-spread-after': (p, n) =>
    `The seats now differ by about ±${n.decibels(p.afterDb, 1)}, where it was ±${n.decibels(p.beforeDb, 1)}.`,
  'sum-designed': () =>
    'What stands beside it is predicted from the recordings through new settings of the sources, and not yet measured.',
  'sum-no-after': () =>
    'Nothing in this study was measured after a change: whether one helps is not known yet.',

  // Pictures.
  'side-recording': (p, n) => `${p.stage ? `“${n.text(p.stage)}”, ` : ''}as measured: ${n.text(p.seat)}`,
  'side-summed': (p, n) =>
    `${p.stage ? `“${n.text(p.stage)}”, ` : ''}all sources together as measured: ${n.text(p.seat)}`,
  'side-designed': (p, n) => `Through the new settings, predicted and not measured: ${n.text(p.seat)}`,
  'sheet-same-scales': () =>
    'Both pictures have the same axes, range of levels, window and method. Each level is relative to the loudest point of its own first slice: compare how long things last, not how high they stand.',
  'sheet-same-axes': () => 'Both have the same axes.',
  'sheet-waterfall': (p, n) => `Level over frequency and time. ${n.text(p.side)}`,
  'sheet-decay': (p, n) => `Decay time over frequency. ${n.text(p.side)}`,
  'sheet-levels': (p, n) => `Level at every seat. ${n.text(p.stage)}`,
  'sheet-response': (p, n) => `Level over frequency. ${n.text(p.label)}`,
  'sheet-plan': () => 'Plan, with seats as rings and sources as squares',

  // Tables.
  'sheet-decay-limit': () => 'Decay time; limit',
  'sheet-fitted': () => 'Fitted over',
  'sheet-cause': () => 'Cause; candidates',
  'sheet-seats': () => 'Heard',
  'sheet-action': () => 'Action',
  'sheet-outcome': () => 'Result',
  'sheet-limit-of': (p, n) =>
    typeof p.excess === 'number'
      ? `limit ${n.seconds(p.limitSeconds)}, ${n.number(p.excess, 1)}\u00a0×`
      : 'no limit here',
  'sheet-fit-range': (p, n) => `${n.number(p.fromSeconds, 2)} to ${n.seconds(p.toSeconds)}`,
  'sheet-here': () => 'here',
  'sheet-may-help': (p, n) => `not decided; may help: ${n.text(p.list)}`,
  'sheet-not-measured': () => 'not measured since',
  'sheet-predicted': (p, n) => `predicted: ${n.text(p.change)}`,
  'sheet-gone': () => 'no longer found',
  'sheet-new': () => 'new',
  'sheet-change': (p, n) =>
    `${n.plusMinus(p.afterSeconds, p.afterSdSeconds, 's')}: ${p.sure === null ? 'uncertain' : p.sure ? (Number(p.changeSeconds) < 0 ? 'shorter' : 'longer') : 'no sure change'}`,
  'sheet-still-above': () => 'still above the limit',
  'sheet-ridges-more': (p, n) =>
    `${one(p.count) ? 'One more lies' : `${n.integer(p.count)} more lie`} above the limit, by less: ${n.text(p.list)}.`,
  'sheet-ridges-foot': (p, n) =>
    `Sorted by how far each exceeds its limit (${n.text(p.limit)}). Uncertainties are one standard deviation; a change counts as sure from two. Percentages are the chance of each candidate.`,
  'sheet-alike': (p, n) => `${n.text(p.note)} (A note of this kind too: ${n.text(p.names)}.)`,
  'sheet-weak': () =>
    'A star marks less than the range that T20 needs: read with care. A dash marks too little to be read at all.',
  'sheet-rate': () => 'Rate, Hz',
  'sheet-length': () => 'Length',
  'sheet-hash': () => 'SHA-256',
  'sheet-notes-column': () => 'Notes',
  'sheet-recording': () => 'Recording',
  'sheet-volume': () => 'Volume',
  'sheet-speed': () => 'Speed of sound',
  'sheet-air': () => 'Air',
  'sheet-air-of': (p, n) =>
    `${n.number(p.temperature, 1)} °C${typeof p.humidity === 'number' ? `, ${n.number(p.humidity, 0)} % relative humidity` : ''}`,
  'sheet-walls': () => 'Walls',
  'sheet-sides': () => 'Length, width, height',
  'sheet-sides-of': (p, n) =>
    `${n.number(p.length, 2)}\u00a0×\u00a0${n.number(p.width, 2)}\u00a0×\u00a0${n.metres(p.height, 2)}`,
  'sheet-wall-of': (p, n) => `${n.text(p.wall)}: ${n.text(p.material)}`,
  'sheet-cubic': (p, n) => `${n.number(p.volume, 1)} m³`,
  'sheet-speed-of': (p, n) => `${n.number(p.speed, 1)} m/s`,
  'sheet-filters': () => 'Filters',
  'sheet-filters-all': () => 'Over all sources',
  'sheet-band': (p, n) =>
    `${n.text(p.kind)} ${n.hertz(p.frequencyHz)}${p.kind === 'all-pass' ? '' : `, ${n.decibels(p.gainDb, 1)}`}, Q ${n.number(p.q, 2)}`,
  'sheet-normal': () => 'as wired',
  'sheet-inverted': () => 'inverted',

  // What was not done.
  'not-left': (p, n) => `${n.hertz(p.frequencyHz)} is left as it is${p.note ? `: ${n.text(p.note)}` : '.'}`,
  'not-decided': (p, n) =>
    `Nothing is decided yet about ${n.text(p.list)}${Number(p.more) > 0 ? ` and ${n.integer(p.more)} more` : ''}.`,
  'not-after': () => 'No recording was made after a change, so that no result is proven.',
  'not-predicted': () =>
    'The new settings were not measured: measure again at every seat before relying on them.',
  'not-repeated': () =>
    'No point was measured twice, so that nobody knows how much of a difference another measurement would repeat.',
  'not-calibrated': () =>
    'No calibration was given: levels are relative, and nothing is said on how loud the room or the sources are.',
  'not-room': () => 'No room was given, so that no ridge is given the name of a mode.',
  'not-seats': (p, n) =>
    `${one(p.count) ? 'One seat lacks' : `${n.integer(p.count)} seats lack`} a source and ${one(p.count) ? 'is' : 'are'} left out of all sums.`,
  'not-one-seat': () => 'One seat was measured: whether the rest of the room hangs as well is not known.',
  'not-clock': () =>
    'No common clock timed the recordings: sources were not added up, and nothing is said on their delays.',
  'not-band': (p, n) => `Nothing outside ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)} was looked at.`,
  'not-boosted': () => 'No dip was filled by a boost: a null swallows it, and the source pays for it.',
  'not-read': (p, n) => `Not taken: ${n.text(p.sentence)}`,

  // How it was made.
  'made-by': (p, n) =>
    `ringdown ${n.text(p.version)} from ${one(p.count) ? 'one recording' : `${n.integer(p.count)} recordings`}; every figure follows from their samples, the room and the parameters below.`,
  'made-limit': (p, n) => `Limit “${n.text(p.limit)}”: ${n.text(p.meaning)}`,
  'made-band': (p, n) =>
    `Read from ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)}. Resonances are fitted to the samples; a decay time is that of 60 dB.`,
  'csv-recordings': () => 'Recordings',
  'csv-resonances': () => 'Resonances',
  'csv-comparison': () => 'Comparison',
};
