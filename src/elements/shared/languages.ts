import { addLanguage, hasLanguage, tagsOf } from '../../words/index.js';
import { languageModules } from './language-modules.js';

const asked = new Set<string>();

/**
 * Fetches the language of a locale unless it is there; elements then speak anew. Until it comes, and where it does not,
 * they speak English.
 */
export function wantLanguage(locale: string): void {
  const [language] = tagsOf(locale);
  if (!Object.hasOwn(languageModules, language) || asked.has(language) || hasLanguage(language)) return;
  asked.add(language);
  languageModules[language]().then(addLanguage, (error: unknown) =>
    console.warn(
      `ringdown: the words for “${language}” did not arrive, so English is spoken. ${String(error)}`,
    ),
  );
}
