/**
 * Modes of boxes and of rooms given by a plan: time, and convergence against the formula and against FreeFEM.
 *   npm run bench -- room
 */
import { readFileSync } from 'node:fs';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import { fileURLToPath } from 'node:url';
import { performance } from 'node:perf_hooks';

const speed = 343.2;
const waveNumber = (/** @type {number} */ hz) => (2 * Math.PI * hz) / speed;
const median = (/** @type {number[]} */ values) => values.sort((a, b) => a - b)[values.length >> 1];

/** Sixty modes of an L of 60 m3 from nothing, in a thread of its own as a page's worker has it. */
if (!isMainThread && workerData?.corners) {
  const { createPlan, createRoom, parseCorners, roomModes } = await import('../../dist/engine.js');
  const cpu = process.cpuUsage();
  const begin = performance.now();
  const room = createRoom({
    plan: createPlan(parseCorners(workerData.corners), 2.35),
    speedOfSoundMetresPerSecond: speed,
  });
  const modes = roomModes(room, workerData.toHz);
  const { user, system } = process.cpuUsage(cpu);
  const ms = performance.now() - begin;
  parentPort?.postMessage({ count: modes.length, ms, cpuMs: (user + system) / 1000 });
}

export async function run() {
  const engine = await import('../../dist/engine.js');
  const { boxModes, createPlan, parseCorners, planVolume, solveOn, boxPlan } = engine;
  const drain = (/** @type {Generator} */ job) => {
    for (;;) {
      const step = job.next();
      if (step.done) return step.value;
    }
  };
  const size = { lengthMetres: 5, widthMetres: 4, heightMetres: 3 };
  for (let i = 0; i < 20; i++) boxModes(size, speed, 300);
  const times = Array.from({ length: 50 }, () => {
    const begin = performance.now();
    boxModes(size, speed, 300);
    return performance.now() - begin;
  });
  console.log(
    `box of 60 m3: ${boxModes(size, speed, 300).length} modes to 300 Hz in ${median(times).toFixed(2)} ms (bound 5 ms)`,
  );

  const corners = '0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5';
  const volume = planVolume(createPlan(parseCorners(corners), 2.35));
  const runs = [];
  for (let i = 0; i < 5; i++)
    runs.push(
      await new Promise((done, failed) => {
        const worker = new Worker(fileURLToPath(import.meta.url), { workerData: { corners, toHz: 180 } });
        worker.once('message', done).once('error', failed);
      }),
    );
  const best = runs.map(({ ms }) => ms).sort((a, b) => a - b);
  const cpu = median(runs.map(({ cpuMs }) => cpuMs));
  console.log(
    `L of ${volume.toFixed(1)} m3 in a fresh worker: ${runs[0].count} modes to 180 Hz in ${best[2].toFixed(0)} ms (median of 5, ${best[0].toFixed(0)} to ${best[4].toFixed(0)}; ${cpu.toFixed(0)} ms of processor time; bound 2000 ms)`,
  );

  const reference = JSON.parse(readFileSync(new URL('../reference/plans.json', import.meta.url), 'utf8'));
  const exactBox = boxModes({ ...size, heightMetres: 0.1 }, speed, 220).map(
    ({ frequencyHz }) => waveNumber(frequencyHz) ** 2,
  );
  const cases = [
    ['box 5 x 4 m, the formula', boxPlan(5, 4, 3), [0, ...exactBox]],
    ...Object.entries(reference.plans).map(([name, plan]) => [
      `${name}, FreeFEM`,
      createPlan(parseCorners(plan.corners), 2.4),
      plan.waveNumbersSquared,
    ]),
  ];
  console.log('\nconvergence: worst and mean error of the frequencies up to 200 Hz');
  for (const [name, plan, exact] of cases) {
    let before = null;
    for (const fine of [1.4, 1, 0.7, 0.5]) {
      const begin = performance.now();
      const { mesh, shapes } = drain(solveOn(plan, fine / waveNumber(200), waveNumber(200)));
      const ms = performance.now() - begin;
      const errors = shapes
        .slice(1)
        .map(({ waveNumberSquared }, i) => Math.abs(Math.sqrt(waveNumberSquared / exact[i + 1]) - 1));
      const worst = Math.max(...errors);
      const mean = errors.reduce((sum, value) => sum + value, 0) / errors.length;
      const order = before ? Math.log(before.worst / worst) / Math.log(before.fine / fine) : null;
      console.log(
        `${String(name).padEnd(26)} triangles ${String(mesh.triangles.length / 6).padStart(5)} of ${(fine / waveNumber(200)).toFixed(2)} m  worst ${(100 * worst).toFixed(4)} %  mean ${(100 * mean).toFixed(4)} %${order === null ? '' : `  order ${order.toFixed(1)}`}  ${ms.toFixed(0)} ms`,
      );
      before = { worst, fine };
    }
  }
}
