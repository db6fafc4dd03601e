/**
 * The surface as a scene of the page's context: its shaders, its shared geometries, and what a picture sets on them. One list of uniforms
 * runs through all of it, which parted would be told twice.
 */
import {
  Camera,
  CustomBlending,
  DataTexture,
  DoubleSide,
  GLSL3,
  LinearFilter,
  Matrix4,
  Mesh,
  OneFactor,
  OneMinusSrcAlphaFactor,
  RawShaderMaterial,
  Scene,
  Vector2,
  Vector3,
  Vector4,
  type InstancedBufferAttribute,
  type InstancedBufferGeometry,
} from 'three';
import { CURTAIN } from './curtain2d.js';
import { SCALE_ENTRIES, scaleTable, type ScaleName } from './colours.js';
import { positionAt } from './field.js';
import type { FieldTextures } from './field-textures.js';
import { makeGrids, MOST_CELLS, MOST_RIBBONS, type Grids } from './grids.js';
import type { Triple } from './oklab.js';
import type { DrawSize } from './picture.js';
import { mostSlices, sliceList } from './relief.js';
import type { Outcome, Quality, ScenePart, SharedRenderer } from './renderer.js';
import {
  bodyFragment,
  bodyVertex,
  curtainFragment,
  curtainVertex,
  ribbonFragment,
  ribbonVertex,
} from './shaders.js';
import { MOST_STROKES, strokeFragment, Strokes, strokeVertex, type Stroke } from './strokes.js';
import type { SurfaceLayout } from './surface-layout.js';
import { cssBytes, tonesOf } from './tones.js';
import type { DrawTheme } from './types.js';

/** A line on the surface: where it stands on the other axis, from and to on its own, as fractional indices. */
export interface Ribbon {
  readonly fixed: number;
  readonly from: number;
  readonly to: number;
  readonly cssWidth: number;
  readonly colour: Triple;
  readonly opacity: number;
}

export interface SurfaceJob {
  readonly layout: SurfaceLayout;
  readonly textures: FieldTextures;
  readonly theme: DrawTheme;
  readonly size: DrawSize;
  /** Decibels (or whatever the value's unit is) between iso-level lines; 0 for none. */
  readonly isoStep: number;
  /** Lines along rows (time) at one column, and along columns at one row. */
  readonly alongRows: readonly Ribbon[];
  readonly alongColumns: readonly Ribbon[];
  readonly curtain: DataTexture | null;
}

/** Depth by which ribbons stand above the body: enough against flicker, too little to be seen through a ridge. */
const LIFT = 0.0022;

type Uniforms = Record<string, { value: unknown }>;

function makeUniforms(): Uniforms {
  return {
    uValues: { value: null },
    uColumns: { value: null },
    uRows: { value: null },
    uColours: { value: null },
    uMatrix: { value: new Matrix4() },
    uHalf: { value: new Vector3() },
    uWindow: { value: new Vector4() },
    uColumnPlace: { value: new Vector2() },
    uRowPlace: { value: new Vector2() },
    uValueRange: { value: new Vector2() },
    uLog: { value: false },
    uRowEnd: { value: 0 },
    uStride: { value: new Vector2(1, 1) },
    uCells: { value: new Vector2() },
    uPixels: { value: new Vector2() },
    uBackground: { value: new Vector3() },
    uText: { value: new Vector3() },
    uNoise: { value: new Vector3() },
    uHatch: { value: new Vector3() },
    uIso: { value: new Vector3() },
    uSlices: { value: new Vector4() },
    uStrong: { value: new Vector2() },
    uWallInk: { value: 0 },
    uRatio: { value: 1 },
    uLimit: { value: null },
    uCurtain: { value: CURTAIN },
    uDark: { value: false },
  };
}

/** Device pixels of the plot per vertex, along columns and along rows, which are seen foreshortened. */
const pixelsPerVertex: Readonly<Record<Quality, readonly [number, number]>> = {
  quick: [4, 5],
  fine: [2, 2.5],
};

/** A fine picture that takes no longer than this, ms, needs no quick one before it. */
const QUICK_ENOUGH_MS = 12;

const canDraw = (renderer: SharedRenderer, { layout }: SurfaceJob): boolean => {
  const { field } = layout.relief.view;
  return !renderer.lost && Math.max(field.columns, field.rows) <= renderer.largestTexture;
};

/** Nothing of the field lies between the ends of the axes. */
const isEmpty = ({ layout }: SurfaceJob): boolean => {
  const { columns, rows } = layout.relief;
  return !(columns[1] > columns[0] && rows[1] > rows[0]);
};

class SurfaceScene implements ScenePart {
  /** What the last fine picture took, pixels read back; unknown before the first. */
  private fineMs = Infinity;
  /** Drawn once: what machines put off until then, as the last step of compiling, is done. */
  warm = false;
  /** The compilers were told at once, without a turn of the page between. */
  private hurried = false;
  private readonly scene = new Scene();
  private readonly camera = new Camera();
  private readonly uniforms = makeUniforms();
  private readonly grids: Grids = makeGrids();
  private readonly scales = new Map<ScaleName, DataTexture>();
  private readonly body: Mesh;
  private readonly slices: Mesh;
  private readonly lines: Mesh;
  private readonly curtain: Mesh;
  private readonly hems: Mesh;
  private readonly strokes: Strokes;

  constructor() {
    this.scene.matrixWorldAutoUpdate = false;
    const material = (vertexShader: string, fragmentShader: string): RawShaderMaterial =>
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader,
        fragmentShader,
        uniforms: this.uniforms,
        side: DoubleSide,
      });
    /** Painted over what is there, in depth but leaving none. */
    const glaze = (made: RawShaderMaterial): RawShaderMaterial => {
      made.transparent = true;
      made.depthWrite = false;
      made.blending = CustomBlending;
      made.blendSrc = OneFactor;
      made.blendDst = OneMinusSrcAlphaFactor;
      return made;
    };
    const ribbon = (across: boolean, defines: Record<string, string> = {}): RawShaderMaterial => {
      const made = glaze(material(ribbonVertex, ribbonFragment));
      made.uniforms = {
        ...this.uniforms,
        uAcross: { value: across },
        uLift: { value: across ? 2 * LIFT : LIFT },
      };
      made.defines = defines;
      return made;
    };
    const mesh = (drawer: string, order: number, of: RawShaderMaterial): Mesh => {
      const made = new Mesh(this.grids.ribbon(drawer, 1), of);
      made.frustumCulled = false;
      made.renderOrder = order;
      this.scene.add(made);
      return made;
    };
    this.body = mesh('slices', 0, material(bodyVertex, bodyFragment));
    this.slices = mesh('slices', 1, ribbon(false));
    this.curtain = mesh('curtain', 2, glaze(material(curtainVertex, curtainFragment)));
    this.hems = mesh('hems', 3, ribbon(false, { CURTAIN: '' }));
    this.lines = mesh('lines', 4, ribbon(true));
    this.strokes = new Strokes(glaze(material(strokeVertex, strokeFragment)));
    this.strokes.mesh.renderOrder = 4;
    this.scene.add(this.strokes.mesh);
  }

  /** While the data of the first surface are still computed, and before it is drawn. */
  prepare(renderer: SharedRenderer): void {
    if (!renderer.compile(this.scene, this.camera)) return;
    this.warm = false;
    this.hurried = false;
  }

  /** Whether this machine draws fine pictures as fast as a hand can move. */
  get isFast(): boolean {
    return this.fineMs <= QUICK_ENOUGH_MS;
  }

  /** Before what is to be drawn is known, where it is drawn at once. */
  hurry(renderer: SharedRenderer): void {
    if (this.hurried) return;
    this.hurried = true;
    for (const mesh of [this.body, this.strokes.mesh]) renderer.hurry(mesh, this.camera, this.scene);
  }

  /** Has it drawn; what is returned copies it onto the 2D canvas. Null, or false, if that cannot be done now. */
  draw(
    renderer: SharedRenderer,
    job: SurfaceJob,
    target: CanvasRenderingContext2D,
    quality: Quality,
  ): (() => boolean) | null {
    const begin = performance.now();
    if (!canDraw(renderer, job)) return null;
    if (isEmpty(job)) return () => true;
    const { width, height } = renderer.sizeOf(target);
    this.setUniforms(job, width, height, quality);
    const copy = renderer.begin(this.scene, this.camera, target, quality);
    return (
      copy &&
      (() => {
        const drawn = copy();
        if (drawn && quality === 'fine') this.fineMs = performance.now() - begin;
        return drawn;
      })
    );
  }

  /** While the page goes on; the picture is then the renderer's to be copied. */
  drawLater(
    renderer: SharedRenderer,
    job: SurfaceJob,
    target: CanvasRenderingContext2D,
    quality: Quality,
    done: (outcome: Outcome) => void,
  ): void {
    if (!canDraw(renderer, job) || isEmpty(job)) return done('failed');
    const begin = performance.now();
    const size = renderer.sizeOf(target);
    this.setUniforms(job, size.width, size.height, quality);
    renderer.renderLater(this.scene, this.camera, size, quality, (outcome) => {
      if (outcome === 'drawn') this.warm = true;
      if (outcome === 'drawn' && quality === 'fine') this.fineMs = performance.now() - begin;
      done(outcome);
    });
  }

  private setUniforms(job: SurfaceJob, width: number, height: number, quality: Quality): void {
    const { layout, textures, theme, size } = job;
    const { relief, space, plot } = layout;
    const { view, columns, rows } = relief;
    const set = (name: string, value: unknown): void => void (this.uniforms[name].value = value);
    const colour = (name: string, bytes: Triple): unknown =>
      (this.uniforms[name].value as Vector3).set(bytes[0] / 255, bytes[1] / 255, bytes[2] / 255);
    set('uValues', textures.values);
    set('uColumns', textures.columns);
    set('uRows', textures.rows);
    set('uColours', this.scaleTexture(theme.scale));
    (this.uniforms.uMatrix.value as Matrix4).fromArray(space.matrix);
    (this.uniforms.uHalf.value as Vector3).set(...relief.half);
    (this.uniforms.uWindow.value as Vector4).set(columns[0], columns[1], rows[0], rows[1]);
    const log = view.columnScale === 'log';
    const place = (name: string, [low, high]: readonly [number, number], half: number): unknown => {
      const factor = (2 * half) / (high - low);
      return (this.uniforms[name].value as Vector2).set(factor, -half - low * factor);
    };
    const [low, high] = view.columnRange;
    place('uColumnPlace', log ? [Math.log(low), Math.log(high)] : [low, high], relief.half[0]);
    place('uRowPlace', view.rowRange, relief.half[2]);
    (this.uniforms.uValueRange.value as Vector2).set(...view.valueRange);
    set('uLog', log);
    // Near to what is shown, that a time past it is told exactly.
    const lastRow = view.field.rowPositions[view.field.rows - 1];
    const rowEnd = Math.min(view.field.rowEnd, lastRow + 1);
    set('uRowEnd', rowEnd);
    (this.uniforms.uPixels.value as Vector2).set(width / 2, height / 2);
    const tones = tonesOf(theme);
    colour('uBackground', tones.background);
    colour('uNoise', tones.noise);
    colour('uHatch', tones.hatch);
    colour('uText', cssBytes(theme.text));
    const [bottom, top] = view.valueRange;
    const { isoStep } = job;
    (this.uniforms.uIso.value as Vector3).set(
      isoStep && (top - bottom) / isoStep,
      isoStep ? bottom / isoStep : 0.5,
      (top - bottom) / 0.8,
    );
    const [pale, until] = theme.dark ? [0.35, 0.75] : [0.45, 0.8];
    (this.uniforms.uStrong.value as Vector2).set(pale, 1 / (until - pale));
    set('uWallInk', theme.dark ? 0.085 : 0.06);
    set('uRatio', size.pixelRatio);
    set('uDark', theme.dark);

    // Detail by size on the screen: one vertex per few device pixels, and no more than the largest geometry has. By the
    // plot and the whole field, not by the camera or the span, so that neither builds a geometry.
    const stride = (count: number, pixels: number): number =>
      Math.max(1, Math.ceil((count - 1) / Math.min(MOST_CELLS - 1, Math.max(48, pixels * size.pixelRatio))));
    const [wide, long] = pixelsPerVertex[quality];
    const across = stride(view.field.columns, (plot.right - plot.left) / wide);
    const down = stride(view.field.rows, (plot.bottom - plot.top) / long);
    (this.uniforms.uStride.value as Vector2).set(across, down);
    const cellsOf = ([first, last]: readonly [number, number], step: number): number =>
      Math.ceil((last - Math.floor(first)) / step - 1e-9);
    const cells = [cellsOf(columns, across), cellsOf(rows, down)];
    (this.uniforms.uCells.value as Vector2).set(cells[0], cells[1]);
    // Geometries by the whole field, not by the part in view: a change of span or range builds none.
    const whole = [Math.ceil(view.field.columns / across), Math.ceil(view.field.rows / down)];
    const body = this.grids.body(Math.max(cells[0], whole[0]), Math.max(cells[1], whole[1]));
    this.body.geometry = body.geometry;
    // One row of the wall before, one after. Columns beyond the last cell collapse to nothing.
    body.geometry.setDrawRange(0, (body.cells + 2) * 6 * (cells[1] + 2));

    const most = Math.min(MOST_RIBBONS - 8, mostSlices(plot));
    const { slices, step } = sliceList(view.field.rowPositions, rows, most);
    // Quickly, the body has them as its own lines: half the triangles, and not a program more for the first picture.
    const inBody = quality === 'quick' && step > 0;
    const number = (at: number): number => positionAt(view.field.rowPositions, at) / step;
    (this.uniforms.uSlices.value as Vector4).set(
      ...(inBody
        ? ([1 / step, rowEnd / step, number(rows[0]), number(rows[1])] as const)
        : ([0, 0, 1e6, 1e6] as const)),
    );
    const ribbons: Ribbon[] = inBody
      ? []
      : slices.map(({ at, round }) => ({
          fixed: at,
          from: columns[0],
          to: columns[1],
          cssWidth: round ? 1.4 : 1,
          colour: [0, 0, 0],
          opacity: round ? -1 : -0.7,
        }));
    const steps = whole.map((count, k) => Math.max(cells[k], count));
    const { alongColumns, alongRows } = job;
    const few = quality === 'quick' && alongColumns.length + alongRows.length <= MOST_STROKES;
    const stroke =
      (alongRow: boolean) =>
      (of: Ribbon): Stroke => ({
        ribbon: of,
        across: alongRow,
        stride: alongRow ? down : across,
        lift: alongRow ? 2 * LIFT : LIFT,
      });
    this.strokes.set(
      few ? [...alongColumns.map(stroke(false)), ...alongRows.map(stroke(true))] : [],
      layout,
      { width, height, ratio: size.pixelRatio },
    );
    this.setRibbons(
      'slices',
      this.slices,
      few ? ribbons : [...ribbons, ...alongColumns],
      steps[0],
      size.pixelRatio,
    );
    this.setRibbons('lines', this.lines, few ? [] : alongRows, steps[1], size.pixelRatio);
    this.setCurtain(job, steps[0]);
    for (const { material } of this.meshes) (material as RawShaderMaterial).uniformsNeedUpdate = true;
  }

  private get meshes(): readonly Mesh[] {
    return [this.body, this.slices, this.curtain, this.hems, this.lines];
  }

  private setCurtain({ curtain, layout, theme, size }: SurfaceJob, steps: number): void {
    this.uniforms.uLimit.value = curtain;
    this.curtain.visible = curtain !== null;
    const { relief } = layout;
    const [from, to] = relief.columns;
    const colour = cssBytes(theme.text);
    /** First number: 0 at the floor, 1 at the upper edge; 2 more for the further limit. */
    const hem = (fixed: number, cssWidth: number, opacity: number): Ribbon => ({
      fixed,
      from,
      to,
      cssWidth,
      colour,
      opacity,
    });
    const hems = curtain ? [hem(0, 1.5, 0.8), hem(1, 1, 0.45), hem(2, 1, 0.5)] : [];
    this.setRibbons('hems', this.hems, hems, steps, size.pixelRatio);
    if (!curtain) return;
    const sheet = this.grids.ribbon('curtain', steps);
    sheet.instanceCount = 1;
    this.curtain.geometry = sheet;
  }

  private setRibbons(
    drawer: string,
    mesh: Mesh,
    ribbons: readonly Ribbon[],
    steps: number,
    ratio: number,
  ): void {
    const geometry: InstancedBufferGeometry = this.grids.ribbon(drawer, steps);
    const line = geometry.getAttribute('line') as InstancedBufferAttribute;
    const ink = geometry.getAttribute('ink') as InstancedBufferAttribute;
    const drawn = ribbons.filter(({ from, to }) => to > from).slice(-MOST_RIBBONS);
    drawn.forEach(({ fixed, from, to, cssWidth, colour, opacity }, k) => {
      line.setXYZW(k, fixed, from, to, cssWidth * ratio);
      ink.setXYZW(k, colour[0] / 255, colour[1] / 255, colour[2] / 255, opacity);
    });
    line.needsUpdate = true;
    ink.needsUpdate = true;
    geometry.instanceCount = drawn.length;
    mesh.geometry = geometry;
    mesh.visible = drawn.length > 0;
  }

  private scaleTexture(name: ScaleName): DataTexture {
    let texture = this.scales.get(name);
    if (!texture) {
      texture = new DataTexture(new Uint8Array(scaleTable(name)), SCALE_ENTRIES, 1);
      texture.minFilter = LinearFilter;
      texture.magFilter = LinearFilter;
      texture.needsUpdate = true;
      this.scales.set(name, texture);
    }
    return texture;
  }

  dispose(): void {
    this.grids.dispose();
    this.strokes.dispose();
    for (const texture of this.scales.values()) texture.dispose();
    for (const { material } of this.meshes) (material as RawShaderMaterial).dispose();
  }
}

/** That of a context; made with its first surface. */
export const surfaceScene = (renderer: SharedRenderer): SurfaceScene =>
  renderer.part('surface', () => new SurfaceScene());
