import { fdtdGrid } from './fdtd.js';

/**
 * Eigenvalues of the discrete room of `fdtd.ts` itself. Eliminating the velocity from its two updates, a mode p z^n keeps to
 *   sum over axes (courant^2 second difference - courant admittance (1 - 1/z) at the walls) p = (z - 2 + 1/z) p,
 * which separates: for each z the three lines have eigenvalues of their own, and z follows by Newton's rule.
 */
export interface FdRoom {
  readonly size: readonly [number, number, number];
  readonly speed: number;
  readonly cell: number;
  /** Of the walls x0, x1, y0, y1, z0, z1. */
  readonly admittances: readonly number[];
}

export interface FdMode {
  readonly order: readonly number[];
  readonly frequencyHz: number;
  readonly decaySeconds: number;
}

type Complex = readonly [number, number];
const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const times = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const over = (a: Complex, b: Complex): Complex => {
  const square = b[0] ** 2 + b[1] ** 2;
  return [(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square];
};

/** Eigenvalue of one line near the rigid one, by Rayleigh quotient iteration on the complex symmetric tridiagonal matrix. */
function lineEigenvalue(
  count: number,
  order: number,
  off: number,
  ends: readonly [Complex, Complex],
): Complex {
  let x = Array.from({ length: count }, (_, k): Complex => [
    Math.cos((Math.PI * order * (k + 0.5)) / count),
    0,
  ]);
  const diagonal = (k: number): Complex => {
    let d: Complex = [-2 * off, 0];
    if (k === 0) d = plus(plus(d, [off, 0]), ends[0]);
    if (k === count - 1) d = plus(plus(d, [off, 0]), ends[1]);
    return d;
  };
  let value: Complex = [0, 0];
  for (let round = 0; round < 8; round++) {
    let top: Complex = [0, 0];
    let bottom: Complex = [0, 0];
    x.forEach((v, k) => {
      let y = times(diagonal(k), v);
      if (k > 0) y = plus(y, times([off, 0], x[k - 1]));
      if (k < count - 1) y = plus(y, times([off, 0], x[k + 1]));
      top = plus(top, times(v, y));
      bottom = plus(bottom, times(v, v));
    });
    value = over(top, bottom);
    // (A - value) w = x by the Thomas algorithm; the shift is moved by a hair so that it is no exact eigenvalue.
    const shift: Complex = [-value[0] * (1 + 1e-13) - 1e-16, -value[1]];
    const c: Complex[] = [];
    const d: Complex[] = [];
    for (let k = 0; k < count; k++) {
      let pivot = plus(diagonal(k), shift);
      let right = x[k];
      if (k > 0) {
        pivot = plus(pivot, times([-off, 0], c[k - 1]));
        right = plus(right, times([-off, 0], d[k - 1]));
      }
      c.push(over([off, 0], pivot));
      d.push(over(right, pivot));
    }
    const w: Complex[] = new Array<Complex>(count);
    for (let k = count - 1; k >= 0; k--)
      w[k] = k === count - 1 ? d[k] : plus(d[k], times([-1, 0], times(c[k], w[k + 1])));
    const size = Math.max(...w.map(([a, b]) => Math.hypot(a, b)));
    if (!Number.isFinite(size)) break;
    x = w.map(([a, b]): Complex => [a / size, b / size]);
  }
  return value;
}

export function fdEigenvalues(room: FdRoom, highestHz: number): FdMode[] {
  const { cells, steps } = fdtdGrid(room);
  const dt = 0.98 / (room.speed * Math.hypot(...steps.map((step) => 1 / step)));
  const courant = steps.map((step) => (room.speed * dt) / step);
  const sumAt = (order: readonly number[], z: Complex): Complex => {
    const step = plus([1, 0], times([-1, 0], over([1, 0], z)));
    return order.reduce(
      (sum: Complex, n, axis) =>
        plus(
          sum,
          lineEigenvalue(cells[axis], n, courant[axis] ** 2, [
            times([-courant[axis] * room.admittances[2 * axis], 0], step),
            times([-courant[axis] * room.admittances[2 * axis + 1], 0], step),
          ]),
        ),
      [0, 0],
    );
  };
  const modes: FdMode[] = [];
  const most = room.size.map((side) => Math.ceil((2 * side * highestHz) / room.speed));
  for (let i = 0; i <= most[0]; i++)
    for (let j = 0; j <= most[1]; j++)
      for (let k = 0; k <= most[2]; k++) {
        if (i + j + k === 0) continue;
        const order = [i, j, k];
        const rigid = 0.5 * room.speed * Math.hypot(...order.map((n, axis) => n / room.size[axis]));
        if (rigid > 1.1 * highestHz) continue;
        const turn = 2 * Math.PI * rigid * dt;
        let z: Complex = [Math.cos(turn), Math.sin(turn)];
        for (let round = 0; round < 30; round++) {
          // z^2 - (2 + mu) z + 1 = 0 with mu of the last z: the root that turns forwards.
          const half: Complex = times([0.5, 0], plus([2, 0], sumAt(order, z)));
          const inner = plus(times(half, half), [-1, 0]);
          const size = Math.sqrt(Math.hypot(...inner));
          const angle = Math.atan2(inner[1], inner[0]) / 2;
          const root: Complex = [size * Math.cos(angle), size * Math.sin(angle)];
          const next = plus(half, root[1] >= 0 ? root : times([-1, 0], root));
          const change = Math.hypot(next[0] - z[0], next[1] - z[1]);
          z = next;
          if (change < 1e-14) break;
        }
        const frequencyHz = Math.atan2(z[1], z[0]) / (2 * Math.PI * dt);
        const decaySeconds = (-Math.log(1000) * dt) / Math.log(Math.hypot(...z));
        if (frequencyHz < highestHz) modes.push({ order, frequencyHz, decaySeconds });
      }
  return modes.sort((a, b) => a.frequencyHz - b.frequencyHz);
}
