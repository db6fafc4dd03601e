import { describe, expect, it } from 'vitest';
import {
  boxModes,
  createRoom,
  modeCount,
  modeDecayTime,
  modeFrequency,
  parsePosition,
  parseRoomSize,
  predictRoom,
  speedOfSoundCramer,
  speedOfSoundIso9613,
  transitionFrequency,
  type ModeOrder,
  type RoomSize,
} from '../../src/room/index.js';

const size = (lengthMetres: number, widthMetres: number, heightMetres: number): RoomSize => ({
  lengthMetres,
  widthMetres,
  heightMetres,
});
const feet = (l: number, w: number, h: number) => size(l * 0.3048, w * 0.3048, h * 0.3048);
const printed = (value: number, digits: number) => Number(value.toFixed(digits));

describe('modes of a box against published and worked tables', () => {
  it('gives table 6-4 of the Handbook for Sound Engineers (Ballou): 16 x 12 x 8 ft at 1130 ft/s', () => {
    const room = feet(16, 12, 8);
    const speed = 1130 * 0.3048;
    const at = (order: ModeOrder) => modeFrequency(order, room, speed);
    const table: [ModeOrder, number][] = [
      [[1, 0, 0], 35.31],
      [[2, 0, 0], 70.63],
      [[3, 0, 0], 105.94],
      [[0, 1, 0], 47.08],
      [[0, 2, 0], 94.17],
      [[0, 3, 0], 141.25],
      [[0, 0, 1], 70.63],
      [[0, 0, 2], 141.25],
    ];
    for (const [order, value] of table) expect(Math.abs(at(order) - value)).toBeLessThanOrEqual(0.00501);
  });

  it('gives the rectangular cavity of the lecture notes, 5 x 4 x 3 m at 343 m/s, but for their misprint of (1,1,1)', () => {
    const modes = boxModes(size(5, 4, 3), 343, 81);
    const table: [string, number][] = [
      ['1,0,0', 34.3],
      ['0,1,0', 42.9],
      ['1,1,0', 54.9],
      ['0,0,1', 57.2],
      ['1,0,1', 66.7],
      ['2,0,0', 68.6],
      ['0,1,1', 71.5],
      ['1,1,1', 79.3],
      ['2,1,0', 80.9],
    ];
    expect(modes.map((mode) => [mode.order.join(), printed(mode.frequencyHz, 1)])).toEqual(table);
  });

  it("gives Kuttruff's room, 4.7 x 4.1 x 3.1 m at 340 m/s (room from memory, values derived)", () => {
    const table =
      '36.17 1,0,0; 41.46 0,1,0; 54.84 0,0,1; 55.02 1,1,0; 65.69 1,0,1; 68.75 0,1,1; 72.34 2,0,0; 77.68 1,1,1; 82.93 0,2,0; 83.38 2,1,0; 90.47 1,2,0; 90.78 2,0,1; 99.42 0,2,1; 99.80 2,1,1; 105.79 1,2,1; 108.51 3,0,0; 109.68 0,0,2; 110.05 2,2,0; 115.49 1,0,2; 116.16 3,1,0';
    const modes = boxModes(size(4.7, 4.1, 3.1), 340, 116.2);
    expect(modes.map((mode) => `${mode.frequencyHz.toFixed(2)} ${mode.order.join()}`).join('; ')).toBe(table);
  });

  it('gives the exercise with equal frequencies, 3.12 x 4.69 x 6.24 m at 343.2 m/s (values derived)', () => {
    const modes = boxModes(size(3.12, 4.69, 6.24), 343.2, 73.5);
    const table = ['27.50', '36.59', '45.77', '55.00', '55.00', '61.49', '66.06', '66.06', '71.55', '73.18'];
    expect(modes.map((mode) => mode.frequencyHz.toFixed(2))).toEqual(table);
  });

  it('counts as the worked counts do, and the formula of Weyl and Bolt stays near', () => {
    expect(boxModes(size(5, 4, 3), 343, 100)).toHaveLength(13);
    expect(boxModes(size(5, 4, 3), 343, 199.9)).toHaveLength(76);
    expect(printed(modeCount(size(5, 4, 3), 343, 200), 2)).toBe(78.42);
    expect(boxModes(size(4.7, 4.1, 3.1), 340, 200)).toHaveLength(81);
    expect(printed(modeCount(size(4.7, 4.1, 3.1), 340, 200), 2)).toBe(79.73);
  });
});

describe('air and walls', () => {
  it('gives Cramer 1993 (J. Acoust. Soc. Am. 93:2510) at 20 C, 101.325 kPa and 400 ppm within 0.001 m/s', () => {
    expect(Math.abs(speedOfSoundCramer(20, 0) - 343.359)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(speedOfSoundCramer(20, 50) - 343.987)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(speedOfSoundCramer(20, 100) - 344.613)).toBeLessThanOrEqual(0.001);
  });

  it('moves a 50 Hz mode by about 0.9 Hz from 15 to 25 C (ISO 9613-1, derived)', () => {
    expect(speedOfSoundIso9613(20)).toBeCloseTo(343.2, 9);
    expect(printed((50 * speedOfSoundIso9613(25)) / speedOfSoundIso9613(15) - 50, 1)).toBe(0.9);
  });

  it('damps each kind of mode as the formula of Morse and Bolt 1944: 5 x 4 x 3 m, 0.1 everywhere, 343 m/s', () => {
    const table: [ModeOrder, number][] = [
      [[1, 0, 0], 1.638],
      [[0, 1, 0], 1.559],
      [[0, 0, 1], 1.443],
      [[1, 1, 0], 1.306],
      [[1, 0, 1], 1.224],
      [[0, 1, 1], 1.179],
      [[1, 1, 1], 1.028],
    ];
    const walls = [0.1, 0.1, 0.1, 0.1, 0.1, 0.1] as const;
    for (const [order, seconds] of table)
      expect(printed(modeDecayTime(order, size(5, 4, 3), 343, walls)!, 3)).toBe(seconds);
  });

  it('lets axial, tangential and oblique modes of a uniform cube ring as 1.5 : 1.2 : 1', () => {
    const walls = [0.2, 0.2, 0.2, 0.2, 0.2, 0.2] as const;
    const time = (order: ModeOrder) => modeDecayTime(order, size(4, 4, 4), 343, walls)!;
    expect(time([1, 0, 0]) / time([1, 1, 1])).toBeCloseTo(1.5, 12);
    expect(time([1, 1, 0]) / time([1, 1, 1])).toBeCloseTo(1.2, 12);
  });

  it('scales frequencies with the speed of sound and against the size', () => {
    const modes = (scale: number, speed: number) =>
      boxModes(size(5.3 * scale, 4.1 * scale, 2.7 * scale), speed, (150 / scale) * (speed / 343));
    const reference = modes(1, 343);
    modes(2, 360).forEach((mode, i) =>
      expect(mode.frequencyHz).toBeCloseTo((reference[i].frequencyHz / 2) * (360 / 343), 9),
    );
  });

  it('puts the transition frequency of 60 m3 and 0.4 s at 163 Hz (2000 sqrt(T/V), Schroeder 1996)', () => {
    expect(transitionFrequency(0.4, 60)).toBeCloseTo(163.3, 1);
    const room = createRoom({ size: size(5, 4, 3), absorption: 0.1 });
    expect(predictRoom(room, { toHz: 100 }).transitionFrequencyHz).toBeGreaterThan(200);
  });
});

describe('what is typed', () => {
  it('reads a decimal comma as a decimal sign, never as thousands', () => {
    expect(parseRoomSize('4,50x3,2x2,7').lengthMetres).toBe(4.5);
    expect(parseRoomSize('5.3 × 4.1 × 2.7 m')).toEqual(size(5.3, 4.1, 2.7));
    expect(parseRoomSize('16x12x8 ft').lengthMetres).toBeCloseTo(4.8768, 9);
    expect(parsePosition('0,5 1,2 1')).toEqual({ x: 0.5, y: 1.2, z: 1 });
  });

  it('refuses what is no room with one code', () => {
    for (const text of ['', '5x4', '5x4x', 'axbxc', '1.234,5x4x3', '5x4x3x2'])
      expect(() => parseRoomSize(text), text).toThrow(expect.objectContaining({ code: 'room-size-form' }));
    expect(() => parseRoomSize('450x4x3')).toThrow(expect.objectContaining({ code: 'room-side-bounds' }));
  });
});
