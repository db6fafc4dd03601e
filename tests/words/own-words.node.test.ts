import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { german } from '../../src/words/de/index.js';
import {
  addLanguage,
  addWords,
  createSpeaker,
  onWordsChange,
  wordsRevision,
  WordsError,
  type OwnWords,
} from '../../src/words/index.js';

const page = globalThis as unknown as Record<symbol, unknown>;
const place = Symbol.for('ringdown.words');
const plain = { space: ' ' };
const view = (locale: string, code: string, params = {}): string =>
  createSpeaker(locale, plain).view(code, params);

/** What is said of a table that cannot be taken. */
function refusal(words: unknown): string {
  const before = wordsRevision();
  try {
    addWords(words as OwnWords);
  } catch (error) {
    expect(error).toBeInstanceOf(WordsError);
    expect(wordsRevision(), 'nothing was taken').toBe(before);
    return (error as WordsError).message;
  }
  throw new Error('The table was taken.');
}

describe('the languages of a page', () => {
  beforeEach(() => delete page[place]);
  afterEach(() => {
    delete page[place];
    vi.restoreAllMocks();
  });

  it('speak English with the numbers of the locale until a language is there', () => {
    expect(view('de', 'fetching')).toBe('Fetching the recording');
    expect(createSpeaker('de', plain).n.hertz(43.9)).toBe('43,9 Hz');
    addLanguage(german);
    expect(view('de', 'fetching')).toBe('Aufnahme wird geholt');
    expect(view('de-CH', 'fetching')).toBe('Aufnahme wird geholt');
    expect(view('DE_at', 'fetching')).toBe('Aufnahme wird geholt');
    expect(view('den', 'fetching')).toBe('Fetching the recording');
    expect(view('en-GB', 'fetching')).toBe('Fetching the recording');
  });

  it('put single entries of a page’s own over what is there, in whichever order they come', () => {
    for (const order of [0, 1]) {
      delete page[place];
      const own = { language: 'de', views: { remedies: 'Maßnahmen' }, labels: { cause: 'Grund' } };
      if (order === 0) addLanguage(german);
      addWords(own);
      if (order === 1) addLanguage(german);
      expect(view('de-DE', 'remedies')).toBe('Maßnahmen');
      expect(view('de-DE', 'fetching')).toBe('Aufnahme wird geholt');
      expect(createSpeaker('de').label('cause')).toBe('Grund');
      expect(view('en', 'remedies')).toBe('What may help');
    }
  });

  it('let a region win over its language, and a later table over an earlier', () => {
    addWords({ language: 'de-AT', views: { remedies: 'Abhilfe in Österreich' } });
    addWords({ language: 'de', views: { remedies: 'Erste', evidence: 'Alles' } });
    addWords({ language: 'de', views: { remedies: 'Zweite' } });
    expect(view('de-AT', 'remedies')).toBe('Abhilfe in Österreich');
    expect(view('de-AT', 'evidence')).toBe('Alles');
    expect(view('de', 'remedies')).toBe('Zweite');
  });

  it('take a language that ringdown does not have, in part: the rest is English', () => {
    addWords({
      language: 'fr',
      views: { readout: (p, n) => `à ${n.hertz(p.frequencyHz)}` },
      modeKinds: { axial: { name: 'axial', meaning: 'Entre deux parois.' } },
    });
    const speaker = createSpeaker('fr-CA', plain);
    expect(speaker.view('readout', { frequencyHz: 43.9 })).toBe('à 43,9 Hz');
    expect(speaker.meaning('modeKinds', 'axial')).toBe('Entre deux parois.');
    expect(speaker.term('modeKinds', 'oblique')).toBe('oblique');
    expect(speaker.view('fetching')).toBe('Fetching the recording');
  });

  it('put a page’s own English also where a language falls back to English', () => {
    addWords({ language: 'en', views: { fetching: 'Loading' } });
    expect(view('en-GB', 'fetching')).toBe('Loading');
    expect(view('fr', 'fetching')).toBe('Loading');
  });

  it('say a whole language as a table of the page', () => {
    addWords(german);
    expect(view('de', 'fetching')).toBe('Aufnahme wird geholt');
    expect(createSpeaker('de').error({ code: 'no-such-code', params: {} })).toMatch(/^Etwas stimmt nicht/);
  });

  it('refuse what is no table with one sentence, and take nothing of it', () => {
    expect(refusal(null)).toMatch(/^“words” is not a table/);
    expect(refusal([])).toMatch(/^“words” is not a table/);
    expect(refusal({ views: {} })).toMatch(/^Words need a language.*“undefined” is none/);
    expect(refusal({ language: 'no tag', views: {} })).toMatch(/“no tag” is none/);
    expect(refusal({ language: '', views: {} })).toMatch(/^Words need a language/);
    expect(refusal({ language: 'de', view: {} })).toMatch(
      /no table of words called “view”; there are errors/,
    );
    expect(refusal({ language: 'de', views: 'x' })).toMatch(/^“views” is not a table/);
    const half = { views: { remedies: 'Maßnahmen', evidence: 7 } };
    expect(refusal({ language: 'de', ...half })).toMatch(
      /^“evidence” of the table “views” must be text, or a/,
    );
    expect(refusal({ language: 'de', modeKinds: { axial: 'axial' } })).toMatch(/a name and a meaning/);
    expect(refusal({ language: 'de', labels: { cause: () => 'x' } })).toMatch(/“cause”.*must be text\./);
    expect(refusal({ language: 'de', unknown: 3 })).toMatch(/“unknown”/);
    expect(view('de', 'remedies')).toBe('What may help');
  });

  it('tell on the console which codes say nothing, and take the others', () => {
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    addWords({ language: 'de', views: { remedied: 'Maßnahme', remedies: 'Maßnahmen' } });
    expect(warn.mock.calls).toHaveLength(1);
    expect(warn.mock.calls[0][0]).toContain('views.remedied.');
    expect(view('de', 'remedies')).toBe('Maßnahmen');
  });

  it('say what lies below where a page’s own sentence throws or gives no text, with one warning', () => {
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    addLanguage(german);
    addWords({
      language: 'de',
      views: {
        fetching: () => {
          throw new Error('broken');
        },
        empty: (() => undefined) as never,
      },
    });
    for (let k = 0; k < 3; k += 1) {
      expect(view('de', 'fetching')).toBe('Aufnahme wird geholt');
      expect(view('de', 'empty')).toBe('Noch keine Aufnahme.');
    }
    expect(warn.mock.calls.map(([text]) => text as string)).toEqual([
      expect.stringContaining('views.fetching'),
      expect.stringContaining('views.empty'),
    ]);
  });

  it('keep a table as it was when it was added', () => {
    const own = { language: 'de', views: { remedies: 'Maßnahmen' } };
    addWords(own);
    own.views.remedies = 'Anderes';
    expect(view('de', 'remedies')).toBe('Maßnahmen');
  });

  it('tell whoever listens, until they let go', () => {
    let heard = 0;
    const letGo = onWordsChange(() => (heard += 1));
    addLanguage(german);
    addWords({ language: 'de', labels: {} });
    letGo();
    addLanguage(german);
    expect(heard).toBe(2);
  });

  it('do not mind codes that every object has', () => {
    addWords(
      JSON.parse('{ "language": "de", "labels": { "__proto__": "x", "cause": "Grund" } }') as OwnWords,
    );
    expect(createSpeaker('de').label('cause')).toBe('Grund');
    expect(createSpeaker('de').label('toString')).toBe('toString');
  });

  it('are shared between copies of the library, whichever was there first', async () => {
    vi.resetModules();
    const copy = await import('../../src/words/index.js');
    expect(copy.createSpeaker).not.toBe(createSpeaker);
    copy.addLanguage(german);
    expect(view('de', 'fetching')).toBe('Aufnahme wird geholt');
  });
});
