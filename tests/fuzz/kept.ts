import { existsSync, readdirSync, readFileSync } from 'node:fs';

export const keptFolder = 'tests/fuzz/kept';

/** Inputs that once broke a reader, or took long to find: they are tried first, and in every test run. */
export function readKept(reader: string): Uint8Array[] {
  const folder = `${keptFolder}/${reader}`;
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .sort()
    .map((file) => new Uint8Array(readFileSync(`${folder}/${file}`)));
}
