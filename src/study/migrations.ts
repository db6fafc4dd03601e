import { RingdownError } from '../signal/errors.js';

export type Plain = Record<string, unknown>;

/** From a version to the one after it. */
export type Migrations = Readonly<Record<number, (document: Plain) => Plain>>;

/**
 * How documents of older versions become those of today. Version 0 was written before sources and seats had names, clocks
 * and a design.
 */
export const migrations: Migrations = {
  0: (document) => ({
    ...document,
    version: 1,
    design: null,
    recordings: (Array.isArray(document.recordings) ? (document.recordings as Plain[]) : []).map(
      (recording) => ({
        seatName: null,
        sourceName: null,
        timeReference: 'none',
        ...recording,
      }),
    ),
    results: document.results ?? [],
  }),
};

/**
 * Brings a document up to a version, step by step.
 *
 * @throws RingdownError `study-not-ours`, `study-newer`
 */
export function migrated(document: Plain, to: number, steps: Migrations = migrations): Plain {
  if (document.format !== 'ringdown-study' || !Number.isInteger(document.version))
    throw new RingdownError('study-not-ours');
  let now = document;
  while (now.version !== to) {
    const version = now.version as number;
    const step = Object.hasOwn(steps, version) ? steps[version] : undefined;
    if (version > to || !step) throw new RingdownError('study-newer', { version, known: to });
    now = step(now);
    if (now.version !== version + 1) throw new RingdownError('study-broken', { where: 'version' });
  }
  return now;
}
