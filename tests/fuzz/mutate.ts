import type { Rng } from '../../src/signal/index.js';

export const pick = (rng: Rng, count: number): number => Math.floor(rng.uniform() * count);
export const oneOf = <T>(rng: Rng, list: readonly T[]): T => list[pick(rng, list.length)];

/** Longer inputs than this only slow the search. */
export const mostBytes = 65_536;

/** Numbers at the edges of their types, where counts and sizes go wrong. */
const edges = [
  ...[0, 1, 2, 3, 7, 8, 15, 16, 31, 32, 63, 64, 127, 128, 255, 256, 257, 1023, 1024, 4095, 4096],
  ...[32767, 32768, 65535, 65536, 0x7fffff, 0x800000, 0x7fffffff, 0x80000000, 0xfffffffe, 0xffffffff],
];

type Mutation = (
  bytes: Uint8Array,
  rng: Rng,
  others: readonly Uint8Array[],
  words: readonly string[],
) => Uint8Array;

const encoder = new TextEncoder();

/** Half of all places lie near the start, where headers are. */
const place = (bytes: Uint8Array, rng: Rng): number =>
  pick(rng, rng.uniform() < 0.5 ? Math.min(bytes.length, 160) : bytes.length);

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(
    Math.min(
      mostBytes,
      parts.reduce((sum, { length }) => sum + length, 0),
    ),
  );
  let at = 0;
  for (const part of parts) {
    if (at + part.length > all.length) {
      all.set(part.subarray(0, all.length - at), at);
      break;
    }
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const mutations: readonly Mutation[] = [
  (bytes, rng) => {
    if (bytes.length > 0) bytes[place(bytes, rng)] ^= 1 << pick(rng, 8);
    return bytes;
  },
  (bytes, rng) => {
    if (bytes.length > 0) bytes[place(bytes, rng)] = pick(rng, 256);
    return bytes;
  },
  (bytes, rng) => {
    const width = oneOf(rng, [1, 2, 4, 8]);
    if (bytes.length < width) return bytes;
    const at = Math.min(place(bytes, rng), bytes.length - width);
    const value = oneOf(rng, edges);
    const bigEndian = rng.uniform() < 0.2;
    for (let k = 0; k < width; k++) {
      const byte = k < 4 ? Math.floor(value / 256 ** k) & 255 : rng.uniform() < 0.9 ? 0 : 255;
      bytes[at + (bigEndian ? width - 1 - k : k)] = byte;
    }
    return bytes;
  },
  (bytes, rng) => bytes.slice(0, pick(rng, bytes.length + 1)),
  (bytes, rng) => {
    const from = place(bytes, rng);
    const to = Math.min(bytes.length, from + pick(rng, 64));
    return joined(bytes.subarray(0, from), bytes.subarray(to));
  },
  (bytes, rng) => {
    const from = place(bytes, rng);
    const block = bytes.slice(from, from + 1 + pick(rng, 128));
    const at = place(bytes, rng);
    return joined(bytes.subarray(0, at), block, bytes.subarray(at));
  },
  (bytes, rng) => {
    const from = place(bytes, rng);
    const block = bytes.slice(from, from + 1 + pick(rng, 16));
    bytes.set(block.subarray(0, Math.max(0, bytes.length - place(bytes, rng))), 0);
    return bytes;
  },
  (bytes, rng, others) => {
    const other = oneOf(rng, others);
    return joined(bytes.subarray(0, place(bytes, rng)), other.subarray(place(other, rng)));
  },
  (bytes, rng, _others, words) => {
    if (words.length === 0) return bytes;
    const at = place(bytes, rng);
    const word = encoder.encode(oneOf(rng, words));
    return joined(bytes.subarray(0, at), word, bytes.subarray(rng.uniform() < 0.5 ? at : at + word.length));
  },
];

/** A copy with one to eight changes, small ones more often. */
export function mutated(
  bytes: Uint8Array,
  rng: Rng,
  others: readonly Uint8Array[],
  words: readonly string[],
): Uint8Array {
  let changed: Uint8Array = bytes.slice();
  for (let times = 1 + pick(rng, 1 + pick(rng, 8)); times > 0; times--)
    changed = oneOf(rng, mutations)(changed, rng, others, words);
  return changed.subarray(0, mostBytes);
}
