/**
 * Four sources of one measured room, fitted one by one and together: how the single fits scatter about the joint one.
 * Needs the folder of real recordings (RINGDOWN_SHARED_DATA, ../shared/data by default).
 */
import { readFileSync } from 'node:fs';
import { scatterOf } from '../benchmark/scatter.mjs';
import { drain } from './modal.mjs';

const folder = process.env.RINGDOWN_SHARED_DATA ?? new URL('../../../shared/data', import.meta.url).pathname;

export async function run() {
  const { fitResonances, openRecording } = await import('../../dist/engine.js');
  const params = { fromHz: 20, toHz: 200, volumeCubicMetres: 9.7 * 5.5 * 2.7 };
  const fitOf = (recordings) => drain(fitResonances(recordings, params)).resonances;
  const recordings = [1, 2, 3, 4].map((k) =>
    openRecording(
      new Uint8Array(readFileSync(`${folder}/r3vival-9.70x5.50x2.70/r3vival_abs000_SBG${k}_M50.wav`)),
    ),
  );
  const rows = scatterOf(
    fitOf(recordings),
    recordings.map((one) => fitOf([one])),
    40,
    120,
  );
  console.log('source | single fit: Hz, s | joint fit: Hz, s | z of frequency and decay');
  for (const row of rows)
    console.log(
      `${row.recording} | ${row.frequencyHz.toFixed(2)} ± ${row.frequencySdHz.toFixed(2)}, ${row.decaySeconds.toFixed(2)} ± ${row.decaySdSeconds.toFixed(2)} | ` +
        (row.jointHz === null
          ? 'none near'
          : `${row.jointHz.toFixed(2)}, ${row.jointSeconds.toFixed(2)} | ${row.zFrequency.toFixed(1)} ${row.zDecay.toFixed(1)}`),
    );
  const share = (key) => (rows.filter((row) => Math.abs(row[key]) < 2).length / rows.length).toFixed(2);
  console.log(`within two standard deviations: frequency ${share('zFrequency')}, decay ${share('zDecay')}`);
  return rows;
}
