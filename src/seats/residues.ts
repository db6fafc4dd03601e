import { ln1000 } from '../resonance/poles.js';
import { withoutOffset } from '../signal/dc.js';
import type { Job, Recording } from '../signal/types.js';
import type { Resonance } from '../resonance/types.js';
import { reducedCopy } from './reduce.js';
import type { SharedRidge } from './ridge-levels.js';
import * as maths from '../signal/maths.js';

/** The direct sound and the first reflections are no modes: from here after the onset on. s. */
const guardSeconds = 0.01;
/** Keeps two poles that lie upon each other from growing against each other without bound. */
const damping = 1e-6;

interface Pole {
  readonly frequencyHz: number;
  readonly decay: number;
}

/** Solves the symmetric system in place by Cholesky's method; `a` row by row. */
function solve(a: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < j; k++) {
      const l = a[j * n + k];
      for (let i = j; i < n; i++) a[i * n + j] -= a[i * n + k] * l;
    }
    const root = Math.sqrt(Math.max(a[j * n + j], 1e-300));
    for (let i = j; i < n; i++) a[i * n + j] /= root;
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) b[i] -= a[i * n + k] * b[k];
    b[i] /= a[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) b[i] -= a[k * n + i] * b[k];
    b[i] /= a[i * n + i];
  }
  return b;
}

/** Complex amplitudes of known poles in one recording at zero of its file's clock, by linear least squares. */
function amplitudesOf(recording: Recording, poles: readonly Pole[]): { re: Float64Array; im: Float64Array } {
  const copy = reducedCopy(recording);
  const { sampleRate, onsetSeconds } = copy;
  const samples = withoutOffset(copy.samples, sampleRate);
  const from = Math.min(samples.length - 1, Math.ceil((onsetSeconds + guardSeconds) * sampleRate));
  // All that rings is gone after the longest decay; what follows is noise.
  const longest = Math.max(...poles.map(({ decay }) => ln1000 / decay));
  const to = Math.min(samples.length, from + Math.ceil(longest * sampleRate));
  const n = 2 * poles.length;
  const basis = poles.map(({ frequencyHz, decay }) => {
    const columns = [new Float64Array(to - from), new Float64Array(to - from)];
    for (let k = 0; k < to - from; k++) {
      const t = k / sampleRate;
      const size = maths.exp(-decay * t);
      columns[0][k] = size * maths.cos(2 * Math.PI * frequencyHz * t);
      columns[1][k] = -size * maths.sin(2 * Math.PI * frequencyHz * t);
    }
    return columns;
  });
  const columns = basis.flat();
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < to - from; k++) sum += columns[i][k] * columns[j][k];
      normal[i * n + j] = normal[j * n + i] = i === j ? sum * (1 + damping) : sum;
    }
    for (let k = 0; k < to - from; k++) right[i] += columns[i][k] * samples[from + k];
  }
  const solution = solve(normal, right);
  const at = from / sampleRate + (copy.reduced?.startSeconds ?? 0);
  const rate = copy.reduced?.sampleRate ?? sampleRate;
  const re = new Float64Array(poles.length);
  const im = new Float64Array(poles.length);
  poles.forEach(({ frequencyHz, decay }, p) => {
    // Back to zero of the clock, in units of the response at the pole's own frequency; samples of a copy stand for more.
    const size = (maths.exp(decay * at) * rate) / (2 * decay);
    const angle = -2 * Math.PI * frequencyHz * at;
    const [a, b] = [solution[2 * p], solution[2 * p + 1]];
    re[p] = size * (a * maths.cos(angle) - b * maths.sin(angle));
    im[p] = size * (a * maths.sin(angle) + b * maths.cos(angle));
  });
  return { re, im };
}

/**
 * How every source drives the ridges of a room at every seat: the poles are those of a fit (of the seats with all sources
 * playing, say), the amplitudes are fitted to each recording alone. Only sound resonances take part; hum and the source's
 * own do not.
 *
 * @param grid `grid[source][seat]`
 */
export function* ridgesOfSources(
  resonances: readonly Resonance[],
  grid: readonly (readonly Recording[])[],
): Job<SharedRidge[]> {
  const poles = resonances.flatMap(({ frequencyHz, decayTimeSeconds, kind }) =>
    decayTimeSeconds === null || kind === 'hum' || kind === 'source'
      ? []
      : [{ frequencyHz, decay: ln1000 / decayTimeSeconds }],
  );
  const seatCount = grid[0]?.length ?? 0;
  const points = grid.length * seatCount;
  const ridges = poles.map(({ frequencyHz, decay }) => ({
    ...{ frequencyHz, decayTimeSeconds: ln1000 / decay, sourceCount: grid.length, seatCount },
    re: new Float64Array(points),
    im: new Float64Array(points),
  }));
  if (poles.length === 0) return [];
  for (const [point, recording] of grid.flat().entries()) {
    const { re, im } = amplitudesOf(recording, poles);
    ridges.forEach((ridge, p) => {
      ridge.re[point] = re[p];
      ridge.im[point] = im[p];
    });
    yield { stage: 'residues', fraction: (point + 1) / points };
  }
  return ridges;
}
