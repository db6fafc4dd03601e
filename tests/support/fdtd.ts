/**
 * A small finite-difference time-domain model of a box: pressure in cells, velocity between them (Botteldooren, J. Acoust.
 * Soc. Am. 98:3302, 1995). Walls have a real specific admittance; patches of wall may have another; the air in a box may
 * meet a flow resistance. It knows nothing of modes, so that what is predicted from them can be held against it.
 */
export interface FdtdPatch {
  /** Face: x0, x1, y0, y1, z0, z1. */
  readonly wall: 0 | 1 | 2 | 3 | 4 | 5;
  /** Middle and reach along the two axes of the wall, in axis order, m. */
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly admittance: number;
}

export interface FdtdPorous {
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  /** Flow resistivity over density and speed of sound, 1/m. */
  readonly resistance: number;
}

export interface FdtdParams {
  readonly size: readonly [number, number, number];
  readonly speed: number;
  /** Wanted cell, m; each axis is divided evenly into the nearest whole number. */
  readonly cell: number;
  readonly seconds: number;
  readonly admittance: number;
  readonly patches?: readonly FdtdPatch[];
  readonly porous?: readonly FdtdPorous[];
  readonly source: readonly [number, number, number];
  readonly receiver: readonly [number, number, number];
}

export interface FdtdGrid {
  readonly cells: readonly number[];
  /** Of one cell along each axis, m. */
  readonly steps: readonly number[];
}

export function fdtdGrid({ size, cell }: Pick<FdtdParams, 'size' | 'cell'>): FdtdGrid {
  const cells = size.map((side) => Math.max(2, Math.round(side / cell)));
  return { cells, steps: size.map((side, axis) => side / cells[axis]) };
}

export function fdtd(params: FdtdParams): { samples: Float64Array; sampleRate: number } {
  const { speed } = params;
  const { cells, steps } = fdtdGrid(params);
  const [nx, ny, nz] = cells;
  const total = nx * ny * nz;
  const stride = [1, nx, nx * ny];
  const dt = 0.98 / (speed * Math.hypot(...steps.map((step) => 1 / step)));
  const courant = steps.map((step) => (speed * dt) / step);
  const centre = (axis: number, k: number): number => (k + 0.5) * steps[axis];
  const indices = (i: number): number[] => [i % nx, Math.floor(i / nx) % ny, Math.floor(i / (nx * ny))];

  /** What is left of the pressure of a cell after a step, for what flows into its walls. */
  const keep = new Float64Array(total).fill(1);
  /** Velocity (times rho c) on the face below a cell along each axis: what is left of it, and the share of the gradient. */
  const hold = stride.map(() => new Float64Array(total));
  const drive = stride.map(() => new Float64Array(total));
  for (let i = 0; i < total; i++) {
    const place = indices(i);
    for (let axis = 0; axis < 3; axis++) {
      const walls = [place[axis] === 0 ? 2 * axis : -1, place[axis] === cells[axis] - 1 ? 2 * axis + 1 : -1];
      for (const wall of walls) {
        if (wall < 0) continue;
        const [first, second] = [0, 1, 2].filter((other) => other !== axis);
        const at = [centre(first, place[first]), centre(second, place[second])];
        const patch = params.patches?.find(
          ({ wall: on, from, to }) => on === wall && at.every((value, n) => value > from[n] && value < to[n]),
        );
        keep[i] -= courant[axis] * (patch?.admittance ?? params.admittance);
      }
      if (place[axis] === 0) continue;
      let loss = 0;
      for (const { from, to, resistance } of params.porous ?? []) {
        let share = 1;
        place.forEach((k, n) => {
          const value = n === axis ? k * steps[n] : centre(n, k);
          const edge = Math.abs(value - from[n]) < 1e-9 || Math.abs(value - to[n]) < 1e-9;
          // A face on the edge of the material stands for half a cell of it.
          share *= edge ? 0.5 : Number(value > from[n] && value < to[n]);
        });
        loss += (share * resistance * speed * dt) / 2;
      }
      hold[axis][i] = (1 - loss) / (1 + loss);
      drive[axis][i] = courant[axis] / (1 + loss);
    }
  }

  const cellOf = (place: readonly number[]): number =>
    place.reduce(
      (sum, value, axis) => sum + stride[axis] * Math.min(cells[axis] - 1, Math.floor(value / steps[axis])),
      0,
    );
  const receiver = cellOf(params.receiver);
  const p = new Float64Array(total);
  p[cellOf(params.source)] = 1;
  const velocity = stride.map(() => new Float64Array(total));
  const samples = new Float64Array(Math.round(params.seconds / dt));
  for (let n = 0; n < samples.length; n++) {
    for (let axis = 0; axis < 3; axis++) {
      const [v, a, b, step] = [velocity[axis], hold[axis], drive[axis], stride[axis]];
      for (let i = step; i < total; i++) v[i] = a[i] * v[i] - b[i] * (p[i] - p[i - step]);
    }
    for (let i = 0; i < total; i++) p[i] *= keep[i];
    for (let axis = 0; axis < 3; axis++) {
      const [v, c, step] = [velocity[axis], courant[axis], stride[axis]];
      for (let i = step; i < total; i++) {
        const flow = c * v[i];
        p[i] += flow;
        p[i - step] -= flow;
      }
    }
    samples[n] = p[receiver];
  }
  return { samples, sampleRate: 1 / dt };
}
