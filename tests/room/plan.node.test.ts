import { describe, expect, it } from 'vitest';
import {
  createPlan,
  isInside,
  parseCorners,
  parseHeight,
  planArea,
  planVolume,
} from '../../src/room/index.js';

const corners = '0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5';
const code = (expected: string) => expect.objectContaining({ code: expected }) as Error;

describe('a floor plan', () => {
  it('is read from its corners, with decimal points or commas, in metres or feet', () => {
    const plan = createPlan(parseCorners(corners), 2.4);
    expect(planArea(plan)).toBeCloseTo(6 * 3.2 + 3.5 * 1.8, 9);
    expect(planVolume(plan)).toBeCloseTo(61.2, 9);
    expect(parseCorners('0;0 6;0 6;3,2 3,5;3,2 3,5;5 0;5')).toEqual(parseCorners(corners));
    expect(parseCorners('0,0 10ft,0')[1].x).toBeCloseTo(3.048, 9);
    expect(parseHeight('2,4')).toBe(2.4);
    expect(parseHeight('8 ft')).toBeCloseTo(2.4384, 9);
  });

  it('is the same whichever way round, wherever it begins, closed or not', () => {
    const plan = createPlan(parseCorners(corners), 2.4);
    const back = createPlan([...parseCorners(corners)].reverse(), 2.4);
    expect(new Set(back.corners.map(({ x, y }) => `${x},${y}`))).toEqual(
      new Set(plan.corners.map(({ x, y }) => `${x},${y}`)),
    );
    expect(planArea(back)).toBeCloseTo(planArea(plan), 9);
    expect(createPlan(parseCorners(`${corners} 0,0`), 2.4)).toEqual(plan);
    const moved = createPlan(
      parseCorners(corners).map(({ x, y }) => ({ x: x - 3, y: y + 8 })),
      2.4,
    );
    moved.corners.forEach(({ x, y }, i) => {
      expect(x).toBeCloseTo(plan.corners[i].x, 9);
      expect(y).toBeCloseTo(plan.corners[i].y, 9);
    });
  });

  it('knows what lies inside', () => {
    const plan = createPlan(parseCorners(corners), 2.4);
    expect(isInside(plan, { x: 1, y: 4.5 })).toBe(true);
    expect(isInside(plan, { x: 5, y: 4 })).toBe(false);
    expect(isInside(plan, { x: 3.5, y: 4 })).toBe(true);
    expect(isInside(plan, { x: 6, y: 0 })).toBe(true);
  });

  it('is refused with a sentence where it is none', () => {
    const make =
      (text: string, height = 2.4) =>
      () =>
        createPlan(parseCorners(text), height);
    expect(make('')).toThrow(code('plan-form'));
    expect(make('0,0 6 6,3')).toThrow(code('plan-form'));
    expect(make('0,0 6,0')).toThrow(code('plan-corners'));
    expect(make('0,0 6,0 0,4 6,4')).toThrow(code('plan-crossing'));
    // A wall that folds back on the one before it.
    expect(make('0,0 6,0 6,4 6,1 0,4')).toThrow(code('plan-crossing'));
    expect(make('0,0 6,0 6,0.01 0,4')).toThrow(code('plan-side'));
    expect(make('0,0 600,0 600,4 0,4')).toThrow(code('plan-side'));
    expect(make('0,0 1,0 1,0.5 0,0.5')).toThrow(code('plan-area'));
    expect(make(corners, 0.5)).toThrow(code('room-side-bounds'));
  });

  it('with a sloped or stepped ceiling is said to be outside what can be computed', () => {
    for (const text of ['2.4-3.1', '2,4 to 3,1', '2.4/3.1', '2.4 3.1'])
      expect(() => parseHeight(text), text).toThrow(code('ceiling-sloped'));
    expect(() => parseHeight('high')).toThrow(code('height-form'));
  });
});
