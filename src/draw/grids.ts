/** Geometries of the surface: bare indices, made once per size class and shared by every surface of the page. */
import { BufferAttribute, BufferGeometry, InstancedBufferAttribute, InstancedBufferGeometry } from 'three';
import { drawCounters } from './schedule.js';

/** Cells per side that a geometry may have; a view takes the next larger and leaves the rest unused. */
const classes = [32, 64, 128, 192, 256, 384, 512, 768, 1024];

export const MOST_CELLS = classes[classes.length - 1];

/** Most ribbons in one draw. */
export const MOST_RIBBONS = 160;

const classFor = (cells: number): number => classes.find((size) => size >= cells) ?? MOST_CELLS;

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
      const [a, b] = [r * wide + c, r * wide + c + 1];
      const [d, e] = [a + wide, b + wide];
      index.set([a, d, b, b, d, e], at);
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

export function makeGrids(): Grids {
  const bodies = new Map<string, BufferGeometry>();
  const ribbons = new Map<string, InstancedBufferGeometry>();
  return {
    body(columns, rows) {
      const size = [classFor(columns), classFor(rows)];
      const key = size.join('x');
      const geometry = bodies.get(key) ?? makeBody(size[0], size[1]);
      bodies.set(key, geometry);
      return { geometry, cells: size[0] };
    },
    ribbon(drawer, steps) {
      const size = classFor(steps);
      const key = `${drawer} ${size}`;
      const geometry = ribbons.get(key) ?? makeRibbon(size);
      ribbons.set(key, geometry);
      return geometry;
    },
    dispose() {
      for (const geometry of [...bodies.values(), ...ribbons.values()]) geometry.dispose();
      bodies.clear();
      ribbons.clear();
    },
  };
}
