/** The default grid, decimation included, against SciPy in the same call. `npm run bench -- grid` */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { computeGrid, defaultGridParams } from '../../dist/engine.js';

const runs = 20;
/** 0.3 Hz: as fine as ours at 20 Hz (0.29 Hz); and 2.93 Hz: as coarse as ours at 200 Hz, which no ridge at 20 Hz survives. */
const paddedLengths = [160000, 16384];

/** @param {number[]} values */
const median = (values) => values.slice().sort((a, b) => a - b)[values.length >> 1];

export function run() {
  const samples = Float64Array.from(
    { length: 96000 },
    (_, i) => Math.sin(i * i * 1e-4) * Math.exp(-i / 20000),
  );
  const times = [];
  for (let i = 0; i < runs + 5; i++) {
    const begin = performance.now();
    const job = computeGrid({ samples, sampleRate: 48000, onsetSeconds: 0.02 }, defaultGridParams);
    while (!job.next().done);
    times.push(performance.now() - begin);
  }
  const ours = median(times.slice(5));
  const script = fileURLToPath(new URL('../reference/grid_timing.py', import.meta.url));
  const python = process.env.RINGDOWN_PYTHON ?? '/usr/bin/python3';
  const theirs = JSON.parse(
    execFileSync(python, [script, String(runs), ...paddedLengths.map(String)], { encoding: 'utf8' }),
  );
  console.log(
    `grid, 101 slices x ${defaultGridParams.frequenciesHz.length} frequencies, 2 s at 48 kHz, median of ${runs} warm runs`,
  );
  console.log(`ringdown, decimation included   ${ours.toFixed(2)} ms`);
  for (const length of paddedLengths) {
    const milliseconds = theirs[length] * 1000;
    const spacing = (48000 / length).toFixed(2);
    console.log(
      `SciPy rfft, bins of ${spacing} Hz      ${milliseconds.toFixed(1)} ms   ratio ${(milliseconds / ours).toFixed(1)}`,
    );
  }
}
