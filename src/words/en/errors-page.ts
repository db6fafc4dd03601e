import type { Sentence } from '../types.js';

/** What is off in a page: an attribute, or a file that did not arrive. */
export const pageErrors: Readonly<Record<string, Sentence>> = {
  'fetch-status': (p, n) =>
    `The file could not be fetched from ${n.text(p.url)}: the server answered ${n.text(p.status)}. Check the address in “${n.text(p.name ?? 'src')}”.`,
  'fetch-failed': (p, n) =>
    `The file could not be fetched from ${n.text(p.url)}: the server cannot be reached, or does not let this page read it. Check the address in “${n.text(p.name ?? 'src')}”.`,
  'fetch-page': (p, n) =>
    `What the server sent from ${n.text(p.url)} is a web page and not a recording. Check the address in “${n.text(p.name ?? 'src')}”.`,
  'fetch-large': (p, n) =>
    `The file at ${n.text(p.url)} has more than ${n.number(p.mostMegabytes, 0)} MB (${n.number(p.megabytes, 0)} MB and counting), more than is held in memory. It was not read on.`,
  'fetch-slow': (p, n) =>
    `The server of ${n.text(p.url)} has sent nothing for ${n.number(p.seconds, 0)} s, so the file was given up. Load the page again, or check the address in “${n.text(p.name ?? 'src')}”.`,
  'study-missing': (p, n) =>
    `There is no ringdown-study with the id “${n.text(p.id)}” on this page, as “for” asks. Check the id.`,
  'attribute-number': (p, n) =>
    `The attribute ${n.text(p.name)}="${n.text(p.text)}" is not a number. Digits with a decimal point or comma are read.`,
  'attribute-range': (p, n) =>
    `The attribute ${n.text(p.name)} is ${n.significant(p.value, 6)}, outside ${n.significant(p.from, 6)} to ${n.significant(p.to, 6)}.`,
  'attribute-choice': (p, n) =>
    `The attribute ${n.text(p.name)}="${n.text(p.text)}" is none of ${n.text(p.choices)}.`,
  'attribute-order': (p, n) =>
    `The attribute from (${n.hertz(p.fromHz)}) must lie below to (${n.hertz(p.toHz)}).`,
  'attribute-list': (p, n) =>
    `The attribute ${n.text(p.name)}="${n.text(p.text)}" is not a list of numbers, as in 0.1 or 0.1 0.1 0.2 0.2 0.3 0.1.`,
  'place-unknown': (p, n) =>
    `“${n.text(p.text)}” is neither a place of this study nor three distances in metres, as in 1.2 0.8 1.1.`,
  'link-version': (p, n) =>
    `The link to a view begins with “${n.text(p.version)}”, where version ${n.text(p.known)} is read here. The view is as it was.`,
  'link-long': (p, n) =>
    `The link to a view has ${n.integer(p.letters)} characters, more than any view needs (${n.integer(p.most)}). The view is as it was.`,
  'link-part': (p, n) =>
    `The link to a view does not read: “${n.text(p.part)}” is nothing that a view has, or no value for it. The view is as it was.`,
  'link-recording': () =>
    'The link shows a recording that is not among those of this page. The rest of the view is as the link has it.',
  'link-ridge': (p, n) =>
    `The link selects a ridge at ${n.hertz(p.frequencyHz)}, and there is none here. The rest of the view is as the link has it.`,
  'file-read': (p, n) => `The file could not be read by the browser (${n.text(p.detail)}). Choose it again.`,
  'more-missing': (p, n) =>
    `This needs the file ${n.text(p.name)} beside the one that the page loads, and it did not come (${n.text(p.detail)}). Put both, of one release, into one folder.`,
  'more-words': (p, n) =>
    `Refused (${n.text(p.code)}). Why is said in the file ${n.text(p.name)}, which has not come from beside the one that the page loads.`,
  'words-language': (p, n) =>
    `Words need a language, as “de” or “de-AT” (BCP 47); “${n.text(p.text)}” is none. Nothing of them was taken.`,
  'words-table': (p, n) => `“${n.text(p.name)}” is not a table of words by code. Nothing of them was taken.`,
  'words-unknown': (p, n) =>
    `There is no table of words called “${n.text(p.name)}”; there are ${n.text(p.names)}. Nothing of them was taken.`,
  'words-sentence': (p, n) =>
    `“${n.text(p.code)}” of the table “${n.text(p.name)}” must be text, or a function that makes text. Nothing of the words was taken.`,
  'words-term': (p, n) =>
    `“${n.text(p.code)}” of the table “${n.text(p.name)}” must have a name and a meaning, both text. Nothing of the words was taken.`,
  'words-text': (p, n) =>
    `“${n.text(p.code)}” of the table “${n.text(p.name)}” must be text. Nothing of the words was taken.`,
};
