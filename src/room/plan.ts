import { RingdownError } from '../signal/errors.js';
import { sideBounds } from './bounds.js';
import { parseLength } from './parse.js';
import * as maths from '../signal/maths.js';

export interface PointMetres {
  readonly x: number;
  readonly y: number;
}

/** A floor plan of straight walls, and one height: what is computed where a room is not a box. */
export interface Plan {
  /** Corners in turn, either way round, the lowest x and the lowest y at 0; the last is not the first again. */
  readonly corners: readonly PointMetres[];
  readonly heightMetres: number;
}

/** More corners than this are a drawing of furniture, not of walls. */
const mostCorners = 40;
/** A wall shorter than this changes no mode of the bass by 0.1 %; it is a slip of the pen, m. */
const shortestWall = 0.05;
/** A room below this holds no listener, m2. */
const smallestArea = 1;

/**
 * A plan from its corners, either way round, checked and moved so that it begins at 0.
 *
 * @throws RingdownError `plan-corners`, `plan-side`, `plan-crossing`, `plan-area`, `room-side-bounds`
 */
export function createPlan(corners: readonly PointMetres[], heightMetres: number): Plan {
  const [from, to] = sideBounds;
  if (!(heightMetres >= from && heightMetres <= to))
    throw new RingdownError('room-side-bounds', { side: 'height', value: heightMetres, from, to });
  const open = withoutDoubles(corners);
  if (open.length < 3 || open.length > mostCorners)
    throw new RingdownError('plan-corners', { count: open.length, from: 3, to: mostCorners });
  if (open.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y)))
    throw new RingdownError('plan-form', { text: '' });
  open.forEach((corner, i) => {
    const next = open[(i + 1) % open.length];
    const length = maths.hypot(next.x - corner.x, next.y - corner.y);
    if (length < shortestWall || length > to)
      throw new RingdownError('plan-side', { wall: i + 1, value: length, from: shortestWall, to });
  });
  const crossing = firstCrossing(open);
  if (crossing) throw new RingdownError('plan-crossing', { first: crossing[0] + 1, second: crossing[1] + 1 });
  const area = signedArea(open);
  if (Math.abs(area) < smallestArea)
    throw new RingdownError('plan-area', { value: Math.abs(area), from: smallestArea });
  const left = Math.min(...open.map(({ x }) => x));
  const low = Math.min(...open.map(({ y }) => y));
  return { corners: open.map(({ x, y }) => ({ x: x - left, y: y - low })), heightMetres };
}

/**
 * Corners from text: "0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5", in metres; with decimal commas "0;0 6;0 6;3,2".
 *
 * @throws RingdownError `plan-form` with `text`
 */
export function parseCorners(text: string, unit: 'm' | 'ft' = 'm'): PointMetres[] {
  const words = text.trim().split(/\s+/).filter(Boolean);
  const corners = words.map((word) => {
    const parts = word.includes(';') ? word.split(';') : word.split(',');
    const [x, y] = parts.map((part) => parseLength(part, unit));
    if (parts.length !== 2 || !Number.isFinite(x) || !Number.isFinite(y))
      throw new RingdownError('plan-form', { text });
    return { x, y };
  });
  if (corners.length === 0) throw new RingdownError('plan-form', { text });
  return corners;
}

/**
 * One height from text. A ceiling with two is refused: cosines in height hold for a level ceiling only.
 *
 * @throws RingdownError `ceiling-sloped` with `text`, `height-form` with `text`
 */
export function parseHeight(text: string, unit: 'm' | 'ft' = 'm'): number {
  const single = parseLength(text, unit);
  if (Number.isFinite(single)) return single;
  const parts = text.split(/\s*(?:-|–|to|\.\.|\/|\s)\s*/).filter(Boolean);
  if (parts.length > 1 && parts.every((part) => Number.isFinite(parseLength(part, unit))))
    throw new RingdownError('ceiling-sloped', { text });
  throw new RingdownError('height-form', { text });
}

/** Twice counted is once: a corner equal to the one before it, and a last that closes the plan. */
function withoutDoubles(corners: readonly PointMetres[]): PointMetres[] {
  const apart = (a: PointMetres, b: PointMetres): boolean => !(maths.hypot(a.x - b.x, a.y - b.y) < 1e-9);
  const open = corners.filter((corner, i) => i === 0 || apart(corner, corners[i - 1]));
  return open.length > 1 && !apart(open[0], open[open.length - 1]) ? open.slice(0, -1) : open;
}

/** Shoelace formula, m2; positive where the corners run counter-clockwise. */
export const signedArea = (corners: readonly PointMetres[]): number =>
  corners.reduce((sum, { x, y }, i) => {
    const next = corners[(i + 1) % corners.length];
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);

export const planPerimeter = ({ corners }: Plan): number =>
  corners.reduce((sum, { x, y }, i) => {
    const next = corners[(i + 1) % corners.length];
    return sum + maths.hypot(next.x - x, next.y - y);
  }, 0);

export const planArea = ({ corners }: Plan): number => Math.abs(signedArea(corners));
export const planVolume = (plan: Plan): number => planArea(plan) * plan.heightMetres;

/** Inner angle at each corner, rad; above pi it points into the room, and the pressure bends sharply round it. */
export function cornerAngles({ corners }: Plan): number[] {
  const back = signedArea(corners) < 0;
  return corners.map(({ x, y }, i) => {
    const before = corners[(i + corners.length - 1) % corners.length];
    const next = corners[(i + 1) % corners.length];
    const turn = maths.atan2(before.y - y, before.x - x) - maths.atan2(next.y - y, next.x - x);
    const angle = turn < 0 ? turn + 2 * Math.PI : turn;
    return back ? 2 * Math.PI - angle : angle;
  });
}

/** Whether a point lies in the plan or on its edge (within 1 mm). */
export function isInside({ corners }: Pick<Plan, 'corners'>, { x, y }: PointMetres): boolean {
  let inside = false;
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i];
    const b = corners[(i + 1) % corners.length];
    if (distanceToWall(a, b, { x, y }) < 1e-3) return true;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

export function distanceToWall(a: PointMetres, b: PointMetres, { x, y }: PointMetres): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const along = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
  return maths.hypot(a.x + along * dx - x, a.y + along * dy - y);
}

/** The first two walls that cross or touch without being neighbours. */
function firstCrossing(corners: readonly PointMetres[]): [number, number] | null {
  const count = corners.length;
  const side = (a: PointMetres, b: PointMetres, p: PointMetres): number =>
    Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
  for (let i = 0; i < count; i++) {
    const [a, b] = [corners[i], corners[(i + 1) % count]];
    for (let j = i + 1; j < count; j++) {
      const [c, d] = [corners[j], corners[(j + 1) % count]];
      const neighbours = j === i + 1 || (i === 0 && j === count - 1);
      if (neighbours) {
        // Neighbours may only meet in their corner: one that folds back onto the other encloses nothing.
        const far = j === i + 1 ? d : c;
        const away = j === i + 1 ? a : b;
        if (distanceToWall(a, b, far) < 1e-6 || distanceToWall(c, d, away) < 1e-6) return [i, j];
        continue;
      }
      const crosses = side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
      const touches =
        Math.min(
          distanceToWall(a, b, c),
          distanceToWall(a, b, d),
          distanceToWall(c, d, a),
          distanceToWall(c, d, b),
        ) < 1e-6;
      if (crosses || touches) return [i, j];
    }
  }
  return null;
}

/** The four walls of a box as a plan. */
export const boxPlan = (lengthMetres: number, widthMetres: number, heightMetres: number): Plan =>
  createPlan(
    [
      { x: 0, y: 0 },
      { x: lengthMetres, y: 0 },
      { x: lengthMetres, y: widthMetres },
      { x: 0, y: widthMetres },
    ],
    heightMetres,
  );
