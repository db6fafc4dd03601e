/**
 * The JavaScript prototype of the benchmark, run beside the engine: how long each takes is only told as a ratio within one
 * process, warm. The prototype is not part of the project: RINGDOWN_BENCHMARK names its folder (../shared/benchmark by default).
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { makeCell, paramsOf, recordingsOf } from './cells.mjs';
import { median } from './score.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
export const benchmarkFolder = resolve(root, process.env.RINGDOWN_BENCHMARK ?? '../shared/benchmark');

/** Most of the prototype's time that a cell may take. */
export const ratioBounds = { 'R 55': 0.45, 'R 70': 0.45, 'V 70': 0.45, 'R5 55': 0.33, 'R5 70': 0.33 };

/** @returns {Promise<{ analyse: (irs: Float64Array[], sampleRate: number) => unknown[] } | null>} null where it is absent */
export async function loadPrototype() {
  const source = resolve(benchmarkFolder, 'prototype/modal_fast.mjs');
  if (!existsSync(source)) return null;
  const folder = mkdtempSync(resolve(tmpdir(), 'prototype-'));
  try {
    const outfile = resolve(folder, 'prototype.mjs');
    await build({
      entryPoints: [source],
      bundle: true,
      format: 'esm',
      platform: 'node',
      outfile,
      nodePaths: [`${root}node_modules`],
      logLevel: 'error',
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function cpuMs(run) {
  const begin = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(begin);
  return (user + system) / 1000;
}

/**
 * Medians over seeds, engine and prototype in turn, warm from ten runs that do not count.
 * @param {(recordings: object[], params: object) => unknown} fit drained
 * @param {(irs: Float64Array[], sampleRate: number) => unknown} analyse
 * @returns {{ cell: string, ms: number, prototypeMs: number, ratio: number, bound: number }[]}
 */
export function compareSpeed(fit, analyse, seeds = 8) {
  for (let seed = 21; seed < 29; seed++) {
    const { irs, arrivals, sampleRate } = makeCell('R', seed, 70);
    fit(recordingsOf({ irs, arrivals, sampleRate }), paramsOf('R'));
    analyse(irs, sampleRate);
  }
  return Object.entries(ratioBounds).map(([cell, bound]) => {
    const [kind, snr] = cell.split(' ');
    const engine = [];
    const prototype = [];
    for (let seed = -1; seed <= seeds; seed++) {
      const made = makeCell(kind, Math.abs(seed) + (seed < 1 ? seeds + 1 : 0), Number(snr));
      const ours = cpuMs(() => fit(recordingsOf(made), paramsOf(kind)));
      const theirs = cpuMs(() => analyse(made.irs, made.sampleRate));
      if (seed < 1) continue;
      engine.push(ours);
      prototype.push(theirs);
    }
    const [ms, prototypeMs] = [median(engine), median(prototype)];
    return { cell, ms, prototypeMs, ratio: ms / prototypeMs, bound };
  });
}
