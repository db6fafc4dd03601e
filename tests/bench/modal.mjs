/**
 * The table of the modal benchmark: sets S, P, R, V, R5 at 40, 55 and 70 dB against truth and Cramer-Rao bound.
 *   npm run bench -- modal [sets=S,P,R,V,R5] [snr=40,55,70] [seeds=20]
 */
import { makeSet } from '../benchmark/synth.mjs';
import { estimatesOf, median, readTruth, score, together } from '../benchmark/score.mjs';

/** Volume for the modal density: the room's own; none for sets that are no room. m3. */
export const volumes = { S: 0, P: 0, R: 58.7, V: 58.7, R5: 58.7 };

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
  const kinds = option(args, 'sets', 'S,P,R,V,R5').split(',');
  const levels = option(args, 'snr', '40,55,70').split(',').map(Number);
  const most = Number(option(args, 'seeds', '20'));
  const from = Number(option(args, 'from', '1'));
  const rows = [];
  console.log(
    'set snr | id/IR recall | zf zT out | rms f, T, bias T | reported strong confident wrong phantom | coverage f T | width f T | ms median p95',
  );
  for (const kind of kinds)
    for (const snr of levels) {
      const scores = [];
      const times = [];
      for (let seed = from; seed < from + most; seed++) {
        const modes = truth.get(`${kind} ${snr} ${seed}`);
        if (!modes) break;
        const recordings = recordingsOf(makeSet(kind, seed, snr));
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
      const n = (value, digits = 2) => value.toFixed(digits);
      console.log(
        `${kind.padEnd(2)} ${snr} | ${n(cell.identifiable, 1)} ${n(cell.recall, 3)} | ${n(cell.zf)} ${n(cell.zT)} ${cell.outliers}/${cell.judged} | ` +
          `${n(cell.rmsF, 3)} Hz ${n(100 * cell.rmsT, 1)} % ${n(100 * cell.biasT, 1)} % | ${n(cell.reported, 1)} ${n(cell.strong, 1)} ${n(cell.confident, 1)} ${n(cell.wrong)} ${n(cell.phantoms)} | ` +
          `${n(cell.coverageF)} ${n(cell.coverageT)} | ${n(cell.widthF)} ${n(cell.widthT)} | ${n(cell.ms, 0)} ${n(p95, 0)}`,
      );
    }
  return rows;
}
