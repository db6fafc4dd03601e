/** Geometries of the surface: bare indices, made once per size class and shared by every surface of the page. */
import { BufferAttribute, BufferGeometry, InstancedBufferAttribute, InstancedBufferGeometry } from 'three';
import { drawCounters } from './schedule.js';

/** Geometries are made for cells in steps of this many; a view takes the next larger and leaves the rest unused. */
const STEP = 16;

export const MOST_CELLS = 1024;

/** Most ribbons in one draw. */
export const MOST_RIBBONS = 160;

const classFor = (cells: number): number => Math.min(MOST_CELLS, Math.ceil(Math.max(1, cells) / STEP) * STEP);

/** Indices per row of cells of a body with `columns` cells, walls included. */
const indicesPerRow = (columns: number): number => (columns + 2) * 6;

export interface Grids {
  /** The body for at least so many cells: geometry and how many of its indices to draw. */
  body(columns: number, rows: number): { readonly geometry: BufferGeometry; readonly cells: number };
  /** Ribbons of so many steps for one drawer: two that are in one picture each have their own list. */
  ribbon(drawer: string, steps: number): InstancedBufferGeometry;
  dispose(): void;
}

function makeBody(columns: number, rows: number): BufferGeometry {
  const wide = columns + 3;
  const cells = new Float32Array(wide * (rows + 3) * 2);
  let at = 0;
  for (let r = -1; r <= rows + 1; r += 1)
    for (let c = -1; c <= columns + 1; c += 1) {
      cells[at] = c;
      cells[at + 1] = r;
      at += 2;
    }
  const index = new Uint32Array(indicesPerRow(columns) * (rows + 2));
  at = 0;
  for (let r = 0; r < rows + 2; r += 1)
    for (let c = 0; c < columns + 2; c += 1) {
      const a = r * wide + c;
      const d = a + wide;
      index[at] = a;
      index[at + 2] = index[at + 3] = a + 1;
      index[at + 1] = index[at + 4] = d;
      index[at + 5] = d + 1;
      at += 6;
    }
  const geometry = new BufferGeometry();
  geometry.setAttribute('cell', new BufferAttribute(cells, 2));
  geometry.setIndex(new BufferAttribute(index, 1));
  drawCounters.geometries += 1;
  return geometry;
}

function makeRibbon(steps: number): InstancedBufferGeometry {
  const cells = new Float32Array((steps + 1) * 4);
  const index = new Uint32Array(steps * 6);
  for (let k = 0; k <= steps; k += 1) cells.set([k, -1, k, 1], k * 4);
  for (let k = 0; k < steps; k += 1) {
    const a = k * 2;
    index.set([a, a + 1, a + 2, a + 2, a + 1, a + 3], k * 6);
  }
  const geometry = new InstancedBufferGeometry();
  geometry.setAttribute('cell', new BufferAttribute(cells, 2));
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setAttribute('line', new InstancedBufferAttribute(new Float32Array(MOST_RIBBONS * 4), 4));
  geometry.setAttribute('ink', new InstancedBufferAttribute(new Float32Array(MOST_RIBBONS * 4), 4));
  geometry.instanceCount = 0;
  drawCounters.geometries += 1;
  return geometry;
}

/** Kept for the sizes that were used last: pages have few sizes of pictures, windows that are dragged have many. */
const KEPT = 24;

/** Makes what is missing, and lets go of what was not asked for longest. */
class Kept<Geometry extends BufferGeometry> {
  private readonly made = new Map<string, Geometry>();

  get(key: string, make: () => Geometry): Geometry {
    const geometry = this.made.get(key) ?? make();
    this.made.delete(key);
    this.made.set(key, geometry);
    if (this.made.size > KEPT) {
      const [oldest, gone] = this.made.entries().next().value!;
      this.made.delete(oldest);
      gone.dispose();
    }
    return geometry;
  }

  dispose(): void {
    for (const geometry of this.made.values()) geometry.dispose();
    this.made.clear();
  }
}

export function makeGrids(): Grids {
  const bodies = new Kept<BufferGeometry>();
  const ribbons = new Kept<InstancedBufferGeometry>();
  return {
    body(columns, rows) {
      const [wide, long] = [classFor(columns), classFor(rows)];
      return { geometry: bodies.get(`${wide}x${long}`, () => makeBody(wide, long)), cells: wide };
    },
    ribbon(drawer, steps) {
      const size = classFor(steps);
      return ribbons.get(`${drawer} ${size}`, () => makeRibbon(size));
    },
    dispose() {
      bodies.dispose();
      ribbons.dispose();
    },
  };
}
