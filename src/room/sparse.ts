import * as maths from '../signal/maths.js';

/** A symmetric sparse matrix by rows, both halves stored. */
export interface SparseMatrix {
  readonly size: number;
  /** Entries of row i lie from starts[i] to starts[i + 1]. */
  readonly starts: Uint32Array;
  readonly columns: Uint32Array;
  readonly values: Float64Array;
}

/** Sums entries as they come, element by element. */
export class SparseBuilder {
  private readonly rows: Map<number, number>[];

  constructor(private readonly size: number) {
    this.rows = Array.from({ length: size }, () => new Map<number, number>());
  }

  add(row: number, column: number, value: number): void {
    this.rows[row].set(column, (this.rows[row].get(column) ?? 0) + value);
  }

  build(): SparseMatrix {
    const starts = new Uint32Array(this.size + 1);
    this.rows.forEach((row, i) => (starts[i + 1] = starts[i] + row.size));
    const columns = new Uint32Array(starts[this.size]);
    const values = new Float64Array(starts[this.size]);
    this.rows.forEach((row, i) => {
      let k = starts[i];
      for (const [column, value] of [...row].sort((a, b) => a[0] - b[0])) {
        columns[k] = column;
        values[k++] = value;
      }
    });
    return { size: this.size, starts, columns, values };
  }
}

/** output = matrix * input. */
export function multiply(
  { size, starts, columns, values }: SparseMatrix,
  input: Float64Array,
  output: Float64Array,
): void {
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let k = starts[i]; k < starts[i + 1]; k++) sum += values[k] * input[columns[k]];
    output[i] = sum;
  }
}

/**
 * An order of the unknowns in which neighbours stay near one another, so that the factors fill little: the reversed
 * order of Cuthill and McKee (1969), from a node far out.
 *
 * @returns order[k] is the unknown that comes k-th
 */
export function bandOrder({ size, starts, columns }: SparseMatrix): Uint32Array {
  const degree = (i: number): number => starts[i + 1] - starts[i];
  const visit = (from: number): number[] => {
    const seen = new Uint8Array(size);
    const order: number[] = [];
    const add = (first: number): void => {
      seen[first] = 1;
      order.push(first);
      for (let head = order.length - 1; head < order.length; head++) {
        const i = order[head];
        const next: number[] = [];
        for (let k = starts[i]; k < starts[i + 1]; k++) {
          if (seen[columns[k]]) continue;
          seen[columns[k]] = 1;
          next.push(columns[k]);
        }
        next.sort((a, b) => degree(a) - degree(b));
        order.push(...next);
      }
    };
    add(from);
    for (let i = 0; i < size; i++) if (!seen[i]) add(i);
    return order;
  };
  // The last one reached from anywhere lies far out; twice is enough.
  const far = visit(visit(0)[size - 1]);
  const order = visit(far[size - 1]);
  return Uint32Array.from(order.reverse());
}

/**
 * Factor of a positive definite matrix, L L^T, row by row within its envelope (A. George and J. W. Liu, Computer
 * Solution of Large Sparse Positive Definite Systems, 1981).
 */
export class EnvelopeFactor {
  private readonly order: Uint32Array;
  private readonly first: Uint32Array;
  private readonly rowStarts: Uint32Array;
  private readonly values: Float64Array;
  private readonly work: Float64Array;

  constructor(matrix: SparseMatrix) {
    const { size, starts, columns, values } = matrix;
    this.order = bandOrder(matrix);
    const place = new Uint32Array(size);
    this.order.forEach((unknown, k) => (place[unknown] = k));
    this.first = new Uint32Array(size);
    this.rowStarts = new Uint32Array(size + 1);
    for (let i = 0; i < size; i++) {
      const unknown = this.order[i];
      let first = i;
      for (let k = starts[unknown]; k < starts[unknown + 1]; k++) first = Math.min(first, place[columns[k]]);
      this.first[i] = first;
      this.rowStarts[i + 1] = this.rowStarts[i] + (i - first + 1);
    }
    this.values = new Float64Array(this.rowStarts[size]);
    for (let i = 0; i < size; i++) {
      const unknown = this.order[i];
      for (let k = starts[unknown]; k < starts[unknown + 1]; k++) {
        const j = place[columns[k]];
        if (j <= i) this.values[this.rowStarts[i] + j - this.first[i]] = values[k];
      }
    }
    this.work = new Float64Array(size);
    this.factor(size);
  }

  private factor(size: number): void {
    const { first, rowStarts, values } = this;
    for (let i = 0; i < size; i++) {
      const rowI = rowStarts[i] - first[i];
      for (let j = first[i]; j < i; j++) {
        const rowJ = rowStarts[j] - first[j];
        let sum = values[rowI + j];
        for (let k = Math.max(first[i], first[j]); k < j; k++) sum -= values[rowI + k] * values[rowJ + k];
        values[rowI + j] = sum / values[rowJ + j];
      }
      let diagonal = values[rowI + i];
      for (let k = first[i]; k < i; k++) diagonal -= maths.square(values[rowI + k]);
      values[rowI + i] = Math.sqrt(diagonal);
    }
  }

  /** Solves in place. */
  solve(vector: Float64Array): void {
    const { order, first, rowStarts, values, work } = this;
    const size = vector.length;
    for (let i = 0; i < size; i++) {
      const row = rowStarts[i] - first[i];
      let sum = vector[order[i]];
      for (let k = first[i]; k < i; k++) sum -= values[row + k] * work[k];
      work[i] = sum / values[row + i];
    }
    for (let i = size - 1; i >= 0; i--) {
      const row = rowStarts[i] - first[i];
      const value = work[i] / values[row + i];
      work[i] = value;
      for (let k = first[i]; k < i; k++) work[k] -= values[row + k] * value;
    }
    for (let i = 0; i < size; i++) vector[order[i]] = work[i];
  }
}
