import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { createSpeaker, english } from '../../src/words/index.js';

const src = fileURLToPath(new URL('../../src/', import.meta.url));
const sources = readdirSync(src, { recursive: true })
  .map(String)
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ name, text: readFileSync(src + name, 'utf8') }));

/** Every literal that stands where a code of a refusal does. */
const thrown = sources.flatMap(({ name, text }) =>
  [
    /new RingdownError\(\s*'([a-z0-9-]+)'/g,
    /\brefusal\(\s*'([a-z0-9-]+)'/g,
    /\bwithin\(\s*'([a-z0-9-]+)'/g,
  ].flatMap((pattern) => [...text.matchAll(pattern)].map(([, code]) => ({ name, code }))),
);

const stages = sources.flatMap(({ name, text }) =>
  [...text.matchAll(/\bstage: '([a-z-]+)'/g)].map(([, code]) => ({ name, code })),
);

describe('the sentences', () => {
  it('are there for every code that is thrown anywhere in the sources', () => {
    expect(thrown.length).toBeGreaterThan(30);
    for (const { name, code } of thrown) expect(english.errors, `${code} of ${name}`).toHaveProperty([code]);
  });

  it('are there for every code that the sources build a refusal from otherwise', () => {
    // The command takes its codes from one table of its own; they are in the list of the test below.
    // A code held in a variable would escape the scan: each call must name its code or be one of these two passers-on.
    const indirect = sources.flatMap(({ name, text }) =>
      [...text.matchAll(/new RingdownError\(\s*(?!')([\w.]+)/g)].map(([, what]) => `${name}: ${what}`),
    );
    expect(indirect.sort()).toEqual(
      [
        'cli/node-io.ts: codes',
        'room/air.ts: code',
        'signal/error-codes.ts: code',
        'study/pool/lane.ts: data.code',
      ].sort(),
    );
  });

  it('are there for every code that stands beside parameters, be it of a refusal or of a note', () => {
    const literals = sources.flatMap(({ name, text }) =>
      [...text.matchAll(/\bcode: '([a-z0-9-]+)',\s*params\b/g)].map(([, code]) => ({ name, code })),
    );
    expect(literals.length).toBeGreaterThan(10);
    for (const { name, code } of literals)
      expect(Object.keys({ ...english.errors, ...english.notes }), `${code} of ${name}`).toContain(code);
  });

  it('are there for what the file system says', () => {
    const [{ text }] = sources.filter(({ name }) => name.endsWith('node-io.ts'));
    const codes = [...text.matchAll(/'(file-[a-z-]+)'/g)].map(([, code]) => code);
    expect(codes.length).toBeGreaterThan(4);
    for (const code of codes) expect(english.errors, code).toHaveProperty([code]);
  });

  it('name every stage that a job reports', () => {
    expect(stages.length).toBeGreaterThan(3);
    for (const { name, code } of stages) expect(english.stages, `${code} of ${name}`).toHaveProperty([code]);
  });

  it('never show a number that is not there as such, nor end without a stop', () => {
    const speaker = createSpeaker('en');
    for (const code of Object.keys(english.errors)) {
      const sentence = speaker.error({ code, params: {} });
      expect(sentence, code).not.toMatch(/undefined|NaN|\[object/);
      expect(sentence, code).toMatch(/[.!)]$/);
    }
  });
});
