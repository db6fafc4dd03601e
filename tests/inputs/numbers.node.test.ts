import { expect, it } from 'vitest';
import type { Diagnosis } from '../../src/diagnosis/index.js';
import { anyCase, complaintOf, everythingOf } from '../support/any-room.js';

/** Typed arrays by their bytes, so that even the sign of a zero counts. */
const bytesOf = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    ArrayBuffer.isView(inner)
      ? Buffer.from(inner.buffer, inner.byteOffset, inner.byteLength).toString('base64')
      : Object.is(inner, -0)
        ? '-0'
        : inner,
  );

it(
  'are numbers, all of them, for any room, rate, length and scale from 1e-12 to 1e12',
  { timeout: 120_000 },
  () => {
    let ridges = 0;
    for (let seed = 0; seed < 8; seed++) {
      const everything = everythingOf(anyCase(seed));
      expect(complaintOf(everything), `case ${seed}`).toBeNull();
      const { diagnosis } = everything;
      if (typeof diagnosis === 'object') ridges += (diagnosis as Diagnosis).ridges.length;
    }
    expect(ridges).toBeGreaterThan(0);
  },
);

it('are the same bytes for the same input', { timeout: 60_000 }, () => {
  for (const seed of [3, 10])
    expect(bytesOf(everythingOf(anyCase(seed)))).toBe(bytesOf(everythingOf(anyCase(seed))));
});
