/**
 * Walls and floor of a room with the signed shape of a mode upon them, in the page's one WebGL context. The geometry
 * follows the walls, the shape is one texture; camera and swing change uniforms only. Walls towards the eye are left out.
 */
import {
  BufferAttribute,
  BufferGeometry,
  Camera,
  DataTexture,
  DoubleSide,
  FloatType,
  GLSL3,
  LinearFilter,
  Matrix4,
  Mesh,
  NearestFilter,
  RawShaderMaterial,
  RGFormat,
  Scene,
  Vector2,
  Vector3,
} from 'three';
import type { DrawSize } from './picture.js';
import type { Quality, ScenePart, SharedRenderer } from './renderer.js';
import { toBox, turnOf, type RoomLayout, type RoomPicture } from './room-picture.js';
import { filled, signedTable } from './signed-image.js';
import { cssBytes } from './tones.js';
import type { DrawTheme } from './types.js';

/** As many corners as a plan may have. */
const mostCorners = 40;

const vertex = /* glsl */ `
precision highp float;
/** In the box, m; and in the room, m. */
in vec3 position;
in vec3 place;
/** Into the room, from a wall; nothing on the floor. */
in vec2 inward;
uniform mat4 uMatrix;
uniform vec2 uEye;
out vec3 vPlace;
out float vFloor;

void main() {
  vPlace = place;
  vFloor = inward == vec2(0.0) ? 1.0 : 0.0;
  bool seen = vFloor > 0.0 || dot(inward, uEye - place.xy) > 0.0;
  gl_Position = seen ? uMatrix * vec4(position, 1.0) : vec4(2.0, 2.0, 2.0, 1.0);
}
`;

const fragment = /* glsl */ `
precision highp float;
precision highp sampler2D;
uniform sampler2D uShape;
uniform sampler2D uColours;
uniform vec2 uSides;
uniform vec2 uCorners[${mostCorners}];
uniform int uCount;
uniform float uUpright;
/** Largest motion; 0 for pressure. */
uniform float uMotion;
uniform float uFactor;
uniform float uRatio;
uniform vec3 uText;
in vec3 vPlace;
in float vFloor;
out vec4 outColour;

vec2 shapeAt(vec2 at) {
  vec2 size = vec2(textureSize(uShape, 0) - 1);
  vec2 cell = clamp(at / uSides, 0.0, 1.0) * size;
  vec2 low = min(floor(cell), size - 1.0);
  vec2 part = cell - low;
  ivec2 k = ivec2(low);
  vec2 near = mix(texelFetch(uShape, k, 0).rg, texelFetch(uShape, k + ivec2(1, 0), 0).rg, part.x);
  vec2 far = mix(texelFetch(uShape, k + ivec2(0, 1), 0).rg, texelFetch(uShape, k + ivec2(1, 1), 0).rg, part.x);
  return mix(near, far, part.y);
}

bool inside(vec2 at) {
  bool odd = false;
  for (int k = 0; k < uCount; k += 1) {
    vec2 a = uCorners[k];
    vec2 b = uCorners[k + 1 == uCount ? 0 : k + 1];
    if ((a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
  }
  return odd;
}

float line(float value, float width) {
  float slope = fwidth(value);
  return slope < 1e-6 ? 0.0 : 1.0 - smoothstep(-0.5, 0.5, abs(value) / slope - width * uRatio * 0.5);
}

void main() {
  vec2 at = shapeAt(vPlace.xy);
  float c = cos(uUpright * vPlace.z);
  float shape = at.x * c;
  float value = uMotion > 0.0 ? min(1.0, length(vec2(at.y * c, at.x * uUpright * sin(uUpright * vPlace.z))) / uMotion) : shape;
  // Derivatives before any pixel is left out.
  float ink = uMotion > 0.0 ? 0.4 * line(value - 0.5, 1.0)
                            : max(0.85 * line(shape, 1.75), 0.4 * max(line(shape - 0.5, 1.0), line(shape + 0.5, 1.0)));
  if (vFloor > 0.0 && uCount > 4 && !inside(vPlace.xy)) discard;
  float part = clamp(value * uFactor, -1.0, 1.0);
  vec3 colour = texture(uColours, vec2((part * 127.0 + 127.5) / 255.0, 0.5)).rgb;
  outColour = vec4(mix(colour, uText, ink), 1.0);
}
`;

interface Job {
  readonly picture: RoomPicture;
  readonly layout: RoomLayout;
  readonly theme: DrawTheme;
  readonly size: DrawSize;
  /** Of the shape, while it swings. */
  readonly factor: number;
}

/** Floor, then one quad per wall. */
function makeGeometry(picture: RoomPicture): BufferGeometry {
  const { corners, lengthMetres: l, widthMetres: w, heightMetres: h } = picture;
  const turn = Math.sign(turnOf(corners));
  const [positions, places, inwards]: number[][] = [[], [], []];
  const index: number[] = [];
  const quad = (
    points: readonly (readonly [number, number, number])[],
    inward: readonly [number, number],
  ): void => {
    const first = positions.length / 3;
    for (const [x, y, z] of points) {
      positions.push(...toBox(picture, x, y, z));
      places.push(x, y, z);
      inwards.push(...inward);
    }
    index.push(first, first + 1, first + 2, first, first + 2, first + 3);
  };
  quad(
    [
      [0, 0, 0],
      [l, 0, 0],
      [l, w, 0],
      [0, w, 0],
    ],
    [0, 0],
  );
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length];
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    quad(
      [
        [a.x, a.y, 0],
        [b.x, b.y, 0],
        [b.x, b.y, h],
        [a.x, a.y, h],
      ],
      [(-turn * (b.y - a.y)) / length, (turn * (b.x - a.x)) / length],
    );
  });
  const geometry = new BufferGeometry();
  const attribute = (name: string, values: number[], size: number): unknown =>
    geometry.setAttribute(name, new BufferAttribute(new Float32Array(values), size));
  attribute('position', positions, 3);
  attribute('place', places, 3);
  attribute('inward', inwards, 2);
  geometry.setIndex(index);
  return geometry;
}

class RoomScene implements ScenePart {
  private readonly scene = new Scene();
  private readonly camera = new Camera();
  private readonly material: RawShaderMaterial;
  private readonly mesh: Mesh<BufferGeometry, RawShaderMaterial>;
  private shape: DataTexture | null = null;
  private colours: DataTexture | null = null;
  private walls: string | null = null;
  private shapeOf: Float32Array | null = null;
  private coloursOf = '';

  constructor() {
    this.scene.matrixWorldAutoUpdate = false;
    this.material = new RawShaderMaterial({
      glslVersion: GLSL3,
      vertexShader: vertex,
      fragmentShader: fragment,
      side: DoubleSide,
      uniforms: {
        uMatrix: { value: new Matrix4() },
        uEye: { value: new Vector2() },
        uShape: { value: null },
        uColours: { value: null },
        uSides: { value: new Vector2() },
        uCorners: { value: Array.from({ length: mostCorners }, () => new Vector2()) },
        uCount: { value: 0 },
        uUpright: { value: 0 },
        uMotion: { value: 0 },
        uFactor: { value: 1 },
        uRatio: { value: 1 },
        uText: { value: new Vector3() },
      },
    });
    this.mesh = new Mesh(new BufferGeometry(), this.material);
    this.mesh.frustumCulled = false;
    this.scene.add(this.mesh);
  }

  draw(renderer: SharedRenderer, job: Job, target: CanvasRenderingContext2D, quality: Quality): boolean {
    const { picture, layout, theme, size, factor } = job;
    const { uniforms } = this.material;
    const { corners, lengthMetres, widthMetres } = picture;
    const walls = JSON.stringify([corners, lengthMetres, widthMetres, picture.heightMetres]);
    if (walls !== this.walls) {
      this.walls = walls;
      this.mesh.geometry.dispose();
      this.mesh.geometry = makeGeometry(picture);
      const places = uniforms.uCorners.value as Vector2[];
      corners.slice(0, mostCorners).forEach(({ x, y }, k) => places[k].set(x, y));
      uniforms.uCount.value = Math.min(mostCorners, corners.length);
      (uniforms.uSides.value as Vector2).set(lengthMetres, widthMetres);
    }
    this.setShape(picture);
    this.setColours(theme);
    (uniforms.uMatrix.value as Matrix4).fromArray(layout.space.matrix);
    const [ex, , ez] = layout.space.eye;
    (uniforms.uEye.value as Vector2).set(ex + lengthMetres / 2, widthMetres / 2 - ez);
    uniforms.uUpright.value = picture.upright;
    uniforms.uMotion.value = picture.largestMotion ?? 0;
    uniforms.uFactor.value = factor;
    uniforms.uRatio.value = size.pixelRatio;
    const [r, g, b] = cssBytes(theme.text);
    (uniforms.uText.value as Vector3).set(r / 255, g / 255, b / 255);
    this.material.uniformsNeedUpdate = true;
    return renderer.render(this.scene, this.camera, target, quality);
  }

  private setShape(picture: RoomPicture): void {
    const { floor, along, columns, rows } = picture;
    if (this.shapeOf === floor) return;
    this.shapeOf = floor;
    this.shape?.dispose();
    const [pressure, slope] = [filled(floor, columns), filled(along, columns)];
    const data = new Float32Array(columns * rows * 2);
    for (let k = 0; k < columns * rows; k += 1) data.set([pressure[k] || 0, slope[k] || 0], 2 * k);
    this.shape = new DataTexture(data, columns, rows, RGFormat, FloatType);
    this.shape.minFilter = NearestFilter;
    this.shape.magFilter = NearestFilter;
    this.shape.needsUpdate = true;
    this.material.uniforms.uShape.value = this.shape;
  }

  private setColours(theme: DrawTheme): void {
    const key = `${theme.background} ${theme.dark}`;
    if (this.coloursOf === key) return;
    this.coloursOf = key;
    this.colours?.dispose();
    const table = signedTable(theme);
    this.colours = new DataTexture(new Uint8Array(table), table.length / 4, 1);
    this.colours.minFilter = LinearFilter;
    this.colours.magFilter = LinearFilter;
    this.colours.needsUpdate = true;
    this.material.uniforms.uColours.value = this.colours;
  }

  dispose(): void {
    this.shape?.dispose();
    this.colours?.dispose();
    this.mesh.geometry.dispose();
    this.material.dispose();
  }
}

export type RoomJob = Job;

/** Draws onto a 2D canvas whose ground is painted; false where that cannot be done now. */
export const drawRoomFaces = (
  renderer: SharedRenderer,
  job: RoomJob,
  target: CanvasRenderingContext2D,
  quality: Quality,
): boolean => renderer.part('room', () => new RoomScene()).draw(renderer, job, target, quality);
