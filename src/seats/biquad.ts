/**
 * Second-order filters of the W3C Audio EQ Cookbook (Working Group Note, 2021; R. Bristow-Johnson). Coefficients are
 * b0, b1, b2, a1, a2 with a0 = 1, as everywhere in the engine.
 */
import { ln1000 } from '../resonance/poles.js';
import { RingdownError } from '../signal/errors.js';
import { filterForwards, responseAt, type Sections } from '../signal/filters.js';
import * as maths from '../signal/maths.js';

export type BandKind = 'peaking' | 'low-shelf' | 'high-shelf' | 'all-pass';

/** One filter of a source or of the whole system. `q` of a shelf is the Cookbook's Q, 0.7071 for no overshoot. */
export interface Band {
  readonly kind: BandKind;
  readonly frequencyHz: number;
  /** Of an all-pass: unused. */
  readonly gainDb: number;
  readonly q: number;
  /** What a matched cut was made for; absent of a band that was set freely. */
  readonly match?: BandMatch;
}

/** A mode as it rings, and how long it is to ring. */
export interface BandMatch {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
  readonly targetSeconds: number;
}

/** Wide enough for any processor of the trade, narrow enough to catch a slip of the pen. */
export const bandBoundsOf = {
  frequencyHz: [10, 1000],
  gainDb: [-24, 12],
  q: [0.1, 120],
} as const;

/** @throws RingdownError `band-value` with `name`, `value`, `from`, `to` */
export function checkedBand(band: Band, sampleRate: number): Band {
  for (const name of ['frequencyHz', 'gainDb', 'q'] as const) {
    const [from, most] = bandBoundsOf[name];
    const to = name === 'frequencyHz' ? Math.min(most, 0.45 * sampleRate) : most;
    if (name === 'gainDb' && band.kind === 'all-pass') continue;
    if (!(band[name] >= from && band[name] <= to))
      throw new RingdownError('band-value', { name, value: band[name], from, to });
  }
  return band;
}

function coefficients({ kind, frequencyHz, gainDb, q }: Band, sampleRate: number): number[] {
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  const cosine = maths.cos(w);
  const alpha = maths.sin(w) / (2 * q);
  const a = maths.power(10, gainDb / 40);
  if (kind === 'peaking')
    return [1 + alpha * a, -2 * cosine, 1 - alpha * a, 1 + alpha / a, -2 * cosine, 1 - alpha / a];
  if (kind === 'all-pass') return [1 - alpha, -2 * cosine, 1 + alpha, 1 + alpha, -2 * cosine, 1 - alpha];
  const root = 2 * Math.sqrt(a) * alpha;
  // The two shelves are each other's mirror image: the sign of the cosine.
  const c = kind === 'low-shelf' ? cosine : -cosine;
  const s = kind === 'low-shelf' ? 1 : -1;
  return [
    a * (a + 1 - (a - 1) * c + root),
    s * 2 * a * (a - 1 - (a + 1) * c),
    a * (a + 1 - (a - 1) * c - root),
    a + 1 + (a - 1) * c + root,
    s * -2 * (a - 1 + (a + 1) * c),
    a + 1 + (a - 1) * c - root,
  ];
}

/**
 * The sections of a chain of bands at a sample rate, five numbers each.
 *
 * @throws RingdownError those of `checkedBand`
 */
export function sectionsOf(bands: readonly Band[], sampleRate: number): Sections {
  const sections = new Float64Array(5 * bands.length);
  bands.forEach((band, k) => {
    const [b0, b1, b2, a0, a1, a2] = coefficients(checkedBand(band, sampleRate), sampleRate);
    sections.set([b0 / a0, b1 / a0, b2 / a0, a1 / a0, a2 / a0], 5 * k);
  });
  return sections;
}

/** Complex response of a chain at a frequency, as real and imaginary part. */
export function chainResponse(
  sections: Sections,
  frequencyHz: number,
  sampleRate: number,
): [real: number, imaginary: number] {
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  return responseAt(sections, maths.cos(w), -maths.sin(w));
}

/** Gain of a chain over a list of frequencies, dB. */
export function chainGainDb(
  sections: Sections,
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
): Float64Array {
  return Float64Array.from(
    frequenciesHz,
    (f) => 20 * maths.log10(Math.max(1e-15, maths.hypot(...chainResponse(sections, f, sampleRate)))),
  );
}

/** Filters forwards in time; the samples given are not changed. */
export function filterSamples(samples: Float64Array, sections: Sections): Float64Array {
  const out = samples.slice();
  filterForwards(out, sections);
  return out;
}

/** Q of a mode that rings at a frequency with a 60 dB decay time: pi f T / ln 1000. */
export const qOfDecay = (frequencyHz: number, decayTimeSeconds: number): number =>
  (Math.PI * frequencyHz * decayTimeSeconds) / ln1000;

/** 60 dB decay time of what a filter of this Q (of its poles) rings with by itself. */
export const decayOfQ = (frequencyHz: number, q: number): number => (q * ln1000) / (Math.PI * frequencyHz);

/**
 * How long a band rings by itself, s: its poles' 60 dB decay time. Of a peaking band the poles' Q is Q A, A the square root
 * of its gain: a boost rings longer than its Q says, a cut shorter.
 */
export function ownDecaySeconds({ kind, frequencyHz, gainDb, q }: Band): number {
  return decayOfQ(frequencyHz, kind === 'peaking' ? q * maths.power(10, gainDb / 40) : q);
}

/** A peaking band that takes one mode's decay to another, and what it was made for. */
export interface MatchedCut extends Band {
  readonly kind: 'peaking';
  readonly targetSeconds: number;
}

/**
 * The exact cut of one mode: a peaking band whose zeros lie on the mode's poles and whose poles decay in the target. Gain
 * 20 log10(target / decay), Q the root of the product of the two Qs, centred on the undamped frequency (W3C Audio EQ
 * Cookbook 2021; flattening the magnitude alone does not shorten the decay: Makivirta, Antsalo, Karjalainen and Valimaki,
 * JAES 2003).
 */
export function matchedCut(frequencyHz: number, decayTimeSeconds: number, targetSeconds: number): MatchedCut {
  return {
    kind: 'peaking',
    frequencyHz: maths.hypot(frequencyHz, ln1000 / decayTimeSeconds / (2 * Math.PI)),
    gainDb: 20 * maths.log10(targetSeconds / decayTimeSeconds),
    q: Math.sqrt(qOfDecay(frequencyHz, decayTimeSeconds) * qOfDecay(frequencyHz, targetSeconds)),
    targetSeconds,
  };
}
