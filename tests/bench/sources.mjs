/**
 * The optimiser of several sources: 30 seeded rooms with 4 sources and 9 seats, against an exhaustive grid for 2 sources,
 * and the time of 8 sources and 16 seats. `npm run bench -- sources [rooms=30]`
 */
import { performance } from 'node:perf_hooks';
import { sourceMatrix, sourceRoom } from '../support/source-rooms.mjs';
import { median } from '../benchmark/score.mjs';
import { drain } from './modal.mjs';

/** @param {string[]} args */
export async function run(args, engine) {
  const e = engine ?? (await import('../../dist/engine.js'));
  const rooms = Number(args.find((arg) => arg.startsWith('rooms='))?.slice(6) ?? 30);
  const frequenciesHz = e.logFrequencies(20, 120, 24);
  const n = (value, digits = 2) => value.toFixed(digits).padStart(6);
  console.log(
    'room  alike dB2  proposal  lower by | output dB | worst hang s before, after | within 3 dB before, after | s',
  );
  const lower = [];
  const worse = [];
  for (let seed = 1; seed <= rooms; seed++) {
    const { matrix, ridges } = sourceMatrix(e, sourceRoom(e, seed), frequenciesHz);
    const begin = performance.now();
    const { alike, score, trims } = drain(e.optimiseSources(matrix, { ridges, seed }));
    const seconds = (performance.now() - begin) / 1000;
    const spread = (list) =>
      e.seatSpread(
        e.sumSources(
          matrix,
          list.map((trim) => ({ ...e.plainSetting, ...trim })),
        ),
      );
    const before = spread(trims.map(() => e.plainSetting));
    const after = spread(trims);
    // Measured again by the plain sum, not by what the optimiser says of itself.
    lower.push(1 - after.meanSpatialVariance / before.meanSpatialVariance);
    if (
      after.meanSpatialVariance > before.meanSpatialVariance ||
      score.worstHangSeconds > alike.worstHangSeconds
    )
      worse.push(seed);
    console.log(
      `${String(seed).padStart(4)}  ${n(before.meanSpatialVariance)}     ${n(after.meanSpatialVariance)}    ${n(100 * lower.at(-1), 0)} %  | ${n(after.meanOutputLevelDb - before.meanOutputLevelDb, 1)}    | ${n(alike.worstHangSeconds)} ${n(score.worstHangSeconds)}              | ${n(100 * before.within3Db, 0)} % ${n(100 * after.within3Db, 0)} %         | ${n(seconds, 1)}`,
    );
  }
  console.log(
    `mean spatial variance lower by: median ${n(100 * median(lower), 1)} %, least ${n(100 * Math.min(...lower), 1)} %, worse than all alike in ${worse.length} of ${rooms}`,
  );

  const ratios = [];
  for (let seed = 1; seed <= 10; seed++) {
    const { matrix } = sourceMatrix(e, sourceRoom(e, seed, 2), frequenciesHz);
    const { score } = drain(e.optimiseSources(matrix, { seed, bounds: { leastLevelDb: -40 } }));
    let least = Infinity;
    for (const inverted of [false, true])
      for (let delay = -0.02; delay <= 0.02 + 1e-9; delay += 0.0002)
        for (let gain = -6; gain <= 6; gain += 0.5) {
          const settings = [
            { ...e.plainSetting, gainDb: Math.min(0, gain), delaySeconds: Math.max(0, delay) },
            { ...e.plainSetting, gainDb: Math.min(0, -gain), delaySeconds: Math.max(0, -delay), inverted },
          ];
          least = Math.min(least, e.seatSpread(e.sumSources(matrix, settings)).meanSpatialVariance);
        }
    ratios.push(score.meanSpatialVariance / least);
  }
  console.log(
    `2 sources, 9 seats, 10 rooms: proposal over exhaustive grid (0.5 dB, 0.2 ms): ${n(Math.min(...ratios), 4)} to ${n(Math.max(...ratios), 4)}`,
  );

  const { matrix, ridges } = sourceMatrix(e, sourceRoom(e, 77, 8, 16), frequenciesHz);
  const begin = performance.now();
  const cpu = process.cpuUsage();
  const big = drain(e.optimiseSources(matrix, { ridges }));
  const wall = (performance.now() - begin) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  // The wall clock counts what else the machine does; one worker of a page computes this on one core.
  console.log(
    `8 sources, 16 seats: ${n(wall, 1)} s, of which ${n((user + system) / 1e6, 1)} s on a core (bound: 10 s); ${big.evaluations} combinations, ${n(big.alike.meanSpatialVariance)} to ${n(big.score.meanSpatialVariance)} dB2`,
  );
}
