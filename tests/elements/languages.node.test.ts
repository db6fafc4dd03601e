import { afterEach, beforeEach, describe, expect, it, vi, type MockInstance } from 'vitest';
import type { Words } from '../../src/words/index.js';

const loader = '../../src/elements/shared/languages.js';
const modules = '../../src/elements/shared/language-modules.js';

/** The fetcher of languages with another way to fetch German, on a page without any. */
async function fetching(fetched: () => Promise<Words>) {
  vi.resetModules();
  delete (globalThis as unknown as Record<symbol, unknown>)[Symbol.for('ringdown.words')];
  const de = vi.fn(fetched);
  vi.doMock(modules, () => ({ languageModules: { de } }));
  const { wantLanguage } = (await import(loader)) as typeof import('../../src/elements/shared/languages.js');
  const words = await import('../../src/words/index.js');
  return { de, wantLanguage, words };
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the fetching of a language', () => {
  let warn: MockInstance<typeof console.warn>;
  beforeEach(() => {
    warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  });
  afterEach(() => {
    vi.doUnmock(modules);
    vi.restoreAllMocks();
  });

  it('happens once, when it is first wanted, and is told to who listens', async () => {
    const { german } = await import('../../src/words/de/index.js');
    const { de, wantLanguage, words } = await fetching(() => Promise.resolve(german));
    let heard = 0;
    words.onWordsChange(() => (heard += 1));
    for (const locale of ['en', 'fr', 'toString']) wantLanguage(locale);
    expect(de).not.toHaveBeenCalled();
    for (const locale of ['de', 'de-AT', 'DE']) wantLanguage(locale);
    await settled();
    expect(de).toHaveBeenCalledTimes(1);
    expect(heard).toBe(1);
    expect(words.createSpeaker('de-AT').view('fetching')).toBe('Aufnahme wird geholt');
  });

  it('does not happen where another file brought the language', async () => {
    const { german } = await import('../../src/words/de/index.js');
    const { de, wantLanguage, words } = await fetching(() => Promise.resolve(german));
    words.addLanguage(german);
    wantLanguage('de');
    expect(de).not.toHaveBeenCalled();
  });

  it('leaves English and one warning where it fails, and nothing throws', async () => {
    const { de, wantLanguage, words } = await fetching(() => Promise.reject(new Error('offline')));
    for (const locale of ['de', 'de', 'de-CH']) {
      wantLanguage(locale);
      await settled();
    }
    expect(de).toHaveBeenCalledTimes(1);
    expect(warn.mock.calls).toHaveLength(1);
    expect(warn.mock.calls[0][0]).toMatch(/“de” did not arrive, so English is spoken\. Error: offline/);
    expect(words.createSpeaker('de').view('fetching')).toBe('Fetching the recording');
  });
});
