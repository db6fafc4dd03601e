import { describe, expect, it } from 'vitest';
import { readKept } from './kept.js';
import { shares } from './names.js';
import { outcomeOf } from './outcome.js';
import { readers } from './readers.js';

const all = await readers();

describe('inputs that once broke a reader', () => {
  it('have a reader each, which has its part in the search', () => {
    expect(all.map(({ name }) => name).sort()).toEqual(Object.keys(shares).sort());
    expect(Object.values(shares).reduce((sum, share) => sum + share)).toBeCloseTo(1, 9);
  });

  it.each(all.map((reader) => [reader.name, reader] as const))(
    'are answered by %s with a result or with one sentence',
    (name, reader) => {
      for (const bytes of [...reader.seeds, ...readKept(name)]) {
        const { complaint, what } = outcomeOf(reader, bytes);
        expect(complaint, `${name}: ${what}`).toBeNull();
      }
    },
  );
});
