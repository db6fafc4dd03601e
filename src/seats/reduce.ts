import { decimate } from '../signal/decimate.js';
import type { Recording } from '../signal/types.js';

/** A low-frequency copy is exact up to here, Hz: above every frequency that a fit of the bass looks at. */
export const reducedToHz = 250;
/**
 * Samples of a copy per second, about. The more, the shorter the filter's own ringing: 3.5 ms, so that it is over before the
 * fit begins 6 ms after the onset. At 1000 it was taken for a resonance of the source.
 */
const copyRate = 1500;

/** The bass of one recording at about 1500 samples per second, on its file's clock. */
export function reducedCopy(recording: Recording): Recording {
  if (recording.reduced || recording.sampleRate < 2 * copyRate) return recording;
  const { samples, sampleRate } = recording;
  const low = decimate(samples, sampleRate, copyRate / 4, reducedToHz);
  const startSeconds = low.firstIndex / low.sampleRate;
  return {
    ...recording,
    samples: low.samples,
    sampleRate: low.sampleRate,
    onsetSeconds: recording.onsetSeconds - startSeconds,
    reduced: { sampleRate, seconds: samples.length / sampleRate, startSeconds, toHz: reducedToHz },
  };
}
