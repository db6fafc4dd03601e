/** German for a page that uses one of the single files: a second script tag, before or after the other. */
import { german } from './words/de/index.js';
import { addLanguage } from './words/registry.js';

addLanguage(german);
