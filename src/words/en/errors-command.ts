import type { Sentence } from '../types.js';

/** What is off in the words of a call, or with a file on disk. */
export const commandErrors: Readonly<Record<string, Sentence>> = {
  'command-none': (p, n) => `Say what to do: ${n.text(p.commands)}. “ringdown --help” explains each.`,
  'command-unknown': (p, n) => `“${n.text(p.name)}” is no command. There are: ${n.text(p.commands)}.`,
  'option-unknown': (p, n) =>
    `“${n.text(p.name)}” is no option of “ringdown ${n.text(p.command)}”. “ringdown ${n.text(p.command)} --help” lists them.`,
  'option-value': (p, n) => `The option --${n.text(p.name)} needs a value behind it.`,
  'option-flag': (p, n) => `The option --${n.text(p.name)} takes no value.`,
  'option-once': (p, n) => `--${n.text(p.name)} was given more than once.`,
  'option-integer': (p, n) => `--${n.text(p.name)} ${n.significant(p.value, 6)} is not a whole number.`,
  'option-number': (p, n) =>
    `--${n.text(p.name)} “${n.text(p.text)}” is not a number. Digits with a decimal point or comma are read.`,
  'option-range': (p, n) =>
    `--${n.text(p.name)} ${n.significant(p.value, 6)} is outside ${n.significant(p.from, 6)} to ${n.significant(p.to, 6)}.`,
  'option-choice': (p, n) => `--${n.text(p.name)} “${n.text(p.text)}” is none of ${n.text(p.choices)}.`,
  'option-list': (p, n) =>
    `--${n.text(p.name)} “${n.text(p.text)}” is not a list of numbers, as in 0.1,0.2 (with decimal commas: 0,1; 0,2).`,
  'option-lang': (p, n) => `--lang “${n.text(p.text)}” is no language tag, as en, de or de-CH are (BCP 47).`,
  'option-missing': (p, n) => `“ringdown ${n.text(p.command)}” needs --${n.text(p.name)}.`,
  'option-needs': (p, n) => `--${n.text(p.name)} needs --${n.text(p.other)}.`,
  'option-both': (p, n) => `--${n.text(p.name)} and --${n.text(p.other)} cannot be given together.`,
  'option-count': (p, n) =>
    `--${n.text(p.name)} was given ${n.text(p.count)} times for ${n.text(p.files)} ${p.files === 1 ? 'file' : 'files'}; give it once, or once per file.`,
  'option-order': (p, n) =>
    `--from ${n.significant(p.from, 6)} must lie below --to ${n.significant(p.to, 6)}.`,
  'figure-kind': (p, n) => `“${n.text(p.path)}” says no kind of picture. End its name in .svg or .png.`,
  'figure-empty': (p, n) => `There is nothing for the view “${n.text(p.view)}” to show in this file.`,
  'figure-renderer': (p, n) =>
    `A PNG needs the package ${n.text(p.name)}, which is not installed. Install it, or write an SVG.`,
  'files-none': (p, n) => `“ringdown ${n.text(p.command)}” needs a file to read.`,
  'files-two': (p, n) =>
    `“ringdown ${n.text(p.command)}” needs two files, the sweep that was played and its recording; ${n.text(p.count)} ${Number(p.count) === 1 ? 'was' : 'were'} given.`,
  'files-many': (p, n) =>
    `“ringdown ${n.text(p.command)}” ${p.most === 0 ? 'reads no file' : 'reads one file'}, but ${n.text(p.count)} ${p.count === 1 ? 'was' : 'were'} given (“${n.text(p.extra)}”).`,
  'file-missing': () => 'There is no such file. Check the path.',
  'file-folder': () => 'This is a folder, not a file. Name the files in it.',
  'file-forbidden': () => 'The file may not be read: permission is denied.',
  'file-unreadable': (p, n) => `The file could not be read (${n.text(p.detail)}).`,
  'file-unwritable': (p, n) => `“${n.text(p.path)}” could not be written (${n.text(p.detail)}).`,
  'file-too-large': (p, n) =>
    `The file has ${n.integer(p.megabytes)} MB, more than is read (${n.integer(p.most)} MB). Export the impulse response alone.`,
};
