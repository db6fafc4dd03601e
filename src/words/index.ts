export * from './types.js';
export { createNumberWords, decimalsFor } from './format.js';
export { parseNumber, parseNumberList } from './parse-number.js';
export { givenCaptions, gridCaption } from './caption.js';
export { createSpeaker, type Speaker, type SpeakerOptions, type TermTable } from './speaker.js';
export { english } from './en/index.js';
export { addWords, WordsError } from './add-words.js';
export { addLanguage, hasLanguage, onWordsChange, tagsOf, wordsRevision } from './registry.js';
