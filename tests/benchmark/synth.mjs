/**
 * Impulse responses whose resonances are known exactly: a sparse set of modes (S), close pairs (P), and the modal sum
 * of a rigid box seen from a corner source and random seats (R). Every response has a diffuse tail, a white floor and a
 * broadband click at its first arrival. Same seed, same samples: mulberry32 and Box-Muller in a fixed order of draws.
 */
const speedOfSound = 343;
const ln1000 = Math.log(1000);
const tau = 2 * Math.PI;

export class Draws {
  /** @param {number} seed */
  constructor(seed) {
    this.state = seed >>> 0;
  }
  uniform() {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
  gaussian() {
    const a = this.uniform();
    const b = this.uniform();
    return Math.sqrt(-2 * Math.log(1 - a)) * Math.cos(tau * b);
  }
}

/**
 * @typedef {{ f: number, d: number, T: number, c: [number, number], nz?: number, ijk?: number[] }} Mode
 *   frequency (Hz), decay rate (1/s), 60 dB decay time (s), complex amplitude at the arrival
 * @typedef {{ irs: Float64Array[], modes: Mode[][], arrivals: number[], start: number, sampleRate: number,
 *   noise: { white: number, diffuse: number, seconds: number }[], loudspeaker: Section[] }} Benchmark
 * @typedef {{ b: number[], a: number[] }} Section
 */

/** Adds decaying sines from sample `from` on; the recurrence restarts every 512 samples. */
function addModes(out, from, sampleRate, modes) {
  const block = 512;
  for (const { f, d, c } of modes) {
    const gain = Math.exp(-d / sampleRate);
    const cr = gain * Math.cos((tau * f) / sampleRate);
    const ci = gain * Math.sin((tau * f) / sampleRate);
    for (let start = from; start < out.length; start += block) {
      const t = (start - from) / sampleRate;
      let r = Math.exp(-d * t) * Math.cos(tau * f * t);
      let i = Math.exp(-d * t) * Math.sin(tau * f * t);
      const end = Math.min(start + block, out.length);
      for (let n = start; n < end; n++) {
        out[n] += c[0] * r - c[1] * i;
        const next = r * cr - i * ci;
        i = r * ci + i * cr;
        r = next;
      }
    }
  }
  return out;
}

function peakFrom(x, from = 0) {
  let peak = 0;
  for (let n = from; n < x.length; n++) peak = Math.max(peak, Math.abs(x[n]));
  return peak;
}

/** A second difference: marks the arrival and holds no bass. */
function addClick(x, at, size) {
  x[at] += size;
  x[at + 1] -= 2 * size;
  x[at + 2] += size;
}

/** White floor and decaying diffuse tail, both stated as in-band rms (15 to 220 Hz) re the in-band peak. */
function addNoise(draws, x, arrival, sampleRate, { snr, diff, Td }, peak) {
  const inBand = Math.sqrt((2 * 205) / sampleRate);
  const white = (peak * 10 ** (-snr / 20)) / inBand;
  const diffuse = diff === null ? 0 : (peak * 10 ** (diff / 20)) / inBand;
  for (let n = 0; n < x.length; n++) x[n] += white * draws.gaussian();
  if (diffuse > 0)
    for (let n = 0; n < x.length; n++) {
      const g = draws.gaussian();
      if (n >= arrival) x[n] += diffuse * g * Math.exp((-ln1000 * (n - arrival)) / sampleRate / Td);
    }
  return { white, diffuse, seconds: Td };
}

/**
 * Sets S and P: modes 3 Hz or more apart, or pairs of stated spacings.
 * @param {number} seed
 * @returns {Benchmark}
 */
export function makeSparse(
  seed,
  { sampleRate = 48000, seconds = 2.2, count = 14, snr = 55, diff = -30, Td = 0.35, pairs = null } = {},
) {
  const draws = new Draws(7000001 * seed + 29);
  /** @type {number[]} */
  const frequencies = [];
  /** @type {number[]} */
  const decays = [];
  if (!pairs) {
    while (frequencies.length < count) {
      const f = 18 + 182 * draws.uniform();
      if (frequencies.every((g) => Math.abs(f - g) > 3)) frequencies.push(f);
    }
    frequencies.sort((a, b) => a - b);
    for (let k = 0; k < count; k++) decays.push(0.15 * 8 ** draws.uniform());
  } else
    pairs.forEach((spacing, k) => {
      const centre = 30 + (k * 160) / Math.max(1, pairs.length - 1) + 4 * (draws.uniform() - 0.5);
      frequencies.push(centre - spacing / 2, centre + spacing / 2);
      const nominal = 0.5 + 0.7 * draws.uniform();
      decays.push(nominal * (0.85 + 0.3 * draws.uniform()));
      decays.push(nominal * (0.85 + 0.3 * draws.uniform()));
    });
  const samples = Math.floor(seconds * sampleRate);
  const arrival = Math.floor((0.005 + 0.055 * draws.uniform()) * sampleRate);
  /** @type {Mode[]} */
  const modes = frequencies.map((f, k) => {
    const size = 10 ** ((-(pairs ? 10 : 20) * draws.uniform()) / 20);
    const phase = tau * draws.uniform();
    return { f, d: ln1000 / decays[k], T: decays[k], c: [size * Math.cos(phase), size * Math.sin(phase)] };
  });
  const x = addModes(new Float64Array(samples), arrival, sampleRate, modes);
  const peak = peakFrom(x);
  addClick(x, arrival, 3 * peak);
  const noise = addNoise(draws, x, arrival, sampleRate, { snr, diff, Td }, peak);
  for (let n = 0; n < samples; n++) x[n] /= peak;
  for (const mode of modes) mode.c = [mode.c[0] / peak, mode.c[1] / peak];
  noise.white /= peak;
  noise.diffuse /= peak;
  return {
    irs: [x],
    modes: [modes],
    arrivals: [arrival],
    start: arrival,
    sampleRate,
    noise: [noise],
    loudspeaker: [],
  };
}

function boxModes(sides, highest) {
  const modes = [];
  const most = sides.map((side) => Math.floor((2 * side * highest) / speedOfSound) + 1);
  for (let i = 0; i <= most[0]; i++)
    for (let j = 0; j <= most[1]; j++)
      for (let k = 0; k <= most[2]; k++) {
        if (i + j + k === 0) continue;
        const f =
          (speedOfSound / 2) * Math.sqrt((i / sides[0]) ** 2 + (j / sides[1]) ** 2 + (k / sides[2]) ** 2);
        if (f <= highest) modes.push([f, i, j, k]);
      }
  return modes.sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || a[3] - b[3]);
}

function highPass(edge, q, sampleRate) {
  const w = 2 * sampleRate * Math.tan((Math.PI * edge) / sampleRate);
  const k = 2 * sampleRate;
  const a0 = k * k + (w * k) / q + w * w;
  return {
    b: [(k * k) / a0, (-2 * k * k) / a0, (k * k) / a0],
    a: [1, (2 * w * w - 2 * k * k) / a0, (k * k - (w * k) / q + w * w) / a0],
  };
}

/** High-pass of a closed (2nd order) or vented (4th order) loudspeaker. */
export function loudspeaker(draws, sampleRate) {
  if (draws.uniform() < 0.5) return [highPass(35 + 20 * draws.uniform(), Math.SQRT1_2, sampleRate)];
  const edge = 25 + 10 * draws.uniform();
  return [Math.PI / 8, (3 * Math.PI) / 8].map((angle) =>
    highPass(edge, 1 / (2 * Math.sin(angle)), sampleRate),
  );
}

export function filterInPlace(x, { b, a }) {
  let s1 = 0;
  let s2 = 0;
  for (let n = 0; n < x.length; n++) {
    const value = x[n];
    const out = b[0] * value + s1;
    s1 = b[1] * value - a[1] * out + s2;
    s2 = b[2] * value - a[2] * out;
    x[n] = out;
  }
}

/** Transfer function of the sections at z = zr + j zi. */
function gainAt(sections, zr, zi) {
  const square = zr * zr + zi * zi;
  const wr = zr / square;
  const wi = -zi / square;
  const w2r = wr * wr - wi * wi;
  const w2i = 2 * wr * wi;
  let hr = 1;
  let hi = 0;
  for (const { b, a } of sections) {
    const nr = b[0] + b[1] * wr + b[2] * w2r;
    const ni = b[1] * wi + b[2] * w2i;
    const dr = 1 + a[1] * wr + a[2] * w2r;
    const di = a[1] * wi + a[2] * w2i;
    const e = dr * dr + di * di;
    const tr = (nr * dr + ni * di) / e;
    const ti = (ni * dr - nr * di) / e;
    [hr, hi] = [hr * tr - hi * ti, hr * ti + hi * tr];
  }
  return [hr, hi];
}

/**
 * Sets R, V and R5: a rigid box of stated sides, damped mode by mode, source near a corner, random seats.
 * @param {number} seed
 * @returns {Benchmark}
 */
export function makeRoom(
  seed,
  {
    sampleRate = 48000,
    seconds = 2.2,
    sides = [5.3, 4.1, 2.7],
    seats: seatCount = 1,
    snr = 55,
    diff = -45,
    Td = 0.35,
    highest = 400,
    decayScale = 1,
  } = {},
) {
  const draws = new Draws(1000003 * seed + 17);
  const table = boxModes(sides, highest);
  const source = [0.3 + 0.5 * draws.uniform(), 0.3 + 0.6 * draws.uniform(), 0.2 + 0.9 * draws.uniform()];
  // Stated for sides of 5.3 x 4.1 x 2.7 m, and in proportion for others.
  const [sx, sy, sz] = [sides[0] / 5.3, sides[1] / 4.1, sides[2] / 2.7];
  const seats = Array.from({ length: 8 }, () => [
    sx * (2 + 2.4 * draws.uniform()),
    sy * (0.7 + 2.7 * draws.uniform()),
    sz * (0.95 + 0.5 * draws.uniform()),
  ]).slice(0, seatCount);
  const base = table.map(([f, i, j, k]) => {
    const nz = (i > 0 ? 1 : 0) + (j > 0 ? 1 : 0) + (k > 0 ? 1 : 0);
    const nominal = 0.7 * (Math.max(f, 20) / 40) ** -0.35 * [0, 1.35, 1, 0.75][nz];
    const T = Math.min(Math.max(nominal * Math.exp(0.3 * draws.gaussian()) * decayScale, 0.15), 1.2);
    return { f: f * (1 + 0.004 * draws.gaussian()), d: ln1000 / T, T, ijk: [i, j, k], nz };
  });
  const start = Math.floor((0.005 + 0.055 * draws.uniform()) * sampleRate);
  const sections = loudspeaker(draws, sampleRate);
  const samples = Math.floor(seconds * sampleRate);
  const shape = (place, mode) =>
    mode.ijk.reduce(
      (product, order, axis) => product * Math.cos((order * Math.PI * place[axis]) / sides[axis]),
      1,
    );
  /** @type {Benchmark} */
  const result = { irs: [], modes: [], arrivals: [], start, sampleRate, noise: [], loudspeaker: sections };
  let reference = 0;
  for (const seat of seats) {
    const modes = base.map((mode) => {
      let a = (2 ** mode.nz * shape(source, mode) * shape(seat, mode)) / (tau * mode.f);
      if (mode.f > 300) a *= Math.cos(((Math.PI / 2) * (mode.f - 300)) / (highest - 300)) ** 2;
      return { ...mode, c: /** @type {[number, number]} */ ([0, -a]) };
    });
    const x = addModes(new Float64Array(samples), start, sampleRate, modes);
    for (const section of sections) filterInPlace(x, section);
    const distance = Math.hypot(...source.map((v, axis) => v - seat[axis]));
    const arrival = start + Math.round((distance / speedOfSound) * sampleRate);
    /** @type {Mode[]} */
    const truth = modes.map((mode) => {
      const e = Math.exp(-mode.d / sampleRate);
      const w = (tau * mode.f) / sampleRate;
      const [hr, hi] = gainAt(sections, e * Math.cos(w), e * Math.sin(w));
      const t = (arrival - start) / sampleRate;
      const size = Math.exp(-mode.d * t);
      const turn = tau * mode.f * t;
      const cr = mode.c[0] * hr - mode.c[1] * hi;
      const ci = mode.c[0] * hi + mode.c[1] * hr;
      return {
        ...mode,
        c: [
          size * (cr * Math.cos(turn) - ci * Math.sin(turn)),
          size * (cr * Math.sin(turn) + ci * Math.cos(turn)),
        ],
      };
    });
    const inBand = truth.filter(({ f }) => f >= 15 && f <= 220);
    const peak = peakFrom(addModes(new Float64Array(samples), arrival, sampleRate, inBand), arrival);
    if (reference === 0) reference = peak;
    addClick(x, arrival, 3 * peak);
    const noise = addNoise(draws, x, arrival, sampleRate, { snr, diff, Td }, peak);
    for (let n = 0; n < samples; n++) x[n] /= reference;
    for (const mode of truth) mode.c = [mode.c[0] / reference, mode.c[1] / reference];
    noise.white /= reference;
    noise.diffuse /= reference;
    result.irs.push(x);
    result.modes.push(truth);
    result.arrivals.push(arrival);
    result.noise.push(noise);
  }
  return result;
}

/** The five sets of the benchmark by name, exactly as the table is defined. */
export function makeSet(kind, seed, snr) {
  if (kind === 'S') return makeSparse(seed, { snr });
  if (kind === 'P') return makeSparse(seed, { snr, pairs: [0.6, 1, 1.5, 2.5, 4, 6] });
  if (kind === 'R') return makeRoom(seed, { snr });
  if (kind === 'V') return makeRoom(seed, { snr, decayScale: 1.8 });
  if (kind === 'R5') return makeRoom(seed, { snr, seats: 5 });
  throw new Error(`There is no set ${kind}; there are S, P, R, V and R5.`);
}
