/**
 * Time of the whole diagnosis of one 2 s recording at 48 kHz, warm, opening of the file and grid included, against one
 * real-time pass of it.
 *   npm run bench -- diagnose [runs=11]
 */
import { performance } from 'node:perf_hooks';
import { makeSet } from '../benchmark/synth.mjs';
import { median } from '../benchmark/score.mjs';
import { drain } from './modal.mjs';

const limitSeconds = 0.4;

/** @param {string[]} args */
export async function run(args) {
  const {
    computeGrid,
    defaultDiagnosisParams,
    defaultGridParams,
    diagnose,
    encodeWav,
    openRecording,
    createRoom,
    parseRoomSize,
  } = await import('../../dist/engine.js');
  const runs = Number(args.find((arg) => arg.startsWith('runs='))?.slice(5) ?? 11);
  const room = createRoom({ size: parseRoomSize('5.3x4.1x2.7') });
  const rows = [];
  for (const snr of [55, 70]) {
    const { irs, sampleRate } = makeSet('R', 2, snr);
    const channels = [irs[0].subarray(0, 2 * sampleRate)];
    const bytes = encodeWav({ channels, sampleRate, encoding: 'float-32' });
    const times = [];
    for (let k = 0; k < runs + 3; k++) {
      const begin = performance.now();
      const recording = openRecording(bytes, { label: 'seat' });
      drain(computeGrid(recording, defaultGridParams));
      drain(diagnose([recording], { ...defaultDiagnosisParams, room }));
      if (k >= 3) times.push((performance.now() - begin) / 1000);
    }
    const seconds = median(times);
    rows.push({ snr, seconds, limitSeconds });
    console.log(
      `2 s at 48 kHz, room at ${snr} dB: opened, grid and diagnosis ${seconds.toFixed(3)} s, ${(2 / seconds).toFixed(1)} times real time (median of ${runs}; at most ${limitSeconds} s wanted)`,
    );
  }
  return rows;
}
