/** Second-order filters of the W3C Audio EQ Cookbook (2021), written here again so that nothing is tested with itself. */

function filtered(samples: Float64Array, b: readonly number[], a: readonly number[]): Float64Array {
  let s1 = 0;
  let s2 = 0;
  return samples.map((x) => {
    const y = (b[0] / a[0]) * x + s1;
    s1 = (b[1] / a[0]) * x - (a[1] / a[0]) * y + s2;
    s2 = (b[2] / a[0]) * x - (a[2] / a[0]) * y;
    return y;
  });
}

/** Q of the two sections of a Butterworth filter of order 4. */
const fourth = [0.5412, 1.3066];

const angles = (frequencyHz: number, q: number, rate: number) => {
  const w = (2 * Math.PI * frequencyHz) / rate;
  return { cosine: Math.cos(w), alpha: Math.sin(w) / (2 * q) };
};

/** Butterworth high-pass of order 4. */
export const highPass = (samples: Float64Array, frequencyHz: number, rate: number): Float64Array =>
  fourth.reduce((signal, q) => {
    const { cosine: c, alpha } = angles(frequencyHz, q, rate);
    return filtered(signal, [(1 + c) / 2, -(1 + c), (1 + c) / 2], [1 + alpha, -2 * c, 1 - alpha]);
  }, samples);

/** Butterworth low-pass of order 4. */
export const lowPass = (samples: Float64Array, frequencyHz: number, rate: number): Float64Array =>
  fourth.reduce((signal, q) => {
    const { cosine: c, alpha } = angles(frequencyHz, q, rate);
    return filtered(signal, [(1 - c) / 2, 1 - c, (1 - c) / 2], [1 + alpha, -2 * c, 1 - alpha]);
  }, samples);

export function peaking(
  samples: Float64Array,
  frequencyHz: number,
  gainDb: number,
  q: number,
  rate: number,
): Float64Array {
  const a = 10 ** (gainDb / 40);
  const { cosine: c, alpha } = angles(frequencyHz, q, rate);
  return filtered(samples, [1 + alpha * a, -2 * c, 1 - alpha * a], [1 + alpha / a, -2 * c, 1 - alpha / a]);
}
