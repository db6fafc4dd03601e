/**
 * The table of the modal benchmark: sets S, P, R, V, R5 at 40, 55 and 70 dB against truth and Cramer-Rao bound.
 *   npm run bench -- modal [sets=S,P,R,V,R5] [snr=40,55,70] [seeds=20] [from=1] [held] [density]
 * `held` adds three other rooms whose seeds, from 401 on, no constant was chosen by; `density` three sizes of room at two
 * levels of damping, seeds from 201 on, on which the intervals' share for unresolved neighbours is checked. Truth and bound
 * are of the published table where it has the seed, else computed.
 */
import { boundOf } from '../benchmark/bound.mjs';
import { missed, prototypeFigures } from '../benchmark/gate.mjs';
import { makeRoom, makeSet } from '../benchmark/synth.mjs';
import { estimatesOf, median, readTruth, score, together } from '../benchmark/score.mjs';

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

export const makeCell = (
  /** @type {string} */ kind,
  /** @type {number} */ seed,
  /** @type {number} */ snr,
) => (rooms[kind] ? makeRoom(seed, { snr, ...rooms[kind] }) : makeSet(kind, seed, snr));

export function drain(job) {
  for (;;) {
    const next = job.next();
    if (next.done) return next.value;
  }
}

export const recordingsOf = ({ irs, arrivals, sampleRate }) =>
  irs.map((samples, k) => ({ samples, sampleRate, onsetSeconds: arrivals[k] / sampleRate }));

const option = (args, name, fallback) =>
  args.find((arg) => arg.startsWith(`${name}=`))?.slice(name.length + 1) ?? fallback;

/** @param {string[]} args */
export async function run(args, engine) {
  const { fitResonances } = engine ?? (await import('../../dist/engine.js'));
  const truth = readTruth();
  const kinds = option(args, 'sets', 'S,P,R,V,R5').split(',').filter(Boolean);
  const levels = option(args, 'snr', '40,55,70').split(',').map(Number);
  const most = Number(option(args, 'seeds', '20'));
  const first = Number(option(args, 'from', '1'));
  const cells = kinds.map((kind) => ({ kind, from: first }));
  if (args.includes('held')) cells.push(...Object.keys(heldRooms).map((kind) => ({ kind, from: 401 })));
  if (args.includes('density')) cells.push(...Object.keys(densityRooms).map((kind) => ({ kind, from: 201 })));
  const rows = [];
  console.log(
    'set snr | id/IR recall | zf zT out | rms f, T, bias T | reported strong confident wrong phantom | coverage f T | width f T | ms median p95 | gate | prototype: recall zf zT wrong confident',
  );
  for (const { kind, from } of cells)
    for (const snr of levels) {
      const scores = [];
      const times = [];
      for (let seed = from; seed < from + most; seed++) {
        const made = makeCell(kind, seed, snr);
        const modes = truth.get(`${kind} ${snr} ${seed}`) ?? boundOf(made);
        const recordings = recordingsOf(made);
        const begin = process.cpuUsage();
        const fit = drain(
          fitResonances(recordings, { fromHz: 15, toHz: 205, volumeCubicMetres: volumes[kind] }),
        );
        const { user, system } = process.cpuUsage(begin);
        times.push((user + system) / 1000);
        scores.push(score(estimatesOf(fit.resonances), modes));
      }
      const cell = { kind, snr, ...together(scores), ms: median(times), times };
      rows.push(cell);
      const p95 = [...times].sort((a, b) => a - b)[Math.floor(0.95 * (times.length - 1))];
      const misses = missed(cell);
      const n = (value, digits = 2) => value.toFixed(digits);
      console.log(
        `${kind.padEnd(2)} ${snr} | ${n(cell.identifiable, 1)} ${n(cell.recall, 3)} | ${n(cell.zf)} ${n(cell.zT)} ${cell.outliers}/${cell.judged} | ` +
          `${n(cell.rmsF, 3)} Hz ${n(100 * cell.rmsT, 1)} % ${n(100 * cell.biasT, 1)} % | ${n(cell.reported, 1)} ${n(cell.strong, 1)} ${n(cell.confident, 1)} ${n(cell.wrong)} ${n(cell.phantoms)} | ` +
          `${n(cell.coverageF)} ${n(cell.coverageT)} | ${n(cell.widthF)} ${n(cell.widthT)} | ${n(cell.ms, 0)} ${n(p95, 0)} | ${misses.length === 0 ? 'kept' : `missed: ${misses.join(' ')}`} | ${prototypeFigures[`${kind} ${snr}`]?.map((v) => v ?? '-').join(' ') ?? '-'}`,
      );
    }
  return rows;
}
