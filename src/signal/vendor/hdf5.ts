/**
 * The one place that imports jsfive (untyped). Only what is used is declared; names that begin with an underscore are its
 * own internals, which is why its version is pinned.
 */
// @ts-expect-error jsfive comes without types.
import { File } from 'jsfive';

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

/** Throws strings and errors of its own where the bytes are not what it reads. */
export const openHdf5 = (bytes: ArrayBuffer): Hdf5File =>
  new (File as new (bytes: ArrayBuffer) => Hdf5File)(bytes);

export type OpenHdf5 = typeof openHdf5;
