import type { Sentence } from '../types.js';

/** Refusals of a picture or a fit: the file is sound, but what was asked of it is not. */
export const studyErrors: Readonly<Record<string, Sentence>> = {
  'band-bounds': (p, n) =>
    `A frequency of ${n.significant(p.value, 4)} Hz is outside what is read (${n.text(p.from)} to ${n.text(p.to)} Hz).`,
  'band-order': (p, n) =>
    `The lowest frequency shown, ${n.significant(p.fromHz, 4)} Hz, must lie below the highest, ${n.significant(p.toHz, 4)} Hz.`,
  'frequency-text': (p, n) =>
    `“${n.text(p.text)}” is not a frequency. Digits with a decimal point or comma are read, in Hz.`,
  'frequency-range': (p, n) =>
    `Frequencies from ${n.significant(p.fromHz, 4)} to ${n.significant(p.toHz, 4)} Hz are no range: the first must lie above 0 and below the second.`,
  'grid-frequencies': (p, n) =>
    `A picture needs at least two frequencies; ${n.text(p.count)} ${p.count === 1 ? 'was' : 'were'} given.`,
  'grid-top': (p, n) =>
    `Frequencies up to ${n.significant(p.toHz, 4)} Hz were asked for; at this file's sample rate they must lie above 0 and reach at most ${n.significant(p.highestHz, 4)} Hz.`,
  'grid-window': (p, n) =>
    `A window of ${n.significant(p.seconds)} s is outside ${n.text(p.from)} to ${n.text(p.to)} s.`,
  'grid-step': (p, n) =>
    `Steps of ${n.significant(p.step)} s over ${n.significant(p.span)} s make no picture. Steps start at ${n.number(0.5, 1)} ms, and a picture holds at most 20000 of them.`,
  'grid-silent': () =>
    'There is no sound at the onset in this band: the first slice holds nothing but zeros, so no level can be given relative to it.',
  'study-not-json': () =>
    'This is not a saved study: it is not JSON. Choose the file that “Save study” wrote, or a recording.',
  'study-not-ours': () =>
    'This JSON file is not a saved study: it does not say so. Choose the file that “Save study” wrote.',
  'study-newer': (p, n) =>
    `The study was saved as version ${n.text(p.version)}, and versions up to ${n.text(p.known)} are read here. Open it with a newer ringdown.`,
  'study-broken': (p, n) =>
    `The saved study is damaged: ${p.where ? `“${n.text(p.where)}” does not hold what it should` : 'it does not hold what it should'}. Nothing of it was taken. Save it again, or open the recordings themselves.`,
  'study-full': (p, n) =>
    `A study holds at most ${n.text(p.most)} recordings, and this would be ${n.text(p.count)}. Remove some, or begin another study.`,
  'study-memory': (p, n) =>
    `A study holds at most ${n.number(p.most, 0)} MB of samples, and this would be ${n.number(p.megabytes, 0)} MB. Remove some recordings, or shorten them to the impulse responses.`,
  'study-too-large': (p, n) =>
    `The file has ${n.number(p.megabytes, 0)} MB, more than a saved study ever has (64 MB). It was not read.`,
  'autosave-refused': () =>
    'The study cannot be kept in this page: the browser lets it keep nothing (private window, or blocked by its settings). Save it as a file.',
  'autosave-unread': () => 'What this browser had kept could not be read; it was set aside and not deleted.',
  'autosave-full': () =>
    'The study could not be kept in this page: the browser gives it no more room. Save it as a file.',
};
