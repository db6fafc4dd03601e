import type { Words } from '../../words/index.js';

/**
 * Languages that are fetched once a page asks for them, each a module of its own. The single files request no code: the
 * build puts an empty list in this one's place, and such a page adds `ringdown-de.js`.
 */
export const languageModules: Readonly<Record<string, () => Promise<Words>>> = {
  de: async () => (await import('../../words/de/index.js')).german,
};
