import { describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/signal/index.js';
import { Rng } from '../../src/signal/random.js';
import { createPair, defaultPair, statesOf } from '../../src/study/pair.js';
import { createPool } from '../../src/study/pool.js';
import {
  bandAfter,
  freshRidges,
  matchedBand,
  optionsOf,
  remedyReading,
  ridgesAfter,
} from '../../src/study/remedy-readings.js';
import { createStudy } from '../../src/study/study.js';
import { createSystem } from '../../src/study/system.js';
import type { RecordingOptions } from '../../src/study/types.js';
import { addMode } from '../support/signals.js';

const sampleRate = 8000;

/** One mode of 50 Hz over quick ones, 50 ms after the start, over noise 75 dB down. */
function file(slowSeconds: number, gain = 1): ArrayBuffer {
  const samples = new Float64Array(2.2 * sampleRate);
  const random = new Rng(3);
  for (let n = 0; n < samples.length; n++) samples[n] = 6e-5 * (2 * random.uniform() - 1);
  for (const f of [31.8, 66, 82.3, 95.2, 110]) addMode(samples, sampleRate, f, 0.18, 0.08, 0.05);
  addMode(samples, sampleRate, 50, slowSeconds, 0.25, 0.05);
  for (let n = 0; n < samples.length; n++) samples[n] *= gain;
  return encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' }).slice().buffer;
}

async function made(files: readonly (readonly [number, RecordingOptions, number?])[]) {
  const pool = createPool({ routes: [], cacheLimit: 200 });
  const study = createStudy({ pool });
  for (const [slow, options, gain] of files) await study.addRecording(file(slow, gain), options);
  await study.settled();
  const system = createSystem(study, { pool });
  system.need('decays');
  let changes = 0;
  const pair = createPair(study, system, () => changes++, { pool });
  const settled = async () => {
    await system.settled();
    while (pair.snapshot.progress) await new Promise((resolve) => setTimeout(resolve, 20));
    return pair.snapshot;
  };
  return { study, system, pair, settled, changes: () => changes };
}

describe('one recording with a matched cut', () => {
  it('falls from 1.4 s to 0.50 s within 3 % as the engine measures it, with no other recording there', async () => {
    const { study, system, pair, settled } = await made([[1.4, { label: 'desk' }]]);
    await settled();
    expect(defaultPair(study.snapshot, system.snapshot), 'nothing to compare yet').toBeNull();
    const [ridge] = system.snapshot.before!.diagnosis.ridges;
    expect(ridge.decayTimeSeconds! / 1.4).toBeCloseTo(1, 2);
    const { frequencyHz, decayTimeSeconds } = ridge;
    const match = { frequencyHz, decayTimeSeconds: decayTimeSeconds!, targetSeconds: 0.5 };
    system.setBands([matchedBand(match)]);
    const { levels, choice, first, second } = await settled();
    expect(choice).toEqual({ first: { of: 'before' }, second: { of: 'designed' } });
    expect(levels).toBe('same');
    expect(second!.grid!.timesSeconds).toEqual(first!.grid!.timesSeconds);
    const after = second!.diagnosis!.resonances.filter((one) => Math.abs(one.frequencyHz - 50) < 0.5);
    expect(after.length).toBe(1);
    expect(Math.abs(after[0].decayTimeSeconds! / 0.5 - 1)).toBeLessThan(0.03);
    const [row] = ridgesAfter(system.snapshot)!;
    expect(row.expectedSeconds! / 0.5).toBeCloseTo(1, 2);
    expect(row.expectedDb).toBeCloseTo(-8.94, 1);
    expect(row.fitted!.afterSeconds! / 0.5).toBeCloseTo(1, 1);
    expect(row.fitted!.sure).toBe(true);
    expect(freshRidges(system.snapshot)).toEqual([]);
    const reading = remedyReading(system.snapshot)!;
    expect(Math.min(...reading.gainDb)).toBeCloseTo(-8.94, 1);
    expect(reading.headroomDb).toBeGreaterThan(3);
    expect(optionsOf(system.snapshot, 0).map(({ kind }) => kind)).toContain('leave');
    pair.dispose();
  }, 60_000);

  it('is refused as a boost in one code, and what it may be is said', async () => {
    const { system, settled } = await made([[1.4, { label: 'desk' }]]);
    system.setBands([{ kind: 'peaking', frequencyHz: 90, gainDb: 0, q: 1 }]);
    await settled();
    const { band, refused } = bandAfter(system.snapshot, 0, { gainDb: 9 });
    expect(refused).not.toBeNull();
    expect(band.gainDb).toBeLessThanOrEqual(4);
  }, 60_000);
});

describe('two stages beside each other', () => {
  it('are before and after of one seat where the recordings say so, on one grid, levels relative', async () => {
    const { pair, settled, changes } = await made([
      [1.4, { label: 'desk before', seatName: 'desk', stage: 'before' }],
      [0.6, { label: 'desk after', seatName: 'desk', stage: 'after' }, 0.2],
    ]);
    const { choice, levels, first, second, seats } = await settled();
    expect(choice).toEqual({ first: { of: 'before' }, second: { of: 'after' } });
    expect(levels).toBe('relative');
    expect(seats).toEqual([0]);
    expect(first!.grid!.frequenciesHz).toEqual(second!.grid!.frequenciesHz);
    expect(first!.diagnosis!.ridges[0].decayTimeSeconds!).toBeGreaterThan(1.3);
    expect(first!.hashes.length).toBe(1);
    expect(first!.hashes).not.toEqual(second!.hashes);
    const seen = changes();
    pair.choose({});
    expect(changes(), 'nothing new, nothing told').toBe(seen);
    pair.choose({ first: { of: 'recording', index: 1 }, second: { of: 'recording', index: 0 } });
    const turned = await settled();
    expect(turned.first!.recording!.label).toBe('desk after');
    expect(turned.seat).toBeNull();
    expect(turned.first!.diagnosis!.ridges.length).toBeGreaterThan(0);
    pair.choose({ first: { of: 'recording', index: 7 } });
    expect((await settled()).choice!.first, 'what is not there gives way').toEqual({ of: 'before' });
  }, 60_000);

  it('are two recordings where no stage is told, and calibrated levels where both are', async () => {
    const { system, settled } = await made([
      [1.4, { label: 'one', fullScaleDb: 110 }],
      [0.6, { label: 'two', fullScaleDb: 112 }],
    ]);
    const { choice, levels } = await settled();
    expect(choice).toEqual({
      first: { of: 'recording', index: 0 },
      second: { of: 'recording', index: 1 },
    });
    expect(levels).toBe('calibrated');
    expect(statesOf(system.snapshot)).toEqual(['before']);
  }, 60_000);

  it('are recordings where several sources share no clock', async () => {
    const { system, settled } = await made([
      [1.4, { label: 'A', seatName: 'desk', sourceName: 'A' }],
      [0.6, { label: 'B', seatName: 'desk', sourceName: 'B' }],
    ]);
    const { choice } = await settled();
    expect(statesOf(system.snapshot)).toEqual([]);
    expect(choice!.first.of).toBe('recording');
  }, 60_000);
});
