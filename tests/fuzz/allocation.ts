/**
 * Counts the bytes of every typed array and buffer that is made from now on, by standing in for their constructors. A size
 * in a header that is believed before it is checked shows here as a number, whether or not the machine has the memory.
 *
 * Imported before what is to be counted.
 */
let counted = 0;

const names = [
  ...['Int8Array', 'Uint8Array', 'Uint8ClampedArray', 'Int16Array', 'Uint16Array', 'Int32Array'],
  ...['Uint32Array', 'Float32Array', 'Float64Array', 'BigInt64Array', 'BigUint64Array'],
];

type Maker = new (...args: unknown[]) => { readonly byteLength: number };
const globals = globalThis as unknown as Record<string, Maker>;

/** More than this at once is no size that a reader may ask for, whatever the input says. */
const mostAtOnce = 2 ** 28;

/** Counted before anything is made, so that a bomb is named and not set off. */
export class TooMuch extends Error {
  constructor(readonly bytes: number) {
    super(`an array of ${bytes} bytes`);
    this.name = 'TooMuch';
  }
}

for (const name of [...names, 'ArrayBuffer']) {
  const original = globals[name];
  const each = 'BYTES_PER_ELEMENT' in original ? Number(original.BYTES_PER_ELEMENT) : 1;
  const standIn: Maker = new Proxy(original, {
    construct(target, args: unknown[], newTarget) {
      const [first] = args;
      if (typeof first === 'number' && first * each > mostAtOnce) throw new TooMuch(first * each);
      const made = Reflect.construct(target, args, newTarget) as { readonly byteLength: number };
      // A view of a buffer allocates nothing.
      if (!(first instanceof ArrayBuffer)) counted += made.byteLength;
      return made;
    },
  });
  globals[name] = standIn;
  // So that `map`, `slice` and the like, which ask the species, are counted too.
  (original.prototype as { constructor: Maker }).constructor = standIn;
}

/** Bytes since the last call. */
export function countedBytes(): number {
  const since = counted;
  counted = 0;
  return since;
}
