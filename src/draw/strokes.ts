/**
 * The few lines of a quick picture, ridges and cursor, placed upon the surface by the processor: their program is made in a
 * quarter of the time that the ribbons' takes, and the first picture waits for it. They look as the ribbons do.
 */
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Mesh, type RawShaderMaterial } from 'three';
import { vertexIndices } from './relief.js';
import type { SurfaceLayout } from './surface-layout.js';
import type { Ribbon } from './surface-scene.js';

/** More than these are left to the ribbons. */
export const MOST_STROKES = 24;

export const strokeVertex = /* glsl */ `
precision highp float;
in vec4 at;
in vec4 ink;
in vec2 side;
out vec4 vInk;
out vec2 vSide;
void main() {
  gl_Position = at;
  vInk = ink;
  vSide = side;
}
`;

export const strokeFragment = /* glsl */ `
precision highp float;
in vec4 vInk;
/** Across it, and how wide it is. */
in vec2 vSide;
out vec4 outColour;
void main() {
  float alpha = clamp(vSide.y * 0.5 + 0.5 - abs(vSide.x), 0.0, 1.0) * min(1.0, vSide.y) * vInk.a;
  outColour = vec4(vInk.rgb * alpha, alpha);
}
`;

export interface Stroke {
  readonly ribbon: Ribbon;
  /** Along rows, at one column; else along columns. */
  readonly across: boolean;
  /** Cells from one vertex to the next, as the body has them. */
  readonly stride: number;
  /** Depth by which it stands above the body. */
  readonly lift: number;
}

type Place = readonly [x: number, y: number, z: number, w: number];

export class Strokes {
  readonly mesh: Mesh<BufferGeometry, RawShaderMaterial>;
  private readonly geometry = new BufferGeometry();
  private most = 0;

  constructor(material: RawShaderMaterial) {
    this.mesh = new Mesh(this.geometry, material);
    this.mesh.frustumCulled = false;
    this.mesh.visible = false;
  }

  /** Sizes in device pixels. */
  set(
    strokes: readonly Stroke[],
    layout: SurfaceLayout,
    { width, height, ratio }: { readonly width: number; readonly height: number; readonly ratio: number },
  ): void {
    const lines = strokes
      .filter(({ ribbon }) => ribbon.to > ribbon.from)
      .map((stroke) => ({
        stroke,
        places: vertexIndices([stroke.ribbon.from, stroke.ribbon.to], stroke.stride).map((own) =>
          placeOf(layout, stroke, own),
        ),
      }));
    const count = lines.reduce((sum, { places }) => sum + places.length, 0);
    this.mesh.visible = count > 0;
    if (count > this.most) this.grow(2 ** Math.ceil(Math.log2(count)));
    const { at, ink, side } = this.geometry.attributes as Record<string, BufferAttribute>;
    const index = this.geometry.index!;
    let vertex = 0;
    let corner = 0;
    for (const { stroke, places } of lines) {
      const { colour, opacity, cssWidth } = stroke.ribbon;
      const wide = cssWidth * ratio;
      // Across the line, as long as it must be for its sides to run parallel through the corner.
      const points = places.map(([x, y, , w]) => [(x / w) * (width / 2), (y / w) * (height / 2)] as const);
      places.forEach(([x, y, z, w], k) => {
        const [h, before, after] = [
          points[k],
          points[Math.max(0, k - 1)],
          points[Math.min(points.length - 1, k + 1)],
        ];
        const [ax, ay] = unit(h[0] - before[0], h[1] - before[1]);
        const [bx, by] = unit(after[0] - h[0], after[1] - h[1]);
        const [dx, dy] = Math.hypot(ax + bx, ay + by) > 0.3 ? unit(ax + bx, ay + by) : [bx, by];
        const miter = 1 / Math.max(0.625, dx * ax + dy * ay, dx * bx + dy * by);
        for (const sign of [-1, 1]) {
          const reach = sign * (wide / 2 + 1);
          const [rx, ry] = [(-dy * reach * miter * w * 2) / width, (dx * reach * miter * w * 2) / height];
          at.setXYZW(vertex, x + rx, y + ry, z - stroke.lift * w, w);
          ink.setXYZW(vertex, colour[0] / 255, colour[1] / 255, colour[2] / 255, opacity);
          side.setXY(vertex, reach, wide);
          vertex += 1;
        }
        if (k === 0) return;
        for (const of of [4, 3, 2, 2, 3, 1]) {
          index.setX(corner, vertex - of);
          corner += 1;
        }
      });
    }
    this.geometry.setDrawRange(0, corner);
    for (const list of [at, ink, side, index]) if (list) list.needsUpdate = true;
  }

  private grow(most: number): void {
    this.geometry.dispose();
    this.most = most;
    for (const [name, wide] of [
      ['at', 4],
      ['ink', 4],
      ['side', 2],
    ] as const)
      this.geometry.setAttribute(
        name,
        new BufferAttribute(new Float32Array(2 * most * wide), wide).setUsage(DynamicDrawUsage),
      );
    this.geometry.setIndex(new BufferAttribute(new Uint16Array(6 * most), 1).setUsage(DynamicDrawUsage));
  }

  dispose(): void {
    this.geometry.dispose();
    this.mesh.material.dispose();
  }
}

function unit(x: number, y: number): readonly [number, number] {
  const length = Math.max(1e-4, Math.hypot(x, y));
  return [x / length, y / length];
}

/** A vertex of a line on the surface, in clip space. */
function placeOf(
  { relief, space: { matrix: m } }: SurfaceLayout,
  { ribbon, across }: Stroke,
  own: number,
): Place {
  const [x, y, z] = across ? relief.point(ribbon.fixed, own) : relief.point(own, ribbon.fixed);
  return [0, 1, 2, 3].map((k) => m[k] * x + m[4 + k] * y + m[8 + k] * z + m[12 + k]) as unknown as Place;
}
