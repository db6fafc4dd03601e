/**
 * Long arrays go to a worker piece by piece: copied whole, a recording of ten seconds at 96 kHz holds the page up for 20 ms
 * of computing, and several times that on a busy machine.
 */
type Numbers = Float64Array | Float32Array | Uint8Array;

/** Stands in a message for an array that went before it. */
interface Stand {
  readonly pieceOf: number;
}

export interface PieceMessage {
  readonly array: number;
  /** The constructor and length of the whole. */
  readonly kind: 'Float64Array' | 'Float32Array' | 'Uint8Array';
  readonly length: number;
  readonly offset: number;
  readonly part: Numbers;
}

/** Bytes that are copied at once; a shorter array goes with its message. */
export const pieceBytes = 1 << 20;

const kinds = { Float64Array, Float32Array, Uint8Array };

const kindOf = (value: unknown): PieceMessage['kind'] | null => {
  for (const [name, kind] of Object.entries(kinds))
    if (value instanceof kind) return name as PieceMessage['kind'];
  return null;
};

const isPlain = (value: object): boolean => {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
};

/** The same value with other things in the place of some; what has none of them is not copied. */
function replaced(value: unknown, put: (value: object) => unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const other = put(value);
  if (other !== value) return other;
  if (Array.isArray(value)) {
    const list = value.map((one) => replaced(one, put));
    return list.some((one, k) => one !== value[k]) ? list : value;
  }
  if (!isPlain(value)) return value;
  const entries = Object.entries(value).map(([key, one]) => [key, replaced(one, put)] as const);
  return entries.some(([key, one]) => one !== (value as Record<string, unknown>)[key])
    ? Object.fromEntries(entries)
    : value;
}

/** A message's parameters without their long arrays, and the pieces of those, made one at a time. */
export function inPieces(params: unknown): { params: unknown; pieces: Generator<PieceMessage> } {
  const long = new Map<object, number>();
  const without = replaced(params, (value) => {
    if (kindOf(value) === null || (value as Numbers).byteLength <= pieceBytes) return value;
    if (!long.has(value)) long.set(value, long.size);
    return { pieceOf: long.get(value)! } satisfies Stand;
  });
  function* pieces(): Generator<PieceMessage> {
    for (const [whole, array] of long) {
      const values = whole as Numbers;
      const { length } = values;
      const step = pieceBytes / values.BYTES_PER_ELEMENT;
      for (let offset = 0; offset < length; offset += step)
        yield { array, kind: kindOf(values)!, length, offset, part: values.slice(offset, offset + step) };
    }
  }
  return { params: without, pieces: pieces() };
}

/** On the other side: the arrays of one message, as they come. */
export class Gathered {
  readonly #arrays: Numbers[] = [];

  add({ array, kind, length, offset, part }: PieceMessage): void {
    const whole = (this.#arrays[array] ??= new kinds[kind](length));
    whole.set(part, offset);
  }

  /** The parameters whole again. */
  into(params: unknown): unknown {
    return replaced(params, (value) => ('pieceOf' in value ? this.#arrays[(value as Stand).pieceOf] : value));
  }
}
