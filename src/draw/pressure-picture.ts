/** A signed shape in plan and, under it at the same scale, in a section: colours, lines of equal value, places. */
import { CHART_TEXT, drawLetters, type ChartSize } from './chart-frame.js';
import { contourSegments, type GridValues } from './contours.js';
import type { Label } from './letters.js';
import type { Pen } from './pen.js';
import { isDrawable, fitCanvas, type Box, type DrawSize, type Point } from './picture.js';
import { drawPlace, placeLabel, type PlanPlace } from './plan.js';
import { filled, signedPixels, signedTable } from './signed-image.js';
import type { DrawTheme } from './types.js';

export interface PressurePlace extends PlanPlace {
  readonly z: number;
}

export interface PressurePicture {
  readonly lengthMetres: number;
  readonly widthMetres: number;
  readonly heightMetres: number;
  /** Walls of the plan in turn, m. */
  readonly corners: readonly Point[];
  /** Seen from above at the height of the cursor, rows along y. */
  readonly plan: GridValues & { readonly values: Float32Array };
  /** Seen from the side at the y of the cursor, rows along z. */
  readonly section: GridValues & { readonly values: Float32Array };
  readonly cursor: { readonly x: number; readonly y: number; readonly z: number };
  readonly places: readonly PressurePlace[];
  readonly planLabel: string;
  readonly sectionLabel: string;
}

export interface PressureLayout {
  readonly plan: Box;
  readonly section: Box;
  readonly pixelsPerMetre: number;
  /** Where a point lies in the room: x and y on the plan, x and z on the section. */
  toRoom(xCss: number, yCss: number): { readonly x: number; readonly y?: number; readonly z?: number } | null;
  placeAt(xCss: number, yCss: number): number | null;
}

const top = 24;
const between = 44;
const bottom = 14;
const side = 16;

type Measures = Pick<PressurePicture, 'lengthMetres' | 'widthMetres' | 'heightMetres' | 'places'>;

/** Plan above section, both as large as fits. */
export function pressureLayout(picture: Measures, size: ChartSize): PressureLayout {
  const { lengthMetres: l, widthMetres: w, heightMetres: h } = picture;
  const scale = Math.max(
    4,
    Math.min((size.cssWidth - 2 * side) / l, (size.cssHeight - top - between - bottom) / (w + h)),
  );
  const left = (size.cssWidth - scale * l) / 2;
  const right = left + scale * l;
  const free = Math.max(0, size.cssHeight - top - between - bottom - scale * (w + h));
  const plan: Box = { left, right, top: top + free / 2, bottom: top + free / 2 + scale * w };
  const section: Box = { left, right, top: plan.bottom + between, bottom: plan.bottom + between + scale * h };
  const within = (box: Box, x: number, y: number): boolean =>
    x >= box.left - 0.5 && x <= box.right + 0.5 && y >= box.top - 0.5 && y <= box.bottom + 0.5;
  const clamp = (value: number, to: number): number => Math.min(to, Math.max(0, value));
  return {
    ...{ plan, section, pixelsPerMetre: scale },
    toRoom(x, y) {
      const along = clamp((x - left) / scale, l);
      if (within(plan, x, y)) return { x: along, y: clamp((plan.bottom - y) / scale, w) };
      if (within(section, x, y)) return { x: along, z: clamp((section.bottom - y) / scale, h) };
      return null;
    },
    placeAt(x, y) {
      const near = picture.places
        .map((place, k) => ({
          k,
          away: Math.hypot(left + place.x * scale - x, plan.bottom - place.y * scale - y),
        }))
        .filter(({ away }) => away <= 11)
        .sort((a, b) => a.away - b.away)[0];
      return near ? near.k : null;
    },
  };
}

/** One grid made for one canvas: scaled by the browser, since the grid is finer than what is to be seen in it. */
export class SignedLayer {
  readonly #canvas = document.createElement('canvas');
  #image: ImageData | null = null;
  #values: Float32Array | null = null;
  #from: Float32Array | null = null;

  draw(
    context: CanvasRenderingContext2D,
    { columns, rows, values }: GridValues & { readonly values: Float32Array },
    box: Box,
    factor: number,
    table: Uint8ClampedArray,
  ): void {
    if (this.#canvas.width !== columns || this.#canvas.height !== rows || !this.#image) {
      Object.assign(this.#canvas, { width: columns, height: rows });
      this.#image = new ImageData(columns, rows);
    }
    if (this.#from !== values) {
      this.#from = values;
      this.#values = values.some((value) => Number.isNaN(value)) ? filled(values, columns) : values;
    }
    signedPixels(this.#values!, factor, table, this.#image.data);
    this.#canvas.getContext('2d')!.putImageData(this.#image, 0, 0);
    context.imageSmoothingEnabled = true;
    // Points stand on the walls, so that half a pixel of the grid lies outside on every side; y runs upwards.
    const [dx, dy] = [(box.right - box.left) / (columns - 1), (box.bottom - box.top) / (rows - 1)];
    context.save();
    context.translate(box.left - dx / 2, box.bottom + dy / 2);
    context.scale(1, -1);
    context.drawImage(this.#canvas, 0, 0, dx * columns, dy * rows);
    context.restore();
  }
}

/** The colours alone, `factor` times the shape: what changes while it swings. */
export function drawPressureColours(
  context: CanvasRenderingContext2D,
  picture: PressurePicture,
  layers: readonly [SignedLayer, SignedLayer],
  factor: number,
  theme: DrawTheme,
  size: DrawSize,
): void {
  fitCanvas(context.canvas, size);
  const { pixelRatio } = size;
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  context.fillStyle = theme.background;
  context.fillRect(0, 0, size.cssWidth, size.cssHeight);
  if (!isDrawable(size)) return;
  const layout = pressureLayout(picture, size);
  const table = signedTable(theme);
  const { plan, section, pixelsPerMetre } = layout;
  context.save();
  context.beginPath();
  picture.corners.forEach(({ x, y }, k) => {
    const at = [plan.left + x * pixelsPerMetre, plan.bottom - y * pixelsPerMetre] as const;
    if (k === 0) context.moveTo(...at);
    else context.lineTo(...at);
  });
  context.closePath();
  context.clip();
  layers[0].draw(context, picture.plan, plan, factor, table);
  context.restore();
  for (const { from, to } of sectionRuns(picture)) {
    context.save();
    context.beginPath();
    context.rect(
      section.left + from * pixelsPerMetre,
      section.top,
      (to - from) * pixelsPerMetre,
      section.bottom - section.top,
    );
    context.clip();
    layers[1].draw(context, picture.section, section, factor, table);
    context.restore();
  }
}

/** Where the section runs within the walls, m along x. */
export function sectionRuns({
  corners,
  cursor,
}: Pick<PressurePicture, 'corners' | 'cursor'>): { from: number; to: number }[] {
  // On a wall itself the line would cross its corners: a hair beside it, it does not.
  const ys = corners.map(({ y }) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const y = Math.min(high - 1e-6, Math.max(low + 1e-6, cursor.y + 1e-7));
  const cuts = corners
    .flatMap((a, k) => {
      const b = corners[(k + 1) % corners.length];
      return a.y > y === b.y > y ? [] : [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)];
    })
    .sort((a, b) => a - b);
  return Array.from({ length: cuts.length >> 1 }, (_, k) => ({ from: cuts[2 * k], to: cuts[2 * k + 1] }));
}

/** Lines kept with the grid they were found in: they do not change while it swings. */
const lines = new WeakMap<Float32Array, readonly { level: number; segments: Float64Array }[]>();
const levels = [-0.5, 0, 0.5];

function linesOf(grid: GridValues & { readonly values: Float32Array }) {
  let found = lines.get(grid.values);
  if (!found) {
    found = levels.map((level) => ({ level, segments: contourSegments(grid, level) }));
    lines.set(grid.values, found);
  }
  return found;
}

/** Everything over the colours. */
export function drawPressureLines(
  pen: Pen,
  picture: PressurePicture,
  theme: DrawTheme,
  size: ChartSize,
): PressureLayout {
  const layout = pressureLayout(picture, size);
  const { plan, section, pixelsPerMetre: scale } = layout;
  const title = { colour: theme.text, size: CHART_TEXT };
  for (const [grid, box] of [
    [picture.plan, plan],
    [picture.section, section],
  ] as const)
    drawLines(pen, grid, box, theme);
  const walls = picture.corners.flatMap(({ x, y }) => [plan.left + x * scale, plan.bottom - y * scale]);
  pen.line([...walls, walls[0], walls[1], walls[2], walls[3]], { colour: theme.text, width: 2 });
  for (const { from, to } of sectionRuns(picture)) {
    const [a, b] = [section.left + from * scale, section.left + to * scale];
    pen.line(
      [a, section.top, b, section.top, b, section.bottom, a, section.bottom, a, section.top, b, section.top],
      {
        colour: theme.text,
        width: 2,
      },
    );
  }
  pen.text(picture.planLabel, plan.left, plan.top - 9, title);
  pen.text(picture.sectionLabel, section.left, section.top - 9, title);
  drawCursor(pen, picture, theme, layout);
  const labels: Label[] = [];
  const obstacles: Box[] = [];
  for (const place of picture.places) {
    const at = { x: plan.left + place.x * scale, y: plan.bottom - place.y * scale };
    drawPlace(pen, place, at, theme);
    obstacles.push({ left: at.x - 7, right: at.x + 7, top: at.y - 7, bottom: at.y + 7 });
    if (place.label) labels.push(placeLabel(place, at, theme));
    const beside = { x: at.x, y: section.bottom - place.z * scale };
    drawPlace(pen, place, beside, theme);
  }
  drawLetters(pen, labels, theme, size, obstacles);
  return layout;
}

function drawLines(
  pen: Pen,
  grid: GridValues & { readonly values: Float32Array },
  box: Box,
  theme: DrawTheme,
): void {
  const [dx, dy] = [(box.right - box.left) / (grid.columns - 1), (box.bottom - box.top) / (grid.rows - 1)];
  for (const { level, segments } of linesOf(grid)) {
    const style =
      level === 0 ? { colour: theme.text, width: 1.75 } : { colour: theme.text, width: 1, opacity: 0.6 };
    for (let k = 0; k < segments.length; k += 4) {
      // Below zero every other piece is left out: dashed, however short the pieces are.
      if (level < 0 && (k / 4) % 2 === 1) continue;
      pen.line(
        [
          box.left + segments[k] * dx,
          box.bottom - segments[k + 1] * dy,
          box.left + segments[k + 2] * dx,
          box.bottom - segments[k + 3] * dy,
        ],
        style,
      );
    }
  }
}

function drawCursor(pen: Pen, { cursor }: PressurePicture, theme: DrawTheme, layout: PressureLayout): void {
  const { plan, section, pixelsPerMetre: scale } = layout;
  const x = plan.left + cursor.x * scale;
  const y = plan.bottom - cursor.y * scale;
  const z = section.bottom - cursor.z * scale;
  const style = { colour: theme.accent, width: 1, opacity: 0.9 };
  pen.line([plan.left, y, plan.right, y], { ...style, dash: [2, 3] });
  pen.line([section.left, z, section.right, z], { ...style, dash: [2, 3] });
  for (const at of [y, z]) {
    pen.circle(x, at, 5, null, { colour: theme.background, width: 4, opacity: 0.7 });
    pen.circle(x, at, 5, null, { colour: theme.accent, width: 2 });
  }
}
