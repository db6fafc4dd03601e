/**
 * The one WebGL context of the page, shared by every picture in three dimensions and counted: made for the first, given
 * back with the last. It draws into a detached canvas that only grows; each picture copies its part onto its own 2D
 * canvas, so that it keeps its place among the page's layers and its picture when the context is lost.
 */
import { LinearSRGBColorSpace, Vector4, WebGLRenderer, type Camera, type Object3D, type Scene } from 'three';
import { isSoftware, ReadBack } from './read-back.js';
import { drawCounters, drawsGoOn } from './schedule.js';
import { SmoothTarget } from './smooth.js';

/**
 * How much care a picture is given: `quick` while something changes under the hand, with larger cells and ragged edges;
 * `fine` once it rests.
 */
export type Quality = 'quick' | 'fine';

/** What is drawn with the context and made once for it: shaders, geometries, textures of its own. */
export interface ScenePart {
  dispose(): void;
}

/** Drawn, or not: then whether it was put off for another picture. */
export type Outcome = 'drawn' | 'put-off' | 'failed';

/** What three tells of a program of shaders and its types do not. */
interface Program {
  isReady(): boolean;
  getUniforms(): unknown;
  getAttributes(): unknown;
}

/** A picture that the GPU still works at. */
interface Pending {
  readonly fence: WebGLSync;
  readonly size: PixelSize;
  readonly done: (outcome: Outcome) => void;
}

interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** What the pictures of a page need at most, as a rule, device pixels. */
const firstSize = (): PixelSize => ({
  width: Math.min(2048, Math.ceil(innerWidth * devicePixelRatio)),
  height: Math.min(1216, Math.ceil(608 * devicePixelRatio)),
});

/** The GPU is asked so often whether it is done, ms. */
const POLL_MS = 4;

export class SharedRenderer {
  readonly canvas: HTMLCanvasElement;
  lost = false;
  /** A program that this machine could not link: nothing can be drawn, now or later. */
  broken = false;
  /** The programs of a scene are compiled, so that drawing it waits for no compiler. */
  private compiled: 'not' | 'underway' | 'done' = 'not';
  private pending: Pending | null = null;
  private poll: ReturnType<typeof setTimeout> | undefined;
  private looking: ReturnType<typeof setTimeout> | undefined;
  private checked = 0;
  private readonly gl: WebGLRenderer;
  private readonly smooth: SmoothTarget;
  private readonly readBack: ReadBack | null;
  private readonly parts = new Map<string, ScenePart>();
  private readonly listeners = new Set<() => void>();
  private readonly onLost = (event: Event): void => {
    event.preventDefault();
    this.lost = true;
    this.compiled = 'not';
    this.finish('failed');
    for (const listener of this.listeners) listener();
  };
  private readonly onRestored = (): void => {
    this.lost = false;
    for (const listener of this.listeners) listener();
  };

  constructor(canvas: HTMLCanvasElement, context: WebGL2RenderingContext) {
    this.canvas = canvas;
    this.gl = new WebGLRenderer({ canvas, context, alpha: true, antialias: false });
    this.smooth = new SmoothTarget(this.gl);
    this.readBack = isSoftware(context) ? new ReadBack() : null;
    // Asked after every program, it waits for each compiler in turn; what did not link is found at the first rest.
    this.gl.debug.checkShaderErrors = false;
    // Our shaders write what is to be seen; one space for canvas and target makes one program of each and not two.
    this.gl.outputColorSpace = LinearSRGBColorSpace;
    this.gl.setPixelRatio(1);
    this.gl.setClearColor(0x000000, 0);
    this.gl.setScissorTest(true);
    canvas.addEventListener('webglcontextlost', this.onLost);
    canvas.addEventListener('webglcontextrestored', this.onRestored);
    drawCounters.contexts += 1;
  }

  /** No graphics card draws here, but the processor. */
  get inSoftware(): boolean {
    return this.readBack !== null;
  }

  /** Told when the context is lost and when it is back. */
  listen(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Textures and geometries alive on the GPU, for tests. */
  get memory(): { readonly textures: number; readonly geometries: number } {
    const { textures, geometries } = this.gl.info.memory;
    return { textures, geometries };
  }

  /** Loses the context on purpose, for tests; `restore` brings it back. */
  loseContext(): { restore(): void } {
    const extension = this.gl.getContext().getExtension('WEBGL_lose_context');
    extension?.loseContext();
    return { restore: () => extension?.restoreContext() };
  }

  /** Gives back the canvas's memory; the next picture makes it as large as it needs. */
  shrink(): void {
    this.gl.setSize(16, 16, false);
    this.smooth.shrink();
    this.readBack?.shrink();
  }

  /** A part by its name, made where it is not there yet; it ends with the context. */
  part<Part extends ScenePart>(name: string, make: () => Part): Part {
    const known = this.parts.get(name) as Part | undefined;
    if (known) return known;
    const made = make();
    this.parts.set(name, made);
    return made;
  }

  get largestTexture(): number {
    return this.gl.capabilities.maxTextureSize;
  }

  /** Device pixels that a picture gets. */
  sizeOf({ canvas }: CanvasRenderingContext2D): { readonly width: number; readonly height: number } {
    const most = this.largestTexture;
    return { width: Math.min(canvas.width, most), height: Math.min(canvas.height, most) };
  }

  /** Whether a picture drawn now would wait for compilers, or for the picture before it. */
  get busy(): boolean {
    return !this.lost && !this.broken && (this.compiled !== 'done' || this.pending !== null);
  }

  /** Has the programs of a scene compiled before they are needed, once for a context: then true. Nothing waits for it. */
  compile(scene: Scene, camera: Camera): boolean {
    if (this.lost || this.broken || this.compiled !== 'not') return false;
    this.compiled = 'underway';
    const inTurn = (step: () => void, milliseconds = 0): void => {
      this.looking = setTimeout(() => {
        if (this.compiled === 'underway') step();
      }, milliseconds);
    };
    const programs = (): readonly Program[] => (this.gl.info.programs ?? []) as unknown as Program[];
    // What a program takes is asked of it one by one, and of each in a turn of its own.
    const ask = (k: number): void => {
      programs()[k]?.getUniforms();
      programs()[k]?.getAttributes();
      if (k < programs().length) return inTurn(() => ask(k + 1));
      this.compiled = 'done';
      drawsGoOn();
    };
    const look = (): void => {
      if (programs().every((program) => program.isReady())) ask(0);
      else inTurn(look, POLL_MS);
    };
    // Machines without the means to ask whether a program is ready are asked whether they are done with everything.
    const whenDone = (step: () => void): void => {
      const gl = this.gl.getContext() as WebGL2RenderingContext;
      const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
      gl.flush();
      const wait = (): void => {
        if (gl.isContextLost()) return;
        if (fence && gl.getSyncParameter(fence, gl.SYNC_STATUS) !== gl.SIGNALED) return inTurn(wait, POLL_MS);
        gl.deleteSync(fence);
        step();
      };
      inTurn(wait);
    };
    // The memory first, while the GPU has nothing else to do: asked for later, it waits for the compilers.
    whenDone(() => {
      this.grow(firstSize());
      whenDone(() => {
        this.gl.compile(scene, camera);
        whenDone(look);
      });
    });
    return true;
  }

  private grow({ width, height }: PixelSize): void {
    const { canvas } = this;
    if (canvas.width < width || canvas.height < height)
      this.gl.setSize(Math.max(canvas.width, width), Math.max(canvas.height, height), false);
  }

  private draw(scene: Scene, camera: Camera, size: PixelSize, quality: Quality): void {
    this.finish('put-off');
    this.grow(size);
    const { width, height } = size;
    const frame = new Vector4(0, this.canvas.height - height, width, height);
    this.gl.setViewport(frame);
    this.gl.setScissor(frame);
    if (quality === 'fine') this.smooth.render(scene, camera, frame);
    else this.gl.render(scene, camera);
  }

  /** Draws a scene and copies it onto a 2D canvas; false if that cannot be done now. */
  render(scene: Scene, camera: Camera, target: CanvasRenderingContext2D, quality: Quality): boolean {
    return this.begin(scene, camera, target, quality)?.() ?? false;
  }

  /** Has a scene drawn for a 2D canvas, which is copied there by what is returned; null if that cannot be done now. */
  begin(
    scene: Scene,
    camera: Camera,
    target: CanvasRenderingContext2D,
    quality: Quality,
  ): (() => boolean) | null {
    if (this.lost || this.broken) return null;
    const size = this.sizeOf(target);
    this.draw(scene, camera, size, quality);
    const gl = this.gl.getContext();
    if (gl.isContextLost()) return null;
    gl.flush();
    return () => {
      // Whoever asks for a picture of care at once waits for it: its whole time can be measured, to the pixels.
      if (quality === 'fine') {
        const bottom = this.canvas.height - size.height;
        gl.readPixels(0, bottom, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
        if (!this.allLinked()) return false;
      }
      return this.copy(target, size);
    };
  }

  /** Has what a mesh is drawn by compiled while the page goes on, where nothing has been compiled yet. */
  hurry(mesh: Object3D, camera: Camera, scene: Scene): void {
    if (this.compiled !== 'done' && !this.lost && !this.broken) this.gl.compile(mesh, camera, scene);
  }

  /**
   * Draws a scene while the page goes on: `done` is called once the pixels are there, when `copy` has them at once. A
   * picture that is drawn at once meanwhile puts it off.
   */
  renderLater(
    scene: Scene,
    camera: Camera,
    size: PixelSize,
    quality: Quality,
    done: (outcome: Outcome) => void,
  ): void {
    if (this.lost || this.broken) return done('failed');
    this.draw(scene, camera, size, quality);
    const gl = this.gl.getContext() as WebGL2RenderingContext;
    const fence = gl.isContextLost() ? null : gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    if (!fence) return done('failed');
    gl.flush();
    this.pending = { fence, size, done };
    this.wait();
  }

  private wait(): void {
    this.poll = setTimeout(() => {
      const { pending } = this;
      if (!pending) return;
      const gl = this.gl.getContext() as WebGL2RenderingContext;
      if (gl.isContextLost()) return this.finish('failed');
      if (gl.getSyncParameter(pending.fence, gl.SYNC_STATUS) !== gl.SIGNALED) return this.wait();
      this.finish(this.allLinked() ? 'drawn' : 'failed');
      // Those who hoped for more draw lines from now on.
      if (this.broken) for (const listener of this.listeners) listener();
    }, POLL_MS);
  }

  /** Tells the one whose picture is under way what became of it. */
  private finish(outcome: Outcome): void {
    const { pending } = this;
    if (!pending) return;
    clearTimeout(this.poll);
    this.pending = null;
    (this.gl.getContext() as WebGL2RenderingContext).deleteSync(pending.fence);
    pending.done(outcome);
    drawsGoOn();
  }

  /** The picture drawn last, onto a 2D canvas; true, as it can always be done. */
  copy(target: CanvasRenderingContext2D, { width, height } = this.sizeOf(target)): true {
    target.save();
    target.setTransform(1, 0, 0, 1, 0, 0);
    const { canvas, readBack } = this;
    if (readBack)
      readBack.copy(
        this.gl.getContext() as WebGL2RenderingContext,
        target,
        { width, height },
        canvas.height - height,
      );
    else target.drawImage(canvas, 0, 0, width, height, 0, 0, target.canvas.width, target.canvas.height);
    target.restore();
    return true;
  }

  /** Whether every program was linked; asked once of each. */
  private allLinked(): boolean {
    const programs = this.gl.info.programs ?? [];
    if (programs.length === this.checked) return true;
    this.checked = programs.length;
    const gl = this.gl.getContext();
    this.broken = programs.some(
      ({ program }) => !gl.getProgramParameter(program as WebGLProgram, gl.LINK_STATUS),
    );
    return !this.broken;
  }

  dispose(): void {
    clearTimeout(this.looking);
    this.finish('failed');
    this.canvas.removeEventListener('webglcontextlost', this.onLost);
    this.canvas.removeEventListener('webglcontextrestored', this.onRestored);
    this.listeners.clear();
    for (const part of this.parts.values()) part.dispose();
    this.smooth.dispose();
    this.gl.dispose();
    // What is lost already cannot be lost again.
    if (!this.gl.getContext().isContextLost()) this.gl.forceContextLoss();
    drawCounters.contexts -= 1;
  }
}

let shared: { readonly renderer: SharedRenderer; users: number } | null = null;

/** The page's renderer for one more user, or null where there is no WebGL 2. Each user releases it once. */
export function acquireRenderer(): SharedRenderer | null {
  if (!shared) {
    const canvas = document.createElement('canvas');
    const context = canvas.getContext('webgl2', { alpha: true, antialias: false, premultipliedAlpha: true });
    if (!context) return null;
    shared = { renderer: new SharedRenderer(canvas, context), users: 0 };
  }
  shared.users += 1;
  return shared.renderer;
}

export function releaseRenderer(): void {
  if (!shared) return;
  shared.users -= 1;
  if (shared.users > 0) return;
  shared.renderer.dispose();
  shared = null;
}

/** The renderer alive now, for tests. */
export const currentRenderer = (): SharedRenderer | null => shared?.renderer ?? null;
