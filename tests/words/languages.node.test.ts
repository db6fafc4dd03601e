import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { german } from '../../src/words/de/index.js';
import { createSpeaker, english, type Sentence, type Term, type Words } from '../../src/words/index.js';
import { sentenceTables, termTables, textTables } from '../../src/words/tables.js';
import { everyWay, figuresOf } from '../support/saying.js';

const tablesOf = (words: Words, names: ReadonlySet<string>) =>
  [...names].map((name) => [name, words[name as keyof Words]] as const);

/** Those of both languages; which codes are missing is told by a test of its own. */
const sentences = tablesOf(english, sentenceTables).flatMap(([table, entries]) =>
  Object.entries(entries as Record<string, Sentence>).map(([code, sentence]) => ({
    where: `${table}.${code}`,
    en: sentence,
    de: (german[table as keyof Words] as unknown as Record<string, Sentence>)[code] ?? sentence,
  })),
);

/** Every fixed text of a language by where it stands. */
function textsOf(words: Words): Map<string, string> {
  const texts = new Map<string, string>();
  for (const [table, entries] of tablesOf(words, textTables))
    for (const [code, text] of Object.entries(entries as Record<string, string>))
      texts.set(`${table}.${code}`, text);
  for (const [table, entries] of tablesOf(words, termTables))
    for (const [code, { name, meaning }] of Object.entries(entries as Record<string, Term>)) {
      texts.set(`${table}.${code}.name`, name);
      texts.set(`${table}.${code}.meaning`, meaning);
    }
  return texts;
}

/** Words that are the same in both languages. */
const alike = new Set([
  'axes.linear.name',
  ...['axial', 'tangential', 'oblique'].map((kind) => `modeKinds.${kind}.name`),
  ...[
    'choose-mode',
    'room-fit-mode',
    'cursor-x',
    'cursor-y',
    'key-oblique',
    'place-name',
    'construction-source-handbook',
    'construction-source-porous',
  ].map((code) => `views.${code}`),
]);

/** Longer words, so that units and names given do not count. */
const hasWords = (text: string): boolean =>
  /\p{L}{4,}/u.test(text.replace(/Studio|ringdown|[\w-]*(Hz|Db|Seconds)\b/g, ''));

describe('the languages', () => {
  it('have tables of sentences, terms and texts, and every table is one of these', () => {
    const named = [...sentenceTables, ...termTables, ...textTables, 'language', 'unknown'];
    expect(Object.keys(english).sort()).toEqual(named.sort());
    expect(Object.keys(german).sort()).toEqual(named.sort());
  });

  it('have the same codes: whoever adds an English sentence adds the German one to src/words/de', () => {
    for (const [table, entries] of tablesOf(
      english,
      new Set([...sentenceTables, ...termTables, ...textTables]),
    ))
      expect(Object.keys(german[table as keyof Words]).sort(), table).toEqual(Object.keys(entries).sort());
  });

  it('say each code in one place only: a later table hides none of an earlier', async () => {
    for (const language of ['en', 'de']) {
      const folder = new URL(`../../src/words/${language}/`, import.meta.url);
      for (const kind of ['errors', 'views']) {
        const seen = new Map<string, string>();
        const files = readdirSync(folder).filter((name) => name.startsWith(kind));
        expect(files.length, kind).toBeGreaterThan(2);
        for (const file of files) {
          const module = (await import(new URL(file, folder).href)) as Record<string, object>;
          for (const code of Object.values(module).flatMap((table) => Object.keys(table))) {
            expect(seen.get(code), `${language}: ${code} of ${file}`).toBeUndefined();
            seen.set(code, file);
          }
        }
      }
    }
  });

  it('read the same parameters in every sentence', () => {
    expect(sentences.length).toBeGreaterThan(500);
    const differing = sentences.flatMap(({ where, en, de }) => {
      const [one, other] = [en, de].map((sentence) => everyWay(sentence).read.join(' '));
      return one === other ? [] : [`${where}: “${one}” and “${other}”`];
    });
    expect([...new Set(differing)]).toEqual([]);
  });

  it('tell the same numbers and names with the same digits, whatever is given', () => {
    const differing = sentences.flatMap(({ where, en, de }) => {
      const others = everyWay(de).said;
      return everyWay(en).said.flatMap(({ told }, k) =>
        told === others[k].told ? [] : [`${where}: “${told}” and “${others[k].told}”`],
      );
    });
    expect([...new Set(differing)]).toEqual([]);
  });

  it('hold the same fixed figures in sentences and texts: claims do not change with the language', () => {
    const said = sentences.flatMap(({ where, en, de }) => {
      const others = everyWay(de).said;
      return everyWay(en).said.map(({ text }, k) => [where, text, others[k].text]);
    });
    const texts = textsOf(german);
    const all = [...said, ...[...textsOf(english)].map(([where, text]) => [where, text, texts.get(where)!])];
    expect(all.filter(([, one, other]) => figuresOf(one) !== figuresOf(other))).toEqual([]);
  });

  it('leave no English in the German', () => {
    const texts = textsOf(german);
    const all = [
      ...sentences.map(({ where, en, de }) => [where, everyWay(en).said[0].text, everyWay(de).said[0].text]),
      ...[...textsOf(english)].map(([where, text]) => [where, text, texts.get(where)!]),
    ];
    const same = all.filter(([, one, other]) => one === other && hasWords(one)).map(([where]) => where);
    expect(same.filter((where) => !alike.has(where))).toEqual([]);
    expect([...alike].filter((where) => !same.includes(where))).toEqual([]);
  });

  it('never show what is not there in German, and end as the English do', () => {
    const wrong = sentences.flatMap(({ where, en, de }) => {
      const before = everyWay(en, 'de').said;
      return everyWay(de, 'de').said.flatMap(({ text }, k) => {
        const holes = /undefined|NaN|\bnull\b|Infinity/;
        const bad =
          (holes.test(text) && !holes.test(before[k].text)) ||
          /\[object|\S {2}\S| [,;]/.test(text) ||
          /\.$/.test(text) !== /\.$/.test(before[k].text);
        return bad ? [`${where}: ${text}`] : [];
      });
    });
    expect([...new Set(wrong)]).toEqual([]);
  });

  it('set German in German quotation marks, each opened and closed', () => {
    const all = [
      ...sentences.flatMap(({ where, de }) => everyWay(de, 'de').said.map(({ text }) => [where, text])),
      ...textsOf(german),
    ];
    // Marks in their order, without what stands between them: pairs and nothing else.
    const wrong = all.filter(([, text]) => !/^(„“)*$/.test(text.replace(/[^„“”’']/g, '')));
    expect([...new Set(wrong)]).toEqual([]);
  });

  it('write the numbers of German with its comma', () => {
    const speaker = createSpeaker('de-DE', { space: ' ' });
    expect(speaker.view('readout', { frequencyHz: 43.87, timeSeconds: 0.456, levelDb: -12 })).toBe(
      '43,9 Hz, 0,46 s: -12 dB',
    );
  });
});
