import { expect, it } from 'vitest';
import { bandDecays, neededRangesDb } from '../../src/decay/index.js';
import { openRecording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithScipy, runPython } from '../support/python.js';
import { hasRecordings, recordingBytes, recordingNames, recordingPath } from '../support/shared-data.js';

interface Reading {
  centre: number;
  t20: number | null;
  t30: number | null;
  noise?: number;
}

/** Floors that differ by more were taken from an end that still rings: where such a decay is cut is a guess, dB. */
const sameNoiseDb = 2;
/** With so much more range than is needed, the floor moves nothing. */
const spareDb = 10;

/** Every recording there is with decays to be read; the hand clap has none. */
const names = [
  recordingNames.frl,
  recordingNames.livingRoom,
  recordingNames.coupled,
  recordingNames.office,
  recordingNames.sevenChannels,
  ...recordingNames.corners,
  ...recordingNames.absorbentCorners,
];

describeWithScipy('band decay times of real recordings', () => {
  for (const [direction, least] of [
    ['reversed', 110],
    ['forward', 55],
  ] as const)
    it.skipIf(!hasRecordings)(
      `agree with SciPy within 3 %, where the curve has one slope, filtered ${direction}`,
      () => {
        const recordings = names.map((name) => openRecording(recordingBytes(name)));
        const args = names.flatMap((name, i) => {
          const { channel, onsetSeconds } = recordings[i];
          return [recordingPath(name), String(channel), String(onsetSeconds)];
        });
        const references = runPython('band_decays.py', direction, ...args) as Reading[][];
        let compared = 0;
        let unlike = 0;
        const off: string[] = [];
        recordings.forEach((recording, i) => {
          // Whether a curve bends is seen best with the filter that rings least.
          const bends = drain(bandDecays(recording, { fromHz: 40, toHz: 250 })).map((band) => band.twoSlopes);
          for (const [k, band] of drain(
            bandDecays(recording, { fromHz: 40, toHz: 250, direction }),
          ).entries()) {
            const reference = references[i].find(({ centre }) => Math.abs(centre / band.centreHz - 1) < 0.01);
            // A bent curve has no one decay time: what is read depends on where it is cut.
            if (!reference || bends[k]) continue;
            for (const key of ['t20', 't30'] as const) {
              const [ours, theirs] = [band[key].seconds, reference[key]];
              if (ours === null || theirs === null) continue;
              const near = band.rangeDb < neededRangesDb[key] + spareDb;
              if (near && Math.abs(band.noiseDbFs - reference.noise!) > sameNoiseDb) {
                unlike++;
                continue;
              }
              if (Math.abs(ours / theirs - 1) >= 0.03)
                off.push(`${names[i]} ${band.centreHz.toFixed(0)} Hz ${key}: ${ours} and ${theirs}`);
              compared++;
            }
          }
        });
        expect(off).toEqual([]);
        expect(unlike).toBeLessThan(compared / 20);

        expect(compared).toBeGreaterThan(least);
      },
    );
});
