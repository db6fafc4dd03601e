import { sectionsOf, type Band } from './biquad.js';

/** Numbers in files for machines: a point for decimals whatever the locale, enough digits to be exact. */
const digits = (value: number, count: number): string => String(Number(value.toPrecision(count)));

/** Bands with their coefficients, as plain data for JSON. a0 is 1; signs as in y = b0 x + b1 x1 + b2 x2 - a1 y1 - a2 y2. */
export interface BiquadDocument {
  readonly sample_rate_hz: number;
  readonly convention: string;
  readonly source: string;
  readonly bands: readonly {
    readonly kind: string;
    readonly frequency_hz: number;
    readonly gain_db: number;
    readonly q: number;
    readonly b: readonly [number, number, number];
    readonly a: readonly [number, number, number];
  }[];
}

/** @throws RingdownError `band-value` */
export function biquadDocument(bands: readonly Band[], sampleRate: number): BiquadDocument {
  const sections = sectionsOf(bands, sampleRate);
  return {
    sample_rate_hz: sampleRate,
    convention: 'y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]; a0 = 1',
    source: 'W3C Audio EQ Cookbook, 2021',
    bands: bands.map(({ kind, frequencyHz, gainDb, q }, k) => {
      const [b0, b1, b2, a1, a2] = sections.subarray(5 * k, 5 * k + 5);
      return { kind, frequency_hz: frequencyHz, gain_db: gainDb, q, b: [b0, b1, b2], a: [1, a1, a2] };
    }),
  };
}

/** One line per band: kind, frequency, gain, Q, coefficients, sample rate. */
export function biquadCsv(bands: readonly Band[], sampleRate: number): string {
  const sections = sectionsOf(bands, sampleRate);
  const lines = bands.map(({ kind, frequencyHz, gainDb, q }, k) =>
    [
      kind,
      digits(frequencyHz, 8),
      digits(gainDb, 6),
      digits(q, 6),
      ...[...sections.subarray(5 * k, 5 * k + 5)].map((value) => digits(value, 17)),
      digits(sampleRate, 8),
    ].join(','),
  );
  return ['kind,frequency_hz,gain_db,q,b0,b1,b2,a1,a2,sample_rate_hz', ...lines, ''].join('\n');
}

/**
 * The plain table of peaking bands that processors take by hand, frequency and Q as the Cookbook has them. The rate matters
 * little in the bass; it stands in a comment all the same.
 */
export function bandCsv(bands: readonly Band[], sampleRate: number): string {
  const lines = bands
    .filter(({ kind }) => kind === 'peaking')
    .map(({ frequencyHz, gainDb, q }) => [frequencyHz.toFixed(3), gainDb.toFixed(3), q.toFixed(3)].join(','));
  return [`# sample_rate_hz=${digits(sampleRate, 8)}`, 'frequency_hz,gain_db,q', ...lines, ''].join('\n');
}
