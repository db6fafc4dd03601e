import { expect, it } from 'vitest';
import { bandDecays } from '../../src/decay/index.js';
import { openRecording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithScipy, runPython } from '../support/python.js';
import { hasRecordings, recordingBytes, recordingNames, recordingPath } from '../support/shared-data.js';

interface Reading {
  centre: number;
  t20: number | null;
  t30: number | null;
}

describeWithScipy('band decay times of real recordings', () => {
  it.skipIf(!hasRecordings)('agree with SciPy within 3 %, where the curve has one slope', () => {
    const names = [recordingNames.frl, ...recordingNames.corners];
    const recordings = names.map((name) => openRecording(recordingBytes(name)));
    const args = names.flatMap((name, i) => [recordingPath(name), String(recordings[i].onsetSeconds)]);
    const references = runPython('band_decays.py', ...args) as Reading[][];
    let compared = 0;
    recordings.forEach((recording, i) => {
      for (const band of drain(bandDecays(recording, { fromHz: 40, toHz: 250 }))) {
        const reference = references[i].find(({ centre }) => Math.abs(centre / band.centreHz - 1) < 0.01);
        // A bent curve has no one decay time: what is read depends on where it is cut.
        if (!reference || band.twoSlopes) continue;
        for (const key of ['t20', 't30'] as const) {
          const [ours, theirs] = [band[key].seconds, reference[key]];
          if (ours === null || theirs === null) continue;
          expect(Math.abs(ours / theirs - 1), `${names[i]} ${band.centreHz} ${key}`).toBeLessThan(0.03);
          compared++;
        }
      }
    });
    expect(compared).toBeGreaterThan(40);
  });
});
