import { ellipticLowPass, noiseGain, reverseDecimate } from '../signal/filters.js';
import type { Job } from '../signal/types.js';
import { complexEigenvalues } from './complex-eigen.js';
import { hermitianEigen } from './hermitian-eigen.js';
import type { ModalData } from './model.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Zooms: spacing, half width of the filter, and how far from the centre a pole is believed. Hz. */
const zoomStepHz = 12.5;
const zoomHalfHz = 13;
const believedHz = 8.5;
const firstCentreHz = 20.5;
const lastCentreHz = 225;
const targetRate = 62;
const mostPoles = 16;
/** Share of the samples that is the height of the Hankel matrix. */
const hankelShare = 0.45;
/** Deliberately generous: what is too many is pruned later. In units of the largest singular value of pure noise. */
const noiseMargin = 1.15;

/**
 * Start values [frequency in Hz, decay rate in 1/s] from the shift invariance of narrow zooms into one band, shared by all
 * channels; those whose zoom is centred between the two frequencies.
 */
export function* zoomEsprit(
  data: ModalData,
  decaySeconds: number,
  fromHz: number,
  toHz: number,
): Job<(readonly [number, number])[]> {
  const { sampleRate, count, channels } = data;
  const sections = ellipticLowPass('4-55', zoomHalfHz, sampleRate);
  // Each part of the samples' noise has unit variance; of the zooms' noise, the whole.
  const scale = 1 / Math.sqrt(2 * noiseGain(sections));
  const decimation = Math.max(1, Math.floor(sampleRate / targetRate));
  const rate = sampleRate / decimation;
  const found: (readonly [number, number])[] = [];
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const turnRe = new Float64Array(count);
  const turnIm = new Float64Array(count);
  const length = Math.floor(
    Math.min(Math.floor((count - 1) / decimation) + 1, Math.max(24, decaySeconds * rate)),
  );
  for (let centre = firstCentreHz; centre < lastCentreHz; centre += zoomStepHz) {
    if (centre < fromHz || centre >= toHz) continue;
    const turn = (2 * Math.PI * (centre - data.centreHz)) / sampleRate;
    maths.phasors(turn, turnRe, turnIm);
    const zooms = channels.map((y): Signal => {
      for (let n = 0; n < count; n++) {
        const cosine = scale * turnRe[n];
        const sine = scale * turnIm[n];
        re[n] = y.re[n] * cosine + y.im[n] * sine;
        im[n] = y.im[n] * cosine - y.re[n] * sine;
      }
      return {
        re: reverseDecimate(re, 0, decimation, sections),
        im: reverseDecimate(im, 0, decimation, sections),
      };
    });
    for (const [turnPerSample, decayPerSample] of esprit(zooms, length)) {
      const offset = (turnPerSample * rate) / (2 * Math.PI);
      const decay = decayPerSample * rate;
      if (Math.abs(offset) <= believedHz && decay > -2 && decay < 400)
        found.push([centre + offset, Math.max(decay, 0.3)]);
    }
    yield { stage: 'fit', fraction: 0 };
  }
  return found;
}

/** Poles [radians per sample, nepers per sample] of complex samples with unit noise, by least-squares ESPRIT. */
function esprit(zooms: readonly Signal[], length: number): [number, number][] {
  const rows = Math.floor(hankelShare * length);
  const columns = length - rows + 1;
  if (rows < 3) return [];
  const re = new Float64Array(rows * rows);
  const im = new Float64Array(rows * rows);
  for (const zoom of zooms) addHankelCovariance(zoom, rows, columns, re, im);
  const edge = noiseMargin * (Math.sqrt(rows) + Math.sqrt(columns * zooms.length));
  const eigen = hermitianEigen(re, im, rows, (values) => {
    let p = 0;
    while (p < Math.min(mostPoles, rows - 2) && values[p] > edge * edge) p++;
    return p;
  });
  const p = eigen.count;
  if (p === 0) return [];
  const values = shiftEigenvalues(eigen.real, eigen.imaginary, rows, p);
  return Array.from({ length: p }, (_, k): [number, number] => {
    const x = values[2 * k];
    const y = values[2 * k + 1];
    return [maths.atan2(y, x), -0.5 * maths.log(x * x + y * y)];
  });
}

/**
 * Adds H H* of the Hankel matrix H to the lower triangle. Along a diagonal each element follows from the one before:
 * R[i+1][j+1] = R[i][j] - z[i] z*[j] + z[i+K] z*[j+K].
 */
function addHankelCovariance(
  { re: zr, im: zi }: Signal,
  rows: number,
  columns: number,
  re: Float64Array,
  im: Float64Array,
): void {
  for (let j = 0; j < rows; j++) {
    let a = 0;
    let b = 0;
    for (let k = 0; k < columns; k++) {
      a += zr[k] * zr[j + k] + zi[k] * zi[j + k];
      b += zi[j + k] * zr[k] - zr[j + k] * zi[k];
    }
    for (let i = 0, l = j; l < rows; i++, l++) {
      re[l * rows + i] += a;
      im[l * rows + i] += b;
      if (l + 1 >= rows) break;
      const p = i + columns;
      const q = l + columns;
      a += zr[p] * zr[q] + zi[p] * zi[q] - zr[i] * zr[l] - zi[i] * zi[l];
      b += zi[q] * zr[p] - zr[q] * zi[p] - zi[l] * zr[i] + zr[l] * zi[i];
    }
  }
}

/** Eigenvalues of the least-squares solution of U1 X = U2; inverse(U1* U1) = I + u u* / (1 - |u|^2) (Sherman, Morrison). */
function shiftEigenvalues(ur: Float64Array, ui: Float64Array, rows: number, p: number): Float64Array {
  const g = new Float64Array(p * p);
  const h = new Float64Array(p * p);
  for (let a = 0; a < p; a++)
    for (let b = 0; b < p; b++) {
      let r = 0;
      let s = 0;
      for (let i = 0; i < rows - 1; i++) {
        const ar = ur[a * rows + i];
        const ai = ui[a * rows + i];
        const br = ur[b * rows + i + 1];
        const bi = ui[b * rows + i + 1];
        r += ar * br + ai * bi;
        s += ar * bi - ai * br;
      }
      g[a * p + b] = r;
      h[a * p + b] = s;
    }
  const last = (k: number) => k * rows + rows - 1;
  let square = 0;
  for (let a = 0; a < p; a++) square += maths.square(ur[last(a)]) + maths.square(ui[last(a)]);
  const scale = 1 / Math.max(1 - square, 1e-12);
  for (let b = 0; b < p; b++) {
    let r = 0;
    let s = 0;
    // u = conjugate of the last row; u* times column b.
    for (let a = 0; a < p; a++) {
      const xr = ur[last(a)];
      const xi = ui[last(a)];
      r += xr * g[a * p + b] - xi * h[a * p + b];
      s += xr * h[a * p + b] + xi * g[a * p + b];
    }
    r *= scale;
    s *= scale;
    for (let a = 0; a < p; a++) {
      const xr = ur[last(a)];
      const xi = -ui[last(a)];
      g[a * p + b] += xr * r - xi * s;
      h[a * p + b] += xr * s + xi * r;
    }
  }
  return complexEigenvalues(g, h, p);
}
