/** A field and its limits as textures: what the vertex shader reads. */
import { DataTexture, FloatType, NearestFilter, RGBAFormat, RGFormat } from 'three';
import { finite, indexAt } from './field.js';
import { drawCounters } from './schedule.js';
import type { Curtain, Field } from './types.js';

/** A field on the GPU. */
export interface FieldTextures {
  readonly values: DataTexture;
  readonly columns: DataTexture;
  readonly rows: DataTexture;
  dispose(): void;
}

function floatTexture(
  data: Float32Array<ArrayBuffer>,
  width: number,
  height: number,
  format: typeof RGFormat | typeof RGBAFormat = RGFormat,
): DataTexture {
  const made = new DataTexture(data, width, height, format, FloatType);
  made.minFilter = NearestFilter;
  made.magFilter = NearestFilter;
  made.needsUpdate = true;
  return made;
}

/** Two lists side by side; what is missing or no number lies far below everything. */
function pairs(first: ArrayLike<number>, second: ArrayLike<number> | null): Float32Array<ArrayBuffer> {
  const data = new Float32Array(first.length * 2);
  for (let k = 0; k < first.length; k += 1) {
    data[2 * k] = Number.isNaN(first[k]) ? -1e6 : first[k];
    data[2 * k + 1] = second && !Number.isNaN(second[k]) ? Math.max(-1e6, second[k]) : -1e6;
  }
  return data;
}

function columnData({ columnPositions, columnFloor }: Field): Float32Array<ArrayBuffer> {
  const data = new Float32Array(columnPositions.length * 4);
  columnPositions.forEach((position, k) => {
    const floor = columnFloor ? finite(columnFloor[k]) : -1e6;
    data.set([position, floor, Math.log(Math.max(position, Number.MIN_VALUE)), 0], k * 4);
  });
  return data;
}

export function uploadField(field: Field): FieldTextures {
  const { values: levels, aboveWindow } = field;
  const cells = new Float32Array(levels.length * 2);
  for (let k = 0; k < levels.length; k += 1) {
    cells[2 * k] = finite(levels[k]);
    cells[2 * k + 1] = aboveWindow ? finite(aboveWindow[k]) : 1;
  }
  const values = floatTexture(cells, field.columns, field.rows);
  const columns = floatTexture(columnData(field), field.columns, 1, RGBAFormat);
  const rows = floatTexture(pairs(field.rowPositions, field.rowLowest), field.rows, 1);
  drawCounters.uploads += 1;
  return {
    values,
    columns,
    rows,
    dispose() {
      for (const made of [values, columns, rows]) made.dispose();
    },
  };
}

/** The limits as positions and as fractional indices of rows, per column. */
export function uploadCurtain({ at, further }: Curtain, field: Field): DataTexture {
  const index = (limits: Float32Array | null): Float32Array | null =>
    limits && limits.map((limit) => (Number.isNaN(limit) ? 0 : indexAt(field.rowPositions, limit)));
  const positions = pairs(at, further);
  const indices = pairs(index(at)!, index(further));
  const data = new Float32Array(at.length * 4);
  for (let k = 0; k < at.length; k += 1)
    data.set(
      [positions[2 * k], positions[2 * k + 1], indices[2 * k], Math.max(0, indices[2 * k + 1])],
      k * 4,
    );
  return floatTexture(data, at.length, 1, RGBAFormat);
}
