/* global document, location, window */
/**
 * The language of the lessons: that of the address (`?lang=de`), else that of the page. Elements follow the page's `lang`, and
 * fetch their own words with it.
 */
import { formats } from './dom.js';

const known = ['en', 'de'];
const primary = (tag) => tag?.toLowerCase().split('-')[0];
const asked = primary(new window.URLSearchParams(location.search).get('lang'));

export const language =
  [asked, primary(document.documentElement.lang)].find((tag) => known.includes(tag)) ?? 'en';

document.documentElement.lang = language;

/** Every sentence of the lessons; see `words/en`. */
export const words = await import(`./words/${language}/index.js`);

/** Numbers with their units, in this language. */
export const n = formats(language);

/** An address in the same language. */
export const inLanguage = (address, tag = language) => (tag === 'en' ? address : `${address}?lang=${tag}`);

/** The other language of the two. */
export const other = language === 'de' ? 'en' : 'de';

/** Where the markup of the page stands for a sentence: the element's `data-say`, as a path into the words of the frame. */
export function sayPage() {
  for (const element of document.querySelectorAll('[data-say]')) {
    const text = element.dataset.say.split('.').reduce((part, key) => part[key], words.frame);
    element.textContent = text;
  }
  for (const link of document.querySelectorAll('a[data-in-language]'))
    link.setAttribute('href', inLanguage(link.getAttribute('href')));
}

/** Questions of a lesson with their answers: which option is right, and why. */
export const withAnswers = (questions, right) =>
  questions.map(({ because, ...question }, k) => ({
    ...question,
    answer: (facts) => ({ right: right[k], because: because(facts, n) }),
  }));
