/**
 * The one place that imports jsfive (untyped). Only what is used is declared; names that begin with an underscore are its
 * own internals, which is why its version is pinned.
 */
import { Unzlib } from 'fflate';
// @ts-expect-error jsfive comes without types.
import { File, Filters } from 'jsfive';

/** A header message of an object, by the number of its type. */
export interface Hdf5Message {
  get(name: 'type' | 'offset_to_message'): number;
}

export interface Hdf5Objects {
  readonly fh: ArrayBuffer;
  find_msg_type(type: number): Hdf5Message[];
  /** An attribute message at a place in the file. */
  unpack_attribute(offset: number): [name: string, value: unknown];
}

export interface Hdf5Dataset {
  readonly shape: readonly number[];
  readonly dtype: unknown;
  readonly value: ArrayLike<unknown>;
  readonly attrs: Readonly<Record<string, unknown>>;
}

export interface Hdf5File {
  readonly keys: readonly string[];
  readonly attrs: Readonly<Record<string, unknown>>;
  readonly _dataobjects: Hdf5Objects;
  get(name: string): Hdf5Dataset;
}

/**
 * What reading one file may cost, in bytes looked at or made: so many times its own, and so much beside. A file is a graph,
 * and a small one can lead its reader along the same path without end, or promise more than it holds. Impulse responses
 * that are packed to a twentieth, as zeros at their end let them be, stay below.
 */
const timesFile = 64;
const beside = 2 ** 18;
/** An element of a data set counts as the double that it becomes. */
const elementBytes = 8;

/** Of the file that is read now: reading is one piece, from `openHdf5` on. */
let left = 0;
/** Beside its bytes, what each stretch of the file costs while a chunk is made of it. */
let perStretch = 0;
let chunkBytes = 0;

function spend(bytes: number): void {
  left -= bytes;
  if (!(left >= 0)) throw new Error('it leads further than its own length allows');
}

const product = (sizes: readonly number[]): number => sizes.reduce((all, size) => all * size, 1);

/** Every way from one place of the file to another goes through `slice`. */
function metered(buffer: ArrayBuffer): ArrayBuffer {
  return Object.defineProperty(buffer, 'slice', {
    value: (from: number, to?: number): ArrayBuffer => {
      const part = ArrayBuffer.prototype.slice.call(buffer, from, to);
      spend(part.byteLength + perStretch + 1);
      return part;
    },
  });
}

/** Internals of the objects of a file that make something from a count which the file gives. */
interface Inner {
  readonly shape: readonly number[];
  readonly chunks: readonly number[] | null;
  _attr_value: (this: Inner, dtype: unknown, buffer: ArrayBuffer, count: number, offset: number) => unknown;
  _vlen_size_and_data: (
    this: Inner,
    buffer: ArrayBuffer,
    offset: number,
  ) => [number, ArrayBuffer | undefined];
  get_data: (this: Inner) => unknown;
}

function guard(inner: Inner): void {
  const { _attr_value: attribute, _vlen_size_and_data: lengthy, get_data: data } = inner;
  inner._attr_value = function (dtype, buffer, count, offset) {
    spend(elementBytes * count);
    return attribute.call(this, dtype, buffer, count, offset);
  };
  inner._vlen_size_and_data = function (buffer, offset) {
    const found = lengthy.call(this, buffer, offset);
    spend(found[1]?.byteLength ?? 0);
    return found;
  };
  inner.get_data = function () {
    spend(elementBytes * product(this.shape));
    const elements = this.chunks ? product(this.chunks) : 0;
    spend(elementBytes * elements);
    perStretch = elementBytes * elements;
    // A chunk may be followed by its checksum.
    chunkBytes = perStretch + 4;
    try {
      return data.call(this);
    } finally {
      perStretch = 0;
    }
  };
}

/** Packed chunks, unpacked no further than a chunk is long: a kilobyte can hold a megabyte of zeros. */
function unpacked(packed: ArrayBuffer): ArrayBuffer {
  const parts: Uint8Array[] = [];
  let length = 0;
  const stream = new Unzlib((part) => {
    length += part.length;
    if (length > chunkBytes) throw new Error('a packed chunk holds more than a chunk');
    parts.push(part);
  });
  const bytes = new Uint8Array(packed);
  // In small pieces, so that little is made before it is counted.
  for (let at = 0; at < bytes.length; at += 1024)
    stream.push(bytes.subarray(at, at + 1024), at + 1024 >= bytes.length);
  spend(length);
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all.buffer;
}

const deflate = 1;
(Filters as Map<number, (packed: ArrayBuffer) => ArrayBuffer>).set(deflate, unpacked);

let guarded = false;

/**
 * Throws strings and errors of its own where the bytes are not what it reads, or lead too far. One file at a time.
 *
 * @param bytes Kept, and given a meter of its own.
 */
export function openHdf5(bytes: ArrayBuffer): Hdf5File {
  left = timesFile * bytes.byteLength + beside;
  const file = new (File as new (bytes: ArrayBuffer) => Hdf5File)(metered(bytes));
  if (!guarded) guard(Object.getPrototypeOf(file._dataobjects) as Inner);
  guarded = true;
  return file;
}

export type OpenHdf5 = typeof openHdf5;
