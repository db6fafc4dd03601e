import * as maths from './maths.js';

/** Second-order sections of a recursive filter: b0, b1, b2, a1, a2 per section, a0 = 1. */
export type Sections = Float64Array;

interface Prototype {
  /** Zeros on the imaginary axis, rad/s at a pass-band edge of 1 rad/s; one of each conjugate pair. */
  readonly zeros: readonly number[];
  /** Poles, real and imaginary part; one of each pair, from the most damped to the least. */
  readonly poles: readonly (readonly [number, number])[];
  readonly rippleDb: number;
}

/** Elliptic designs: order and stop-band in dB. */
export type EllipticDesign = '4-40' | '4-55' | '6-110' | '8-80';

/** Elliptic (Cauer) analogue low-pass prototypes. Source: scipy.signal.ellipap of SciPy 1.10. */
const prototypes: Record<EllipticDesign, Prototype> = {
  '8-80': {
    zeros: [1.422294322969245, 1.6068871134245313, 2.2542450507067158, 6.114739582663424],
    poles: [
      [-0.3790654392365567, 0.2554466308634472],
      [-0.2697216407994763, 0.6749486270479467],
      [-0.1425268647692632, 0.92014053914743],
      [-0.04268647955478023, 1.0233323621050203],
    ],
    rippleDb: 0.1,
  },
  '6-110': {
    zeros: [3.749942582352975, 5.079261225827381, 13.758613277980228],
    poles: [
      [-0.4360336160467512, 0.29141251822992864],
      [-0.30895554680841864, 0.7839759652673554],
      [-0.10949477900479587, 1.0549179537537832],
    ],
    rippleDb: 0.1,
  },
  '4-40': {
    zeros: [1.73466342395021, 3.86138022841517],
    poles: [
      [-0.45352856166676264, 0.49200987722543904],
      [-0.13595871812538574, 1.0212195065530452],
    ],
    rippleDb: 0.5,
  },
  '4-55': {
    zeros: [2.8220344255130274, 6.628086794515919],
    poles: [
      [-0.5573705256206265, 0.4739387004442418],
      [-0.20435951017993334, 1.0712683323397383],
    ],
    rippleDb: 0.2,
  },
};

/**
 * Digital elliptic low-pass by the bilinear transform with its edge pre-warped. The pole nearest the imaginary axis
 * goes with the lowest zero, so that no section rings far above the others.
 *
 * @param edgeHz End of the pass-band (down by the ripple), below half the sample rate.
 */
export function ellipticLowPass(design: EllipticDesign, edgeHz: number, sampleRate: number): Sections {
  const { zeros, poles, rippleDb } = prototypes[design];
  const scale = 2 * sampleRate;
  const edge = scale * maths.tan((Math.PI * edgeHz) / sampleRate);
  const sections = new Float64Array(5 * poles.length);
  poles.forEach(([real, imaginary], index) => {
    const pr = real * edge;
    const pi = imaginary * edge;
    const cosine = maths.cos(2 * maths.atan2(zeros[zeros.length - 1 - index] * edge, scale));
    // The pole's place in the z plane, (scale + p) / (scale - p).
    const dr = scale - pr;
    const square = dr * dr + pi * pi;
    const zr = ((scale + pr) * dr - pi * pi) / square;
    const zi = (pi * dr + (scale + pr) * pi) / square;
    const a1 = -2 * zr;
    const a2 = zr * zr + zi * zi;
    const unity = (1 + a1 + a2) / (2 - 2 * cosine);
    sections.set([unity, -2 * cosine * unity, unity, a1, a2], 5 * index);
  });
  // Of even order: the pass-band is lowest at 0 Hz.
  const lowest = maths.power(10, -rippleDb / 20);
  for (let k = 0; k < 3; k++) sections[k] *= lowest;
  return sections;
}

/** The mirror image of a low-pass of the same edge over a quarter of the rate: see `ellipticHighPass`. */
function mirrored(sections: Sections): Sections {
  const out = sections.slice();
  // z to -z: a low-pass of edge fs / 2 - f becomes a high-pass of edge f.
  for (let k = 0; k < out.length; k += 5) {
    out[k + 1] = -out[k + 1];
    out[k + 3] = -out[k + 3];
  }
  return out;
}

/** Digital elliptic high-pass of order 8: 0.1 dB ripple above `edgeHz`, 80 dB below 0.7 times it. */
export const ellipticHighPass = (edgeHz: number, sampleRate: number): Sections =>
  mirrored(ellipticLowPass('8-80', sampleRate / 2 - edgeHz, sampleRate));

/**
 * The filter's transfer function where z^-1 takes the value (real, imaginary). For exp(-j w) it is the frequency
 * response; for exp(s / sampleRate) it is the complex gain of the time-reversed filter for the exponential exp(s t).
 */
export function responseAt(sections: Sections, real: number, imaginary: number): [number, number] {
  const r2 = real * real - imaginary * imaginary;
  const i2 = 2 * real * imaginary;
  let hr = 1;
  let hi = 0;
  for (let k = 0; k < sections.length; k += 5) {
    const nr = sections[k] + sections[k + 1] * real + sections[k + 2] * r2;
    const ni = sections[k + 1] * imaginary + sections[k + 2] * i2;
    const dr = 1 + sections[k + 3] * real + sections[k + 4] * r2;
    const di = sections[k + 3] * imaginary + sections[k + 4] * i2;
    const square = dr * dr + di * di;
    const qr = (nr * dr + ni * di) / square;
    const qi = (ni * dr - nr * di) / square;
    [hr, hi] = [hr * qr - hi * qi, hr * qi + hi * qr];
  }
  return [hr, hi];
}

/** Mean of |H|^2 from 0 Hz to `share` of half the sample rate: variance of filtered white noise per band of that width. */
export function noiseGain(sections: Sections, share = 1): number {
  const points = 2000;
  let sum = 0;
  for (let k = 0; k < points; k++) {
    const w = (Math.PI * share * (k + 0.5)) / points;
    const [hr, hi] = responseAt(sections, maths.cos(w), -maths.sin(w));
    sum += hr * hr + hi * hi;
  }
  return sum / points;
}

/** Filters in place, forwards. */
export function filterForwards(samples: Float64Array, sections: Sections): void {
  for (let k = 0; k < sections.length; k += 5) {
    const [b0, b1, b2, a1, a2] = sections.subarray(k, k + 5);
    let s1 = 0;
    let s2 = 0;
    for (let i = 0; i < samples.length; i++) {
      const x = samples[i];
      const y = b0 * x + s1;
      s1 = b1 * x - a1 * y + s2;
      s2 = b2 * x - a2 * y;
      samples[i] = y;
    }
  }
}

/**
 * Filters backwards in time, from the last sample to `from`, and keeps every `step`-th output counted from `from`:
 * y[m] = sum over k of h[k] x[from + m step + k]. An exponential that rings from `from` on so stays exactly one, with a
 * constant complex gain and no start-up transient; the filter's own ringing lies at the end of the samples.
 *
 * @param output Receives floor((length - 1 - from) / step) + 1 values.
 */
export function reverseDecimate(
  samples: Float64Array,
  from: number,
  step: number,
  sections: Sections,
  output = new Float64Array(Math.max(0, Math.floor((samples.length - 1 - from) / step) + 1)),
): Float64Array {
  const stages = sections.length / 5;
  const first = new Float64Array(stages);
  const second = new Float64Array(stages);
  let countdown = (samples.length - 1 - from) % step;
  let m = Math.floor((samples.length - 1 - from) / step);
  for (let i = samples.length - 1; i >= from; i--) {
    let value = samples[i];
    for (let k = 0, c = 0; k < stages; k++, c += 5) {
      const out = sections[c] * value + first[k];
      first[k] = sections[c + 1] * value - sections[c + 3] * out + second[k];
      second[k] = sections[c + 2] * value - sections[c + 4] * out;
      value = out;
    }
    if (countdown === 0) {
      output[m--] = value;
      countdown = step - 1;
    } else countdown--;
  }
  return output;
}
