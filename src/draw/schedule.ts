/**
 * One queue of pictures waiting to be drawn, for the whole page. A frame is asked for only while something waits: there
 * is no standing loop. Each frame stops after its budget and leaves the rest to the next, so that a page of many
 * pictures stays responsive while they fill.
 */

export interface Drawable {
  /** Draws if it is dirty and visible. */
  drawNow(): void;
  /** Instead, where the queue asks: what takes long may come later. */
  drawSoon?(): void;
  /** What draws it is not ready, or at work: it waits until `drawsGoOn` is called. */
  readonly held?: boolean;
  /** Draws once more with care, after it was drawn quickly. */
  refine?(): void;
}

/** Counted for tests and for the bench: never reset by the library. */
export const drawCounters = {
  /** Pictures drawn, of any kind. */
  frames: 0,
  /** WebGL contexts alive. */
  contexts: 0,
  /** Surface grids built; a change of data, limits, axes or camera builds none. */
  geometries: 0,
  /** Data textures sent to the GPU. */
  uploads: 0,
  /** Animation frames asked for. */
  requests: 0,
  /** Pictures alive. */
  pictures: 0,
};

/** Milliseconds of drawing per animation frame before the rest waits for the next one. */
const FRAME_BUDGET_MS = 24;

const waiting = new Set<Drawable>();
let pending = 0;

function run(): void {
  pending = 0;
  const start = performance.now();
  for (const picture of waiting) {
    if (picture.held) continue;
    waiting.delete(picture);
    if (picture.drawSoon) picture.drawSoon();
    else picture.drawNow();
    if (performance.now() - start > FRAME_BUDGET_MS) break;
  }
  ask();
}

/** None waits but those that are held. */
const resting = (pictures: ReadonlySet<Drawable>): boolean => [...pictures].every(({ held }) => held);

/** Those that were held may be drawn now. */
export function drawsGoOn(): void {
  ask();
  if (coarse.size > 0 && refining === 0 && timer === undefined) restLater();
}

function ask(): void {
  if (pending !== 0 || resting(waiting)) return;
  drawCounters.requests += 1;
  pending = requestAnimationFrame(run);
}

/** Draws the picture in one of the next frames. */
export function queueDraw(picture: Drawable): void {
  waiting.add(picture);
  ask();
}

/** How long everything must rest before quick pictures are drawn again with care, ms. */
const REST_MS = 140;

const coarse = new Set<Drawable>();
let timer: ReturnType<typeof setTimeout> | undefined;

function restLater(): void {
  clearTimeout(timer);
  timer = coarse.size > 0 ? setTimeout(refineNext, REST_MS) : undefined;
}

/** One picture per frame, so that a hand that comes back is not kept waiting. */
function refineNext(): void {
  timer = undefined;
  if (waiting.size > 0) return restLater();
  if (resting(coarse)) return;
  drawCounters.requests += 1;
  refining = requestAnimationFrame(() => {
    refining = 0;
    const picture = [...coarse].find(({ held }) => !held);
    if (picture && waiting.size === 0) {
      coarse.delete(picture);
      picture.refine?.();
    }
    if (coarse.size === 0) return;
    if (waiting.size > 0) restLater();
    else refineNext();
  });
}

let refining = 0;

/** Has a picture that was drawn quickly drawn with care once everything rests. */
export function refineSoon(picture: Drawable): void {
  coarse.add(picture);
  if (refining === 0) restLater();
}

/** Takes it off the queues: for its disposal, or because it has been drawn with care. */
export function dropRefine(picture: Drawable): void {
  coarse.delete(picture);
  if (coarse.size > 0) return;
  clearTimeout(timer);
  cancelAnimationFrame(refining);
  timer = undefined;
  refining = 0;
}

/** Takes it off the queue, for its disposal. */
export function dropDraw(picture: Drawable): void {
  dropRefine(picture);
  waiting.delete(picture);
  if (waiting.size === 0 && pending !== 0) {
    cancelAnimationFrame(pending);
    pending = 0;
  }
}
