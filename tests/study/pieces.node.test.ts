import { describe, expect, it } from 'vitest';
import { Rng } from '../../src/signal/random.js';
import { Gathered, inPieces, pieceBytes } from '../../src/study/pool/pieces.js';

const random = new Rng(7);
const long = Float64Array.from({ length: 300_001 }, () => random.uniform());
const bytes = Uint8Array.from({ length: 2 * pieceBytes + 5 }, (_, k) => k % 251);

/** Compared as bytes: a comparison number by number takes half a minute. */
const same = (one: Float64Array | Float32Array | Uint8Array, other: typeof one): boolean =>
  one.constructor === other.constructor &&
  Buffer.from(one.buffer, one.byteOffset, one.byteLength).equals(
    Buffer.from(other.buffer, other.byteOffset, other.byteLength),
  );

/** What a worker makes of it: every message is copied on its way. */
function sent(params: unknown): { arrived: unknown; parts: number[]; rest: unknown } {
  const { params: rest, pieces } = inPieces(params);
  const gathered = new Gathered();
  const parts: number[] = [];
  for (const piece of pieces) {
    parts.push(piece.part.byteLength);
    gathered.add(structuredClone(piece));
  }
  return { arrived: gathered.into(structuredClone(rest)), parts, rest };
}

describe('parameters of a job in pieces', () => {
  it('arrive whole, and no piece is longer than its bound', () => {
    const recording = { label: 'a', samples: long, notes: [{ code: 'dc', params: {} }], seat: null };
    const params = { recordings: [recording, { ...recording, label: 'b' }], bytes, fit: { toHz: 200 } };
    const { arrived, parts, rest } = sent(params);
    const { recordings, ...others } = arrived as typeof params;
    expect(same(others.bytes, bytes)).toBe(true);
    expect(others.fit).toEqual(params.fit);
    expect(Math.max(...parts)).toBe(pieceBytes);
    // The same samples of two recordings go once.
    expect(parts.reduce((sum, part) => sum + part, 0)).toBe(long.byteLength + bytes.byteLength);
    expect(JSON.stringify(rest).length).toBeLessThan(400);
    const [first, second] = recordings;
    expect(same(first.samples, long)).toBe(true);
    expect(second.samples).toBe(first.samples);
    expect({ ...second, samples: null }).toEqual({ ...recording, label: 'b', samples: null });
  });

  it('that are short go as they are', () => {
    const params = { samples: long.slice(0, 1000), list: [1, 2, { a: null }], of: new Float32Array(9) };
    const { arrived, parts, rest } = sent(params);
    expect(rest).toBe(params);
    expect(parts).toEqual([]);
    expect(arrived).toEqual(params);
  });

  it('keep the kind of an array that is a part of a longer one, and send that part alone', () => {
    const view = new Float32Array(new ArrayBuffer(4 * pieceBytes), pieceBytes, pieceBytes / 2).fill(0.5);
    const { arrived, parts } = sent([view]);
    expect(same((arrived as [Float32Array])[0], view)).toBe(true);
    expect(parts).toEqual([pieceBytes, pieceBytes]);
  });
});
