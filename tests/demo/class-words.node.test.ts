import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeClass } from '../../scripts/make-class.mjs';
import * as engine from '../../src/engine.js';

type Words = Record<string, unknown>;
interface Formats {
  readonly number: (value: number, digits?: number) => string;
}

/** The words of both languages, with every function called on the figures of the lessons. */
describe('the words of the class', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-words-'));
  let spoken: Record<string, Map<string, string>>;

  /** Plain sentences of a table by their path. */
  function told(words: unknown, given: readonly unknown[], path = ''): [string, string][] {
    if (typeof words === 'string') return [[path, words]];
    if (typeof words === 'function') {
      const [name] = path.split('.').slice(-1);
      const call = words as (...all: unknown[]) => unknown;
      const [facts, n] = given as [unknown, Formats];
      const values: Record<string, unknown[]> = {
        because: [facts, n],
        tasks: [facts, n],
        airText: [21, 31.25, n],
        label: [0.3, n],
      };
      const plain = [2, 3, 4].map((value) => n.number(value));
      return told(call(...(values[name] ?? plain)), given, path);
    }
    return Object.entries(words as Words).flatMap(([key, inner]) => told(inner, given, `${path}.${key}`));
  }

  beforeAll(async () => {
    await makeClass({ folder: `${folder}/`, engine });
    const facts = JSON.parse(readFileSync(join(folder, 'class.json'), 'utf8')) as unknown;
    const { formats } = (await import('../../demo/class/dom.js')) as { formats: (tag: string) => Formats };
    const of = (words: Words, tag: string) => new Map(told({ ...words }, [facts, formats(tag)]));
    spoken = {
      en: of(await import('../../demo/class/words/en/index.js'), 'en'),
      de: of(await import('../../demo/class/words/de/index.js'), 'de'),
    };
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('say the same things in both languages, with as many questions, options and tasks', () => {
    expect([...spoken.en.keys()].length).toBeGreaterThan(180);
    expect([...spoken.de.keys()]).toEqual([...spoken.en.keys()]);
  });

  it('give the same figures with the same digits, with a point or a comma', () => {
    const figures = (text: string): string[] =>
      (text.match(/\d+(?:[.,]\d+)?/g) ?? []).map((one) => one.replace(',', '.'));
    for (const [path, english] of spoken.en) {
      const german = spoken.de.get(path)!;
      expect(figures(german).sort(), path).toEqual(figures(english).sort());
      expect(german, path).not.toMatch(/\d\.\d/);
      expect(german, path).not.toMatch(/undefined|NaN|[“”]\w|\b(?:the|and|of)\b/);
    }
  });
});
