/**
 * The Cramer-Rao bound of a synthetic recording: frequency and decay time of every mode, and the loudspeaker's poles,
 * unknown together with all amplitudes; noise known. Modes of 15 dB or less over the noise are taken as known. Agrees with
 * the published table of the benchmark (`truth.tsv`); a test holds it.
 */
/** @typedef {import('./synth.mjs').Benchmark} Benchmark */
/** @typedef {{ re: number, im: number }} Complex */
/** @typedef {{ f: number, d: number, c: readonly [number, number] }} Ringing */

const ln1000 = Math.log(1000);
const sampleRate = 560;
const seconds = 1.5;
const highestHz = 250;
const faintestDb = 15;

const times = (/** @type {Complex} */ a, /** @type {Complex} */ b) => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
const over = (/** @type {Complex} */ a, /** @type {Complex} */ b) => {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
};
const minus = (/** @type {Complex} */ a, /** @type {Complex} */ b) => ({ re: a.re - b.re, im: a.im - b.im });
const conjugate = (/** @type {Complex} */ a) => ({ re: a.re, im: -a.im });
const polar = (/** @type {number} */ size, /** @type {number} */ angle) => ({
  re: size * Math.cos(angle),
  im: size * Math.sin(angle),
});
const one = { re: 1, im: 0 };

/** b0 + b1/z + b2/z^2. @param {readonly number[]} b @param {Complex} z */
function polynomial(b, z) {
  const w = over(one, z);
  const w2 = times(w, w);
  return { re: b[0] + b[1] * w.re + b[2] * w2.re, im: b[1] * w.im + b[2] * w2.im };
}

/**
 * What the loudspeaker's own poles add to a sum of modes that starts all at once: amplitudes at the arrival, by partial
 * fractions. @param {Benchmark} made @param {number} seat
 */
function loudspeakerPoles({ loudspeaker, modes, arrivals, start, sampleRate: rate }, seat) {
  const lead = arrivals[seat] - start;
  const inputs = modes[seat].map(({ f, d, c }) => {
    const z = polar(Math.exp(-d / rate), (2 * Math.PI * f) / rate);
    const gain = loudspeaker.reduce(
      (all, { b, a }) => times(all, over(polynomial(b, z), polynomial(a, z))),
      one,
    );
    const back = polar(Math.exp((d * lead) / rate), (-2 * Math.PI * f * lead) / rate);
    return { z, c: times(over({ re: c[0], im: c[1] }, gain), back) };
  });
  return loudspeaker.map((section, k) => {
    const { a, b } = section;
    const p = { re: -a[1] / 2, im: Math.sqrt(a[2] - (a[1] * a[1]) / 4) };
    let residue = over(polynomial(b, p), minus(one, over(conjugate(p), p)));
    loudspeaker.forEach((other, j) => {
      if (j !== k) residue = times(residue, over(polynomial(other.b, p), polynomial(other.a, p)));
    });
    // Half of each real mode is at its positive, half at its negative frequency; twice the real part is heard.
    let sum = { re: 0, im: 0 };
    for (const { z, c } of inputs)
      for (const [pole, amplitude] of [
        [z, c],
        [conjugate(z), conjugate(c)],
      ]) {
        const part = over(amplitude, minus(one, over(pole, p)));
        sum = { re: sum.re + part.re, im: sum.im + part.im };
      }
    const size = Math.hypot(p.re, p.im);
    const angle = Math.atan2(p.im, p.re);
    const at = times(times(residue, sum), polar(size ** lead, angle * lead));
    return {
      f: (angle * rate) / (2 * Math.PI),
      d: -Math.log(size) * rate,
      c: /** @type {const} */ ([at.re, at.im]),
    };
  });
}

/** Orthonormal basis of columns, in place, by Gram-Schmidt twice over; columns of nothing are zeroed. @param {Float64Array[]} columns */
function orthonormalise(columns) {
  columns.forEach((x, k) => {
    const before = Math.sqrt(dot(x, x));
    for (let pass = 0; pass < 2; pass++) for (let j = 0; j < k; j++) take(x, columns[j], dot(x, columns[j]));
    const size = Math.sqrt(dot(x, x));
    const scale = size > 1e-12 * before ? 1 / size : 0;
    for (let n = 0; n < x.length; n++) x[n] *= scale;
  });
}

/** @param {Float64Array} x @param {Float64Array} y */
function dot(x, y) {
  let sum = 0;
  for (let n = 0; n < x.length; n++) sum += x[n] * y[n];
  return sum;
}

/** @param {Float64Array} x @param {Float64Array} y @param {number} scale */
function take(x, y, scale) {
  for (let n = 0; n < x.length; n++) x[n] -= scale * y[n];
}

/** Diagonal of the inverse of a symmetric matrix, scaled to a unit diagonal first. @param {Float64Array[]} matrix */
function inverseDiagonal(matrix) {
  const size = matrix.length;
  const scale = matrix.map((row, i) => 1 / Math.sqrt(Math.max(row[i], 1e-300)));
  const factor = matrix.map((row, i) => row.map((v, j) => v * scale[i] * scale[j] + (i === j ? 1e-13 : 0)));
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = factor[i][j];
      for (let k = 0; k < j; k++) sum -= factor[i][k] * factor[j][k];
      factor[i][j] = i === j ? Math.sqrt(Math.max(sum, 1e-13)) : sum / factor[j][j];
    }
  // Column by column of the inverse of the factor.
  const diagonal = new Float64Array(size);
  const x = new Float64Array(size);
  for (let c = 0; c < size; c++) {
    x.fill(0);
    x[c] = 1 / factor[c][c];
    for (let i = c + 1; i < size; i++) {
      let sum = 0;
      for (let k = c; k < i; k++) sum -= factor[i][k] * x[k];
      x[i] = sum / factor[i][i];
    }
    for (let i = c; i < size; i++) diagonal[c] += x[i] * x[i];
  }
  return diagonal.map((v, i) => v * scale[i] * scale[i]);
}

/**
 * @param {Benchmark} made
 * @returns {import('./score.mjs').True[]} modes up to 215 Hz, as the published table has them
 */
export function boundOf(made) {
  const count = Math.floor(seconds * sampleRate);
  const time = Float64Array.from({ length: count }, (_, n) => n / sampleRate);
  const seats = made.irs.map((_, seat) => {
    const { white, diffuse, seconds: decay } = made.noise[seat];
    const weights = time.map(
      (t) =>
        1 /
        Math.sqrt(
          (white ** 2 + diffuse ** 2 * Math.exp((-2 * ln1000 * t) / decay)) * (sampleRate / made.sampleRate),
        ),
    );
    /** @type {Ringing[]} */
    const ringing = [...made.modes[seat], ...loudspeakerPoles(made, seat)].filter(({ f }) => f < highestHz);
    return { ringing, weights };
  });
  const { ringing: first } = seats[0];
  const energy = first.map((_, k) =>
    seats.reduce((sum, { ringing, weights }) => {
      const { f, d, c } = ringing[k];
      for (let n = 0; n < count; n++) {
        const angle = 2 * Math.PI * f * time[n];
        const value = weights[n] * Math.exp(-d * time[n]) * (c[0] * Math.cos(angle) - c[1] * Math.sin(angle));
        sum += value * value;
      }
      return sum;
    }, 0),
  );
  const rho = energy.map((value) => 10 * Math.log10(Math.max(value, 1e-30)));
  const free = [...first.keys()].filter((k) => rho[k] > faintestDb);
  const information = Array.from({ length: 2 * free.length }, () => new Float64Array(2 * free.length));
  for (const { ringing, weights } of seats) {
    /** @type {Float64Array[]} */
    const basis = [];
    /** @type {Float64Array[]} */
    const slopes = [];
    for (const k of free) {
      const { f, d, c } = ringing[k];
      const cosine = time.map((t, n) => weights[n] * Math.exp(-d * t) * Math.cos(2 * Math.PI * f * t));
      const sine = time.map((t, n) => weights[n] * Math.exp(-d * t) * Math.sin(2 * Math.PI * f * t));
      // Re(c j 2 pi t e^st) and, of ln T, Re(c d t e^st).
      slopes.push(time.map((t, n) => -2 * Math.PI * t * (c[0] * sine[n] + c[1] * cosine[n])));
      slopes.push(time.map((t, n) => d * t * (c[0] * cosine[n] - c[1] * sine[n])));
      basis.push(cosine, sine);
    }
    orthonormalise(basis);
    for (const slope of slopes)
      for (let pass = 0; pass < 2; pass++) for (const q of basis) take(slope, q, dot(slope, q));
    slopes.forEach((x, i) =>
      slopes.forEach((y, j) => {
        if (j <= i) information[i][j] = information[j][i] += dot(x, y);
      }),
    );
  }
  const variances = inverseDiagonal(information);
  return made.modes[0]
    .map(({ f, T }, k) => {
      const at = free.indexOf(k);
      const sd = (/** @type {number} */ i) => (at < 0 ? Infinity : Math.sqrt(variances[2 * at + i]));
      return { f, T, rho: rho[k], sf: sd(0), sT: sd(1) };
    })
    .filter(({ f }) => f < highestHz);
}
