/** The cells of the modal benchmark: which synthetic recordings, which seeds, and what volume a fit of them is told. */
import { makeRoom, makeSet } from './synth.mjs';

/** @typedef {import('./synth.mjs').Benchmark} Benchmark */
/** @typedef {{ kind: string, from: number, seeds: number }} Row seeds from `from` on */

/** Five seats: eight seeds would decide too little. */
const seedsOf = (/** @type {string} */ kind, /** @type {number} */ most) =>
  kind === 'R5' ? Math.round(1.2 * most) : most;

/** Sides (m), and by how much all decay times are longer than in set R. */
const heldRooms = {
  H1: { sides: [4.6, 3.4, 2.4], decayScale: 1 },
  H2: { sides: [6.2, 4.5, 3], decayScale: 1.4 },
  H3: { sides: [7.9, 5.3, 2.9], decayScale: 1 },
};
const densityRooms = {
  D25: { sides: [3.6, 2.8, 2.5], decayScale: 1 },
  D25v: { sides: [3.6, 2.8, 2.5], decayScale: 1.8 },
  D66: { sides: [5.6, 4.2, 2.8], decayScale: 1 },
  D66v: { sides: [5.6, 4.2, 2.8], decayScale: 1.8 },
  D150: { sides: [8.2, 6, 3.1], decayScale: 1 },
  D150v: { sides: [8.2, 6, 3.1], decayScale: 1.8 },
};
/** @type {Record<string, { sides: number[], decayScale: number }>} */
const rooms = { ...heldRooms, ...densityRooms };
const volumeOf = (/** @type {number[]} */ sides) => sides.reduce((product, side) => product * side, 1);

/** Volume for the modal density: the room's own; none for sets that are no room. m3. @type {Record<string, number>} */
export const volumes = {
  ...{ S: 0, P: 0, R: 58.7, V: 58.7, R5: 58.7 },
  ...Object.fromEntries(Object.entries(rooms).map(([name, { sides }]) => [name, volumeOf(sides)])),
};

/** No constant was chosen by seeds from here on. */
export const firstHeldSeed = 401;

/** @returns {Benchmark} */
export const makeCell = (
  /** @type {string} */ kind,
  /** @type {number} */ seed,
  /** @type {number} */ snr,
) => (rooms[kind] ? makeRoom(seed, { snr, ...rooms[kind] }) : makeSet(kind, seed, snr));

/** @param {Pick<Benchmark, 'irs' | 'arrivals' | 'sampleRate'>} made */
export const recordingsOf = ({ irs, arrivals, sampleRate }) =>
  irs.map((samples, k) => ({ samples, sampleRate, onsetSeconds: arrivals[k] / sampleRate }));

/** What a fit of a cell is asked. */
export const paramsOf = (/** @type {string} */ kind) => ({
  fromHz: 15,
  toHz: 205,
  volumeCubicMetres: volumes[kind],
});

/**
 * @param {{ kinds: readonly string[], seeds: number, from: number, held: boolean, density: boolean }} asked
 * @returns {Row[]}
 */
export function rowsOf({ kinds, seeds, from, held, density }) {
  const row = (/** @type {string} */ kind, /** @type {number} */ first) => ({
    kind,
    from: first,
    seeds: seedsOf(kind, seeds),
  });
  return [
    ...kinds.map((kind) => row(kind, from)),
    // Five seats are slow to synthesise: what is held out is of one seat.
    ...(held
      ? [...kinds.filter((kind) => kind !== 'R5'), ...Object.keys(heldRooms)].map((kind) =>
          row(kind, firstHeldSeed),
        )
      : []),
    ...(density ? Object.keys(densityRooms).map((kind) => row(kind, 201)) : []),
  ];
}
