/**
 * What the single files of figures leave to a second file beside them, which is fetched once it is asked for. In the
 * package's modules nothing is left to it, and nothing here is ever called.
 */
import { RingdownError } from '../signal/errors.js';

/** The second file: the modules that the first would import while it runs. */
export interface MoreFile {
  readonly modules: Readonly<Record<string, unknown>>;
}

let fetchFile: (() => Promise<MoreFile>) | null = null;
let name = '';
let whole = false;

/** Says how the second file is fetched, and what it is called in a sentence. */
export function setMore(fileName: string, make: () => Promise<MoreFile>): void {
  name = fileName;
  fetchFile = make;
  whole = false;
}

/** What it is called in a sentence. */
export const moreName = (): string => name;

/** Whether there is something left to be fetched. */
export const hasMore = (): boolean => fetchFile !== null && !whole;

/**
 * The second file; after it nothing is missing. One that failed is asked for again the next time.
 *
 * @throws RingdownError `more-missing`
 */
export async function more(): Promise<MoreFile> {
  try {
    if (!fetchFile) throw new Error('no file');
    const file = await fetchFile();
    whole = true;
    return file;
  } catch (thrown) {
    const detail = thrown instanceof Error ? thrown.message : String(thrown);
    throw new RingdownError('more-missing', { name, detail });
  }
}

/** A module that lies in the second file. The build writes this in the place of an import. */
export async function fromMore<T>(module: string): Promise<T> {
  return (await more()).modules[module] as T;
}
