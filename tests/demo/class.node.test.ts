import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeClass } from '../../scripts/make-class.mjs';
import * as engine from '../../src/engine.js';
import type { Diagnosis } from '../../src/diagnosis/index.js';
import { drain } from '../support/drain.js';

interface Figures {
  readonly walk: { firstHz: number; warmerHz: number };
  readonly kinds: {
    decays: { order: number[]; seconds: number }[];
    cubeAxial: number;
    cubeTangential: number;
    q16: { frequencyHz: number; seconds: number }[];
  };
  readonly places: { seatMiddle: number; left: number; right: number };
  readonly windows: { clickSeconds: number; shownSeconds: number };
  readonly impostors: { boostSeconds: number; dipHz: number };
  readonly remedies: {
    frequencyHz: number;
    beforeSeconds: number;
    targetSeconds: number;
    absorbedSeconds: number;
    cutDb: number;
    levelsDb: Record<string, { a: number; b: number }>;
  };
}

/** What the answers of the lessons say, held against handbook values and against what the engine reads in the recordings. */
describe('the figures of the class', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-class-'));
  let figures: Figures;

  beforeAll(async () => {
    await makeClass({ folder: `${folder}/`, engine });
    figures = JSON.parse(readFileSync(join(folder, 'class.json'), 'utf8')) as Figures;
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const recordingOf = (name: string) =>
    engine.openRecording(readFileSync(join(folder, `class-${name}.wav`)), { label: name });
  const read = (name: string): Diagnosis => {
    const params = { fromHz: 20, toHz: 200 };
    const recordings = [recordingOf(name)];
    const fit = drain(engine.fitResonances(recordings, { ...params, volumeCubicMetres: null }));
    return drain(engine.interpret(recordings, fit, { ...params, limit: 'audibility', room: null }));
  };
  const notesOf = (name: string): string[] =>
    drain(engine.examine(recordingOf(name))).notes.map(({ code }) => code);

  it('are those of Morse and Bolt 1944 for 5 x 4 x 3 m with 0.1 on all walls', () => {
    expect(figures.kinds.decays.map(({ seconds }) => Number(seconds.toFixed(3)))).toEqual([
      1.638, 1.559, 1.443, 1.306, 1.224, 1.179, 1.028,
    ]);
    expect(figures.kinds.cubeAxial).toBeCloseTo(1.5, 9);
    expect(figures.kinds.cubeTangential).toBeCloseTo(1.2, 9);
  });

  it('are those of Avis, Fazenda and Davies 2007 for a Q of 16: 1.1, 0.56 and 0.28 s at 32, 63 and 125 Hz', () => {
    for (const [k, seconds] of [1.1, 0.56, 0.28].entries())
      expect(figures.kinds.q16[k].seconds / seconds).toBeCloseTo(1, 1.9);
  });

  it('have a click fall 60 dB in 147 ms through a Hann window of 300 ms, as the engine draws it', () => {
    expect(figures.windows.clickSeconds).toBeCloseTo(0.147, 3);
    const click = new Float64Array(16000);
    click[4000] = 1;
    const grid = drain(
      engine.computeGrid(
        { ...engine.recordingFromSamples(click, 8000), onsetSeconds: 0.5 },
        {
          method: 'sliding',
          windowSeconds: 0.3,
          stepSeconds: 0.001,
          spanSeconds: 0.3,
          frequenciesHz: Float64Array.of(100, 101),
        },
      ),
    );
    const levels = [...grid.levelsDb].filter((_, k) => k % 2 === 0);
    const last = levels.findIndex((level) => level < Math.max(...levels) - 60);
    expect(grid.timesSeconds[last]).toBeGreaterThan(0.14);
    expect(grid.timesSeconds[last]).toBeLessThan(0.15);
  });

  it('have air of 25 °C raise a mode of 50 Hz by about 0.9 Hz over air of 15 °C', () => {
    expect(figures.walk.warmerHz).toBeGreaterThan(0.84);
    expect(figures.walk.warmerHz).toBeLessThan(0.94);
    expect(figures.walk.firstHz).toBeCloseTo(343.2 / 2 / 5.6, 2);
  });

  it('have 0.45 s fall 40 dB in 300 ms, a boost of 6 dB with a Q of 16 ring 0.99 s, a dip at 86 Hz', () => {
    expect(figures.windows.shownSeconds).toBeCloseTo(0.3, 9);
    expect(figures.impostors.boostSeconds).toBeCloseTo(0.99, 2);
    expect(figures.impostors.dipHz).toBeCloseTo(86, 0);
  });

  it('put the middle of the width on the node, and the side walls on opposite signs', () => {
    expect(figures.places.seatMiddle).toBeCloseTo(0, 9);
    expect(figures.places.left).toBeCloseTo(-figures.places.right, 9);
  });

  it('name as impostor what the engine finds in each recording', () => {
    expect(read('a').ridges.every(({ cause }) => cause === 'hum')).toBe(true);
    expect(read('b').ridges[0].frequencyHz).toBeCloseTo(figures.remedies.frequencyHz, 1);
    expect(read('c').ridges).toHaveLength(0);
    expect(notesOf('c')).toContain('boundary');
    const [boost] = read('d').ridges;
    expect(boost.frequencyHz).toBeCloseTo(50, 1);
    expect(boost.decayTimeSeconds! / figures.impostors.boostSeconds).toBeCloseTo(1, 1);
    expect(boost.cause).not.toBe('room-mode');
    expect(notesOf('e')).toContain('short');
    const [coupled] = read('f').ridges;
    expect(coupled.cause).toBe('coupled');
    expect(coupled.decayTimeSeconds).toBeCloseTo(1.6, 1);
  }, 60_000);

  it('say of each remedy what is read at both seats', () => {
    const { frequencyHz, beforeSeconds, targetSeconds, absorbedSeconds, levelsDb, cutDb } = figures.remedies;
    const decayNear = (name: string): number | null | undefined =>
      read(name).resonances.find((one) => Math.abs(one.frequencyHz - frequencyHz) < 0.5)?.decayTimeSeconds;
    for (const seat of ['a', 'b']) {
      expect(decayNear(`before-${seat}`)! / beforeSeconds, seat).toBeCloseTo(1, 1);
      expect(decayNear(`cut-${seat}`)! / targetSeconds, seat).toBeCloseTo(1, 1);
      expect(decayNear(`absorbed-${seat}`)! / absorbedSeconds, seat).toBeCloseTo(1, 1);
      expect(decayNear(`moved-${seat}`), seat).toBeUndefined();
    }
    expect(levelsDb.cut.a).toBeCloseTo(cutDb, 1);
    expect(levelsDb.cut.b).toBeCloseTo(cutDb, 1);
    expect(levelsDb.moved.a).toBeLessThan(-20);
    expect(levelsDb.moved.b).toBeLessThan(-6);
  }, 120_000);
});
