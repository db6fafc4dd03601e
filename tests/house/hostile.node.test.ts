import { describe, expect, it } from 'vitest';
import { forTerminal } from '../../src/cli/node-io.js';
import { escapeXml, svgDocument, svgPen } from '../../src/draw/svg.js';
import { fileNameOf } from '../../src/sheet/figure-words.js';
import { csvText } from '../../src/study/tables.js';
import { Rng } from '../../src/signal/index.js';
import { createSpeaker, english } from '../../src/words/index.js';
import { hostileTexts } from '../support/hostile.js';

/** Each text, and random joins of pieces of them. */
function* texts(): Generator<string> {
  yield* hostileTexts;
  const rng = new Rng(7);
  const pick = (count: number): number => Math.floor(rng.uniform() * count);
  for (let k = 0; k < 2000; k++) {
    let text = '';
    for (let parts = 1 + pick(4); parts > 0; parts--) {
      const one = hostileTexts[pick(hostileTexts.length)];
      text += one.slice(pick(one.length), pick(one.length + 1));
    }
    yield text;
  }
}

/** The fields of one CSV row, by the grammar of RFC 4180 and nothing of ours. */
function fieldsOf(csv: string): string[][] {
  const rows: string[][] = [[]];
  let [field, quoted] = ['', false];
  for (let k = 0; k < csv.length; k++) {
    const sign = csv[k];
    if (quoted && sign === '"' && csv[k + 1] === '"') field += csv[++k];
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === ',' || sign === '\n')) {
      rows.at(-1)!.push(field);
      field = '';
      if (sign === '\n') rows.push([]);
    } else field += sign;
  }
  return rows.slice(0, -1);
}

describe('hostile text', () => {
  it('is no formula in a table, and one field of one row', () => {
    for (const text of texts()) {
      const rows = fieldsOf(csvText({ name: 'x', columns: ['a', 'b'], rows: [[text, 1]] }));
      expect(rows).toHaveLength(2);
      expect(rows[1]).toHaveLength(2);
      expect(rows[1][0]).not.toMatch(/^\s*[=+\-@＝＋－＠]|^[\t\r\n]/);
      expect(rows[1][0].replace(/^'/, '')).toBe(text.replace(/^'/, ''));
    }
    // A number below zero is a number.
    expect(csvText({ name: 'x', columns: ['a'], rows: [[-1.5]] })).toBe('a\n-1.5\n');
  });

  it('stays text in a vector document: no element, attribute or character of its own', () => {
    for (const text of texts()) {
      if (text === '') continue;
      const pen = svgPen();
      pen.text(text, 0, 0, { colour: text, size: 12 });
      const look = { background: text, fontFamily: text };
      const words = { title: text, description: text, origin: { label: text } };
      const svg = svgDocument(pen.content(), { cssWidth: 10, cssHeight: 10 }, look, words);
      const names = [...svg.matchAll(/<\/?([a-z]+)/gi)].map(([, name]) => name);
      expect(new Set(names)).toEqual(new Set(['svg', 'title', 'desc', 'metadata', 'rect', 'text']));
      expect(names).toHaveLength(11);
      // eslint-disable-next-line no-control-regex
      expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/);
      expect(svg).not.toMatch(/\p{Surrogate}/u);
      // Between quotes no quote, between tags no tag.
      expect(svg.replace(/<[a-z/][^<>]*>/gi, '')).not.toMatch(/[<>]/);
    }
    expect(escapeXml(`<&>"'`)).toBe('&lt;&amp;&gt;&quot;&apos;');
  });

  it('gives a file name of letters, digits and dashes', () => {
    for (const text of texts()) expect(fileNameOf(text, 'ridges', 'csv')).toMatch(/^[\p{L}\p{N}-]+\.csv$/u);
  });

  it('steers no terminal', () => {
    for (const text of texts())
      // eslint-disable-next-line no-control-regex
      expect(forTerminal(text)).not.toMatch(/[\u0000-\u0008\u000b-\u000c\u000e-\u001f\u007f-\u009f]/);
  });

  it('is short and plain in every sentence that quotes it', () => {
    const speaker = createSpeaker('en');
    for (const text of hostileTexts)
      for (const code of Object.keys(english.errors)) {
        const params = new Proxy(
          {},
          {
            get: () => text,
            ownKeys: () => [
              'label',
              'text',
              'name',
              'url',
              'detail',
              'where',
              'found',
              'codec',
              'path',
              'choices',
            ],
            getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true, value: text }),
          },
        );
        const sentence = speaker.error({ code, params });
        expect(sentence.length, code).toBeLessThan(2500);
        // eslint-disable-next-line no-control-regex
        expect(sentence, code).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
      }
  });
});
