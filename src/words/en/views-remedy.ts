import type { Sentence } from '../types.js';

const plural = (count: unknown, one: string, many: string): string => (Number(count) === 1 ? one : many);
const signed = (value: unknown, text: string): string => (Number(value) > 0 ? `+${text}` : text);

/** What the views of remedies and of two stages say. */
export const remedyViews: Readonly<Record<string, Sentence>> = {
  // Remedies.
  remedy: () => 'Remedies',
  'remedy-name': (p, n) =>
    `Levels, filters and decays before and after the filters over all sources: ${n.text(p.label)}`,
  'remedy-help': () =>
    'Above, the levels without and with the filters; in the middle, their gain, with one handle per filter; below, the decay of each ridge. Arrow keys move a handle by a hundredth of an octave and 0.1 dB, with Shift ten times as far; Page Up and Page Down change its Q. The table below has the same as numbers.',
  'choose-mean': () => 'mean of the seats',
  'gain-axis': () => 'Gain of the filters, dB',
  'remedy-decay-axis': () => 'Decay time of the ridges, s',
  'remedy-before': () => 'without',
  'remedy-after': () => 'with the filters',
  'key-remedy-before': () => 'without filters; decay as measured',
  'key-remedy-after': () => 'with the filters; decay fitted to the samples through them',
  'key-remedy-expected': () => 'decay only expected so far',
  'key-remedy-limit': () => 'limit',
  'key-remedy-spread': () => 'from the lowest seat to the highest, with the filters',
  'remedy-caption': (p, n) =>
    `${n.text(p.where)}, ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)}, not smoothed, read at every 1/24 octave, where a narrow peak may be missed by 2 or 3 dB. The filters lie over all sources. Decays with the filters are fitted to the samples through them. The room itself rings on: a filter only takes from the sources what would excite it.`,
  'remedy-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${n.decibels(p.beforeDb, 1)} without, ${n.decibels(p.afterDb, 1)} with; filters ${n.decibels(p.gainDb, 1)}`,
  'remedy-bands': () => 'Filters over all sources',
  'no-bands': () => 'No filter yet.',
  'band-matched': () => 'matched cut',
  'band-number': (p, n) => `Filter ${n.integer(p.number)}`,
  'kind-column': () => 'Kind',
  'frequency-column': () => 'Frequency, Hz',
  'band-gain-column': () => 'Gain, dB',
  'q-column': () => 'Q',
  'target-column': () => 'Decay wanted, s',
  'cost-column': () => 'Rings itself; costs',
  'band-field': (p, n) => `${n.text(p.what)} of filter ${n.integer(p.number)}`,
  'band-kind-of': (p, n) => `Kind of filter ${n.integer(p.number)}`,
  'band-take-away': (p, n) => `Remove filter ${n.integer(p.number)}`,
  'band-handle': (p, n) =>
    `Filter ${n.integer(p.number)}, ${n.text(p.kind)}: ${n.hertz(p.frequencyHz)}, ${n.decibels(p.gainDb, 1)}, Q ${n.number(p.q, 1)}`,
  'band-rings': (p, n) => `rings for ${n.seconds(p.seconds)} itself`,
  'band-costs': (p, n) =>
    `${n.number(p.power, 2)} times the power, ${n.number(p.excursion, 2)} times the excursion of the cone`,
  'band-matches': (p, n) => `${n.hertz(p.frequencyHz)}, from ${n.seconds(p.decayTimeSeconds)}`,
  'add-band': () => 'Add',
  'add-peaking': () => 'Peaking filter',
  'add-low-shelf': () => 'Low shelf',
  'add-high-shelf': () => 'High shelf',
  'add-cut': () => 'Matched cut of',
  'add-cut-button': () => 'Add the cut',
  'remove-bands': () => 'Remove all filters',
  'too-many-bands': (p, n) => `No more than ${n.integer(p.most)} filters can be held.`,
  'refused-boost-high': (p, n) =>
    `A boost ends at ${n.decibels(p.mostDb)} here: more costs power and cone excursion, and rings; keep to the loudspeaker maker’s limits.`,
  'refused-boost-narrow': (p, n) =>
    `A boost of more than Q ${n.number(p.q, 1)} is refused: it would ring by itself, and fits one place only.`,
  'refused-boost-null': (p, n) =>
    `No boost here: ${p.seats ? `${n.text(p.seats)} ${plural(p.count, 'has', 'have')} a null, and a` : 'a seat has a null, and a'} null cannot be filled; it takes the power and stays.`,
  'refused-boost-sum': (p, n) =>
    `The filters together would boost more than ${n.decibels(p.mostDb)}: what is left of it was taken.`,
  'headroom-gained': (p, n) =>
    `Headroom: the highest point of the mean response falls by ${n.decibels(p.headroomDb, 1)}; by so much the sources have more in hand at the same peak level.`,
  'headroom-lost': (p, n) =>
    `Headroom: the highest point of the mean response rises by ${n.decibels(p.headroomDb, 1)}, which the sources have less in hand.`,
  'headroom-none': () => 'Headroom: the highest point of the mean response stays where it is.',

  'auto-heading': () => 'Cuts proposed for what the seats share',
  'auto-most': () => 'Filters at most',
  'auto-lowest': () => 'No seat left below its mean by more than, dB',
  'auto-deepest': () => 'No cut deeper than, dB',
  'auto-button': () => 'Propose cuts',
  'auto-waiting': () => 'The ridges of the seats are still being found.',
  'auto-made': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${n.decibels(p.gainDb, 1)}, Q ${n.number(p.q, 1)}, from ${n.seconds(p.beforeSeconds)} to ${n.seconds(p.targetSeconds)}${p.partial ? ', only part of the way to its limit within the bounds' : ''}`,
  'auto-nothing': () => 'No ridge takes a cut within these bounds.',
  'auto-left': () => 'Left alone, and why',
  'skip-cut-band-limit': () => 'the number of filters is used up',
  'skip-cut-seats': () => 'only some seats hear it: placement first',
  'skip-cut-not-single': () => 'several modes lie there: one filter cannot match them',
  'skip-cut-no-limit': () => 'it is within its limit, or has none',
  'skip-cut-uncertain': () => 'its decay is not known well enough to match',
  'skip-cut-seat-dip': () => 'it would leave a seat with a dip',
  'auto-skipped': (p, n) => `${n.hertz(p.frequencyHz)}: ${n.text(p.why)}`,

  'remedy-ridges': () => 'Ridges without and with the filters',
  'remedy-working': (p, n) => `Decays with the filters: ${n.text(p.stage)}`,
  'no-ridges-here': () => 'No ridge stands above its limit in what was read.',
  'before-column': () => 'Without',
  'remedy-expected': () => 'Expected',
  'fitted-column': () => 'Fitted with them',
  'level-change-column': () => 'Level',
  'limit-column': () => 'Limit',
  'change-column': () => 'Change',
  'sure-yes': () => 'larger than its uncertainty',
  'sure-no': () => 'within its uncertainty',
  'sure-unknown': () => 'uncertainty not known',
  'options-button': () => 'What can be done',
  'options-of': (p, n) => `What can be done: ${n.hertz(p.frequencyHz)}`,
  'hangs-by-seat': () =>
    'How long each ridge hangs at each seat, until it lies 30 dB below the loudest there: without and with the filters',
  'hang-change': (p, n) => `${n.seconds(p.before)} → ${n.seconds(p.after)}`,
  'fresh-ridge': (p, n) =>
    `${n.hertz(p.frequencyHz)} stands above its limit with the filters, at ${n.seconds(p.decayTimeSeconds)}, and did not without.`,
  'signed-decibels': (p, n) => signed(p.decibels, n.decibels(p.decibels, 1)),

  'options-heading': (p, n) =>
    `What can be done about ${n.hertz(p.frequencyHz)}, ${n.seconds(p.decayTimeSeconds)}`,
  'option-absorb': () => 'Absorb',
  'option-cut': () => 'Matched cut',
  'option-move-seat': () => 'Move the seat',
  'option-move-source': () => 'Move the source',
  'option-add-source': () => 'Add a source',
  'option-leave': () => 'Leave it alone',
  'standing-first': () => 'fits best',
  'standing-fits': () => 'may help',
  'standing-unlikely': () => 'not for this',
  'against-not-a-mode': () => 'Nothing here is a mode of the room, which alone it would change.',
  'against-move-everywhere': () =>
    'It hangs at every seat: another place makes it louder or fainter, and no shorter.',
  'against-cut-not-single': () =>
    'It is not one mode by itself: no one filter matches it, so no decay is promised.',
  'against-cut-no-peak': () => 'It makes no peak, so a filter takes little of it.',
  'against-cut-no-limit': () => 'It has no limit, or is within it.',
  'against-leave-audible': (p, n) =>
    p.excess === null
      ? 'Nothing says how long it may ring.'
      : `It exceeds its limit ${n.number(p.excess, 1)} times.`,
  'option-expected': (p, n) =>
    [
      p.seconds === null ? '' : n.seconds(p.seconds),
      p.decibels === null ? '' : signed(p.decibels, n.decibels(p.decibels, 1)),
    ]
      .filter(Boolean)
      .join(', ') || 'nothing that can be promised',
  'option-expected-head': () => 'Expected after it',
  'option-beside-head': () => 'Besides',
  'option-source': (p, n) => `Reckoned for moving ${n.text(p.name)} alone.`,
  'effect-ridge': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${signed(p.changeDb, n.decibels(p.changeDb, 1))}${p.seconds === null ? '' : `, ${n.seconds(p.seconds)}`}`,
  'effect-seat': (p, n) =>
    `${n.text(p.seat)}: ${signed(p.standingDb, n.decibels(p.standingDb, 1))} re its mean${p.heard ? '' : ', where the ridge is not heard'}`,
  'effect-more': (p, n) =>
    `${n.integer(p.count)} more ${plural(p.count, 'ridge changes', 'ridges change')} less`,
  'option-add-cut': () => 'Add this cut',
  'options-note': () =>
    'Moves, sources and absorbers are reckoned in the rigid box for the likeliest mode alone; other ridges change as their own likeliest modes would. Nothing of it is measured yet.',
  'options-room': () =>
    'Give the room and its places to have distances, absorber areas and the effect on other ridges reckoned.',
  'cautions-heading': () => 'Cautions',

  'after-heading': () => 'The decay without and with the filters',
  'after-name': (p, n) => `Decay without and with the filters, seat ${n.text(p.seat)}`,
  'after-nothing': () => 'Add a filter to see the decay with it beside the one without.',
  'choose-form': () => 'Shown as',
  'form-spectrogram': () => 'spectrogram',
  'form-waterfall': () => 'waterfall',

  'export-heading': () => 'Take the filters away',
  'export-rate': () => 'For a sample rate of, Hz',
  'export-json': () => 'Coefficients (JSON)',
  'export-biquads': () => 'Coefficients (CSV)',
  'export-bands': () => 'Frequency, gain, Q (CSV)',
  'export-note': (p, n) =>
    `Coefficients hold for ${n.integer(p.rate)} Hz and no other rate; signs and order stand in the files. The plain table holds peaking filters only${Number(p.left) > 0 ? `: ${n.integer(p.left)} ${plural(p.left, 'shelf is', 'shelves are')} left out` : ''}. Processors define Q differently: compare the curve before trusting a typed Q.`,
  'csv-remedy': () => 'Ridges with the filters',
  'csv-options': () => 'What can be done',
  'remedy-table': () => 'Levels and gain over frequency',

  // Two stages.
  comparison: () => 'Comparison',
  'comparison-name': (p, n) => `${n.text(p.label)}, on one scale, with their difference`,
  'comparison-help': () =>
    'The two pictures have the same axes, colours, window and method. Point at one to read all. The sliders below move the same cursor.',
  'comparison-title': (p, n) => `${n.text(p.first)} and ${n.text(p.second)}`,
  'comparison-nothing': () =>
    'One recording alone has nothing to be compared with: add one made later, or filters that change it.',
  'choose-first': () => 'First',
  'choose-second': () => 'Second',
  'choose-difference': () => 'Difference',
  'compared-recording': (p, n) => n.text(p.label),
  'compared-at-seat': (p, n) => `${n.text(p.stage)}, ${n.text(p.seat)}`,
  'compared-before': (p, n) => (p.stage ? n.text(p.stage) : 'as measured'),
  'compared-designed': () => 'through the design',
  'compared-after': (p, n) => (p.stage ? n.text(p.stage) : 'measured later'),
  'group-stages': () => 'Stages, all sources',
  'group-recordings': () => 'Recordings',
  'difference-title': () => 'Difference: second less first',
  'difference-axis': () => 'Difference, dB',
  'key-more': () => 'louder in the second',
  'key-less': () => 'fainter in the second',
  'key-neither': () => 'neither shows anything there',
  'key-no-data': () => 'past the end of a recording, or not resolved',
  'compare-same': () => 'Levels are of the same recordings, so their difference is what the design does.',
  'compare-calibrated': () => 'Both are calibrated, so levels are told from one reference.',
  'compare-relative': () =>
    'Levels are relative: each is told from its own loudest point at time zero, since files may have been normalised. A constant difference means nothing; compare decays only.',
  'difference-caption': (p, n) =>
    `The difference is drawn to ${n.decibels(p.reachDb)} either way for every pair; where only one of the two stands above its noise and the range shown, it is at least what is drawn.`,
  'comparison-both': () => 'Both:',
  'comparison-second': () => 'In the second:',
  'comparison-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)} at ${n.seconds(p.timeSeconds)}: ${n.decibels(p.firstDb, 1)}, ${n.decibels(p.secondDb, 1)}; ${signed(p.changeDb, n.decibels(p.changeDb, 1))}`,
  'comparison-readout-neither': (p, n) =>
    `${n.hertz(p.frequencyHz)} at ${n.seconds(p.timeSeconds)}: neither shows anything`,
  'comparison-readout-past': (p, n) =>
    `${n.hertz(p.frequencyHz)} at ${n.seconds(p.timeSeconds)}: past the end of a recording, or not resolved`,
  'comparison-ridges': () => 'Each ridge in both',
  'first-column': () => 'In the first',
  'second-column': () => 'In the second',
  'surely-column': () => 'Is that more than its uncertainty?',
  'yes-shorter': () => 'yes, shorter',
  'yes-longer': () => 'yes, longer',
  'no-change': () => 'no',
  'not-found': () => 'not found',
  'below-limit': () => 'within its limit now',
  'new-ridge': () => 'not above its limit in the first',
  'comparison-summary': (p, n) =>
    `Of ${n.integer(p.ridges)} ${plural(p.ridges, 'ridge', 'ridges')} in the first, ${n.integer(p.shorter)} ${plural(p.shorter, 'is', 'are')} surely shorter in the second and ${n.integer(p.within)} within ${plural(p.within, 'its', 'their')} limit; ${n.integer(p.longer)} surely longer, ${n.integer(p.unsure)} changed by no more than ${plural(p.unsure, 'its', 'their')} uncertainty${Number(p.gone) > 0 ? `, ${n.integer(p.gone)} not found again` : ''}${Number(p.fresh) > 0 ? `; ${n.integer(p.fresh)} ${plural(p.fresh, 'is', 'are')} new` : ''}.`,
  'comparison-none': () => 'Neither has a ridge above its limit in what was read.',
  'comparison-unread': (p, n) =>
    `Of “${n.text(p.label)}” nothing was read, so a ridge that is missing there has not gone:`,
  'comparison-pending': () => 'The ridges are still being found.',
  'comparison-sure': () =>
    'A change counts as more than its uncertainty beyond two of its standard deviations, from both fits.',
  'comparison-table': () => 'Differences in level over frequency and time',
  'at-time': (p, n) => n.seconds(p.seconds),
  'csv-difference': () => 'Differences',
};
