import type { Sentence } from '../types.js';

/** Refusals of what is asked of several sources and seats. */
export const seatErrors: Readonly<Record<string, Sentence>> = {
  'band-value': (p, n) => {
    const names: Record<string, string> = { frequencyHz: 'frequency', gainDb: 'gain', q: 'Q' };
    const units: Record<string, string> = { frequencyHz: ' Hz', gainDb: ' dB', q: '' };
    const unit = units[n.text(p.name)] ?? '';
    return `A filter's ${names[n.text(p.name)] ?? n.text(p.name)} of ${n.significant(p.value, 4)}${unit} is outside ${n.significant(p.from, 4)} to ${n.significant(p.to, 4)}${unit}.`;
  },
  'points-missing': (p, n) =>
    `Of ${n.integer(p.points)} points of source and seat, ${n.integer(p.missing)} ${Number(p.missing) === 1 ? 'has' : 'have'} no recording. The sum of sources needs every source at every seat: measure what is missing, or leave that seat or source out.`,
  'time-reference': (p, n) =>
    `${p.label ? `“${n.text(p.label)}”` : 'A recording'} is not known to share its time zero with the others, so it can neither be summed nor aligned with them. Say that the recordings have a common time reference only if one clock (a loopback, or one device) timed them all.`,
  'rates-differ': (p, n) =>
    `${p.label ? `“${n.text(p.label)}”` : 'A recording'} has a sample rate of ${n.significant(p.rate, 6)} Hz where the others have ${n.significant(p.expected, 6)} Hz; recordings of different rates are not summed. Export them at one rate.`,
  'all-muted': () => 'All sources are muted, so nothing is heard. Let at least one play.',
  'optimise-bounds': (p, n) => {
    const names: Record<string, string> = {
      lowestGainDb: 'lowest gain',
      longestDelaySeconds: 'longest delay',
      leastLevelDb: 'lowest output',
    };
    return `The bound for the ${names[n.text(p.name)] ?? n.text(p.name)} is ${n.significant(p.value, 4)}, outside ${n.significant(p.from, 4)} to ${n.significant(p.to, 4)}.`;
  },
  'optimise-sources': (p, n) =>
    `Settings are proposed for two sources or more; there ${Number(p.count) === 1 ? 'is one' : `are ${n.integer(p.count)}`}.`,
  'weights-empty': () =>
    'Every seat has the weight 0, so nothing can be made better. Give at least one a weight.',
};
