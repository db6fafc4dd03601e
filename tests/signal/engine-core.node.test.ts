import { describe, expect, it } from 'vitest';
import {
  computeGrid,
  decodeWav,
  drain,
  examine,
  fitResonances,
  logFrequencies,
  recordingFromAudio,
} from '../../src/engine-core.js';
import { fitResonances as ofWhole } from '../../src/engine.js';
import { roomWav } from '../support/packed.js';

describe('the core of the engine', () => {
  it('turns a WAV file into grid and resonances, with the very functions of the whole engine', () => {
    const recording = recordingFromAudio(decodeWav(roomWav()), '', { label: 'desk' });
    expect(drain(examine(recording)).notes.map(({ code }) => code)).not.toContain('silent');
    const grid = drain(
      computeGrid(recording, {
        ...{ method: 'sliding', windowSeconds: 0.3, stepSeconds: 0.02, spanSeconds: 1 },
        frequenciesHz: logFrequencies(20, 200, 100),
      }),
    );
    expect(grid.levelsDb.length).toBeGreaterThan(1000);
    expect(fitResonances).toBe(ofWhole);
    const { resonances } = drain(
      fitResonances([recording], { fromHz: 20, toHz: 120, volumeCubicMetres: null }),
    );
    // 5.6 x 3.9 x 2.7 m: c/2L of the width, 343.2 / 7.8 (Rayleigh).
    expect(resonances.some(({ frequencyHz }) => Math.abs(frequencyHz - 44) < 0.5)).toBe(true);
  });
});
