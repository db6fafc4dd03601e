import * as maths from '../signal/maths.js';

/** One published finding as points; between them it is interpolated on the logarithm of frequency, which is ours. */
export interface PublishedCurve {
  readonly source: string;
  readonly points: readonly (readonly [frequencyHz: number, seconds: number])[];
}

/**
 * Decay times from which listeners notice a mode. All four are interpolated by us; none is extended beyond its points.
 * The third is from memory; the same study's test sounds (0.9 s at 32 Hz, 0.17 s at 200 Hz) bend at 63 Hz by an amount
 * we do not know, so no line is drawn between them. The fourth holds from 100 Hz up: at 50 Hz the same study noticed
 * nothing up to 2 s, against all others, so below 63 Hz the evidence disagrees and says so (`disagreesBelowHz`).
 */
export const publishedThresholds: readonly PublishedCurve[] = [
  {
    source: 'Stephenson, PhD thesis, University of Salford, 2012',
    // "About 0.2 s above 100 Hz, rising steeply below, to about 0.85 s at 32 Hz."
    points: [
      [32, 0.85],
      [100, 0.2],
      [250, 0.2],
    ],
  },
  {
    source: 'Avis, Fazenda and Davies, J. Audio Eng. Soc. 55:611 (2007): Q of 16',
    points: [
      [32, 1.1],
      [63, 0.56],
      [125, 0.28],
    ],
  },
  {
    source: 'Fazenda, Stephenson and Goldberg, J. Acoust. Soc. Am. 137:1088 (2015), music (from memory)',
    points: [
      [63, 0.51],
      [250, 0.12],
    ],
  },
  {
    source:
      'Karjalainen, Antsalo, Mäkivirta and Välimäki, AES 116th Convention (2004): 0.3 to 0.4 s down to 100 Hz',
    points: [
      [100, 0.4],
      [250, 0.4],
    ],
  },
];

/** Below this the studies contradict each other. */
export const disagreesBelowHz = 63;

/** Value of a curve at a frequency; null outside its points. */
export function curveAt({ points }: PublishedCurve, frequencyHz: number): number | null {
  for (let i = 1; i < points.length; i++) {
    const [[f0, t0], [f1, t1]] = [points[i - 1], points[i]];
    if (frequencyHz >= f0 && frequencyHz <= f1)
      return t0 + ((t1 - t0) * maths.log(frequencyHz / f0)) / maths.log(f1 / f0);
  }
  return null;
}
