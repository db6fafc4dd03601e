/** Axes: where a value stands, where the ticks stand, and which of their labels fit. */
import { ticks } from 'd3-array';
import type { AxisScale } from './types.js';

/** One axis: values of `range` along pixels `from` to `to` (either direction). */
export interface Axis {
  readonly scale: AxisScale;
  readonly range: readonly [number, number];
  readonly from: number;
  readonly to: number;
  /** 0 at the start of the range, 1 at its end; beyond them outside it. */
  readonly fraction: (value: number) => number;
  readonly value: (fraction: number) => number;
  readonly pixel: (value: number) => number;
  readonly atPixel: (pixel: number) => number;
}

export interface Tick {
  readonly value: number;
  /** Digits after the point that its label needs. */
  readonly digits: number;
  /** Whether it may carry a label; others are drawn as short strokes or faint lines. */
  readonly major: boolean;
}

/** An axis; a logarithmic one needs a range above zero (RangeError). */
export function makeAxis(scale: AxisScale, range: readonly [number, number], from = 0, to = 1): Axis {
  const [low, high] = range;
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high && (scale === 'linear' || low > 0)))
    throw new RangeError(`An axis cannot run from ${low} to ${high} on a ${scale} scale.`);
  const logSpan = Math.log(high / low);
  const fraction =
    scale === 'log'
      ? (value: number) => Math.log(Math.max(value, Number.MIN_VALUE) / low) / logSpan
      : (value: number) => (value - low) / (high - low);
  const value =
    scale === 'log'
      ? (part: number) => low * Math.exp(part * logSpan)
      : (part: number) => low + part * (high - low);
  return {
    scale,
    range,
    from,
    to,
    fraction,
    value,
    pixel: (at) => from + (to - from) * fraction(at),
    atPixel: (at) => value((at - from) / (to - from)),
  };
}

/** Nominal third-octave centre frequencies within one decade, ISO 266:1997 (10 to 100 Hz shown). */
const thirdOctave = [10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80];
/** Nominal octave centres of the same standard, over the bass and above. */
const octaves = [16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000];

function decadesOf(steps: readonly number[], unit: number, low: number, high: number): number[] {
  const found: number[] = [];
  for (let decade = Math.floor(Math.log10(low)) - 1; decade <= Math.ceil(Math.log10(high)); decade += 1)
    for (const step of steps) found.push((step / unit) * 10 ** decade);
  return found
    .map((value) => Number(value.toPrecision(4)))
    .filter((value) => value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9));
}

/** Decimal digits that a value needs, at most three. */
function digitsOf(value: number): number {
  for (let digits = 0; digits < 3; digits += 1)
    if (Math.abs(value - Number(value.toFixed(digits))) < 1e-9 * Math.max(1, Math.abs(value))) return digits;
  return 3;
}

/** Linear ticks at 1, 2 or 5 times a power of ten, at most about `most` of them. */
export function linearTicks(range: readonly [number, number], most: number): Tick[] {
  const found = ticks(range[0], range[1], Math.max(1, Math.floor(most)));
  const digits = found.length > 1 ? digitsOf(Number((found[1] - found[0]).toPrecision(6))) : 3;
  return found.map((value) => ({
    value,
    digits: found.length > 1 ? digits : digitsOf(value),
    major: true,
  }));
}

/**
 * Logarithmic ticks: labels on the third-octave centres of ISO 266 where they fit, else on 1-2-5, else on octaves, else
 * on decades; strokes without a label on every tenth of a decade. A range too short for three of them is ticked as if
 * it were linear.
 */
export function logTicks(range: readonly [number, number], most: number): Tick[] {
  const [low, high] = range;
  const labelled = [
    decadesOf(thirdOctave, 10, low, high),
    decadesOf([1, 2, 5], 1, low, high),
    octaves.filter((value) => value >= low && value <= high),
    decadesOf([1], 1, low, high),
  ].find((values) => values.length <= most && values.length > 0);
  if (high / low < 3 || !labelled || labelled.length < 2) return linearTicks(range, most);
  const strokes = decadesOf([1, 2, 3, 4, 5, 6, 7, 8, 9], 1, low, high);
  const all = [...new Set([...labelled, ...strokes])].sort((a, b) => a - b);
  const names = new Set(labelled);
  return all.map((value) => ({ value, digits: digitsOf(value), major: names.has(value) }));
}

/** Ticks of either scale. */
export function axisTicks(scale: AxisScale, range: readonly [number, number], most: number): Tick[] {
  return scale === 'log' ? logTicks(range, most) : linearTicks(range, most);
}

export interface Span {
  /** Where its middle wants to be, pixels. */
  readonly at: number;
  readonly width: number;
  /** More important ones are placed first. */
  readonly weight: number;
}

/** Which of the labels, centred where they are, can stand without touching; the first and heavier ones win. */
export function labelsThatFit(spans: readonly Span[], gap: number): boolean[] {
  const shown = spans.map(() => false);
  const order = spans.map((_, k) => k).sort((a, b) => spans[b].weight - spans[a].weight || a - b);
  for (const k of order) {
    const span = spans[k];
    shown[k] = !spans.some(
      (other, j) => shown[j] && Math.abs(other.at - span.at) < (other.width + span.width) / 2 + gap,
    );
  }
  return shown;
}

export interface LabelledTick {
  readonly major: boolean;
  /** On the axis, pixels. */
  readonly at: number;
  /** Empty where it has none, or none that fits. */
  readonly label: string;
}

/**
 * Ticks of a horizontal axis with the labels that can stand side by side.
 *
 * @param most labels
 * @param widthOf of a label, pixels
 */
export function labelledTicks(
  axis: Axis,
  { scale, range, most }: { scale: AxisScale; range: readonly [number, number]; most: number },
  formatNumber: (value: number, digits: number) => string,
  widthOf: (label: string) => number,
): LabelledTick[] {
  const ticks = axisTicks(scale, range, most).map(({ value, digits, major }) => ({
    major,
    at: axis.pixel(value),
    label: major ? formatNumber(value, digits) : '',
  }));
  const fit = labelsThatFit(
    ticks.map(({ major, at, label }) => ({ at, width: widthOf(label), weight: major ? 1 : 0 })),
    8,
  );
  return ticks.map((tick, k) => (fit[k] ? tick : { ...tick, label: '' }));
}

export interface Placed {
  /** Centre of the label, pixels. */
  readonly at: number;
  /** 0 is the row nearest to the picture. */
  readonly row: number;
}

/**
 * Labels along one edge in up to `rows` rows within `bounds`: the heaviest first, each as near to where it wants to be
 * as is free, in the nearest row that has room within `reach` pixels. Null where none is left. Leaders stay short.
 */
export function placeLabels(
  spans: readonly Span[],
  bounds: readonly [number, number],
  rows: number,
  gap: number,
  reach = 60,
): (Placed | null)[] {
  const result: (Placed | null)[] = spans.map(() => null);
  const taken: { from: number; to: number }[][] = Array.from({ length: rows }, () => []);
  const order = spans.map((_, k) => k).sort((a, b) => spans[b].weight - spans[a].weight || a - b);
  for (const k of order) {
    const { at, width } = spans[k];
    if (width > bounds[1] - bounds[0]) continue;
    const clamp = (x: number): number => Math.min(bounds[1] - width / 2, Math.max(bounds[0] + width / 2, x));
    for (let row = 0; row < rows && !result[k]; row += 1) {
      const blocks = taken[row];
      const free = (x: number): boolean =>
        blocks.every(({ from, to }) => x + width / 2 + gap <= from || x - width / 2 - gap >= to);
      const wishes = [
        at,
        ...blocks.flatMap(({ from, to }) => [from - gap - width / 2, to + gap + width / 2]),
      ];
      const best = wishes
        .map(clamp)
        .filter(free)
        .sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0];
      if (best === undefined || Math.abs(best - at) > reach + width / 2) continue;
      blocks.push({ from: best - width / 2, to: best + width / 2 });
      result[k] = { at: best, row };
    }
  }
  return result;
}
