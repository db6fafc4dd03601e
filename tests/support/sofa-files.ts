import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as hdf5 from 'h5wasm/node';

/** AES69 files written by the HDF5 library itself (compiled C, through h5wasm), so that our reader meets another's work. */
export interface SofaContent {
  readonly attributes: Readonly<Record<string, string>>;
  readonly variables: Readonly<
    Record<
      string,
      {
        readonly shape: readonly number[];
        readonly data: readonly number[] | Float64Array;
        readonly attributes?: Readonly<Record<string, string>>;
        readonly chunks?: readonly number[];
      }
    >
  >;
  /** `latest` puts many attributes into dense storage and new kinds of chunk indices; `v108` is what AES69 writers use. */
  readonly libver?: 'latest' | 'v108';
}

export const singleRoom: Readonly<Record<string, string>> = {
  Conventions: 'SOFA',
  Version: '2.1',
  SOFAConventions: 'SingleRoomSRIR',
  SOFAConventionsVersion: '1.0',
  DataType: 'FIR',
  RoomType: 'shoebox',
  Title: 'Quillmarsh live room',
  Organization: 'Radio Quillmarsh',
  License: 'none',
  APIName: 'none',
  APIVersion: '0',
  AuthorContact: 'nobody',
  DateCreated: '2026-01-01 00:00:00',
  DateModified: '2026-01-01 00:00:00',
};

export async function sofaFile({ attributes, variables, libver = 'v108' }: SofaContent): Promise<Uint8Array> {
  await hdf5.ready;
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-sofa-'));
  const path = join(folder, 'file.sofa');
  try {
    const file = new hdf5.File(path, 'w', { libver });
    for (const [name, value] of Object.entries(attributes)) file.create_attribute(name, value);
    for (const [name, { shape, data, attributes: own = {}, chunks }] of Object.entries(variables)) {
      const dataset = file.create_dataset({
        name,
        data: Float64Array.from(data),
        shape: [...shape],
        dtype: '<d',
        ...(chunks && { chunks: [...chunks], compression: 'gzip', compression_opts: 4 }),
      });
      for (const [key, value] of Object.entries(own)) dataset.create_attribute(key, value);
    }
    file.flush();
    file.close();
    return new Uint8Array(readFileSync(path));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
