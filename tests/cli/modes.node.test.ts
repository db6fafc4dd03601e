import { describe, expect, it } from 'vitest';
import { command } from '../support/command.js';

interface RoomDocument {
  version: number;
  room: {
    size: number[];
    volume: number;
    speedOfSound: number;
    transitionFrequency: number | null;
    modes: { order: number[]; kind: string; frequency: number; decayTime: number | null }[];
  };
}

const json = async (...words: string[]): Promise<RoomDocument> => {
  const { status, out, err } = await command(['modes', ...words, '--json']);
  expect(err).toBe('');
  expect(status).toBe(0);
  return JSON.parse(out) as RoomDocument;
};

describe('ringdown modes', () => {
  it('prints the documented fields and no others', async () => {
    const { version, room } = await json(
      '--room',
      '5x4x3',
      '--speed',
      '343',
      '--absorption',
      '0.1',
      '--to',
      '80',
    );
    expect(version).toBe(1);
    expect(Object.keys(room)).toEqual(['size', 'volume', 'speedOfSound', 'transitionFrequency', 'modes']);
    expect(room.size).toEqual([5, 4, 3]);
    expect(room.volume).toBeCloseTo(60, 9);
    expect(room.speedOfSound).toBe(343);
    for (const mode of room.modes)
      expect(Object.keys(mode)).toEqual(['order', 'kind', 'frequency', 'decayTime']);
  });

  it('agrees with lecture notes on the rectangular cavity of 5 x 4 x 3 m, and with Morse and Bolt (1944) for its decay', async () => {
    const { room } = await json('--room', '5x4x3', '--speed', '343', '--absorption', '0.1', '--to', '80');
    // Frequencies as printed in the notes, less their misprint of (1,1,1); decay times derived from the formula.
    const table: [number[], number, number][] = [
      [[1, 0, 0], 34.3, 1.638],
      [[0, 1, 0], 42.9, 1.559],
      [[1, 1, 0], 54.9, 1.306],
      [[0, 0, 1], 57.2, 1.443],
      [[1, 0, 1], 66.7, 1.224],
      [[2, 0, 0], 68.6, 1.638],
      [[1, 1, 1], 79.26, 1.028],
    ];
    for (const [order, frequency, decayTime] of table) {
      const mode = room.modes.find((one) => one.order.join() === order.join());
      expect(mode?.frequency, order.join()).toBeCloseTo(frequency, 0);
      expect(Math.abs(mode!.frequency - frequency)).toBeLessThanOrEqual(0.051);
      expect(mode?.decayTime, order.join()).toBeCloseTo(decayTime, 3);
    }
  });

  it('reads sides in feet, as in Table 6-4 of the Handbook for Sound Engineers (16 x 12 x 8 ft, 1130 ft/s)', async () => {
    const { room } = await json('--room', '16x12x8 ft', '--speed', String(1130 * 0.3048), '--to', '145');
    const axial = room.modes
      .filter(({ kind }) => kind === 'axial')
      .map(({ frequency }) => frequency.toFixed(2));
    expect(axial).toEqual([
      '35.31',
      '47.08',
      '70.63',
      '70.63',
      '94.17',
      '105.94',
      '141.25',
      '141.25',
      '141.25',
    ]);
  });

  it('reads a decimal comma as a decimal sign in every number', async () => {
    const comma = await json(
      '--room',
      '5,3x4,1x2,7',
      '--temperature',
      '21,5',
      '--to',
      '90,5',
      '--absorption',
      '0,1',
    );
    const point = await json(
      '--room',
      '5.3x4.1x2.7',
      '--temperature',
      '21.5',
      '--to',
      '90.5',
      '--absorption',
      '0.1',
    );
    expect(comma).toEqual(point);
  });

  it('leaves decay times and transition null where no absorption is given', async () => {
    const { room } = await json('--room', '5x4x3');
    expect(room.transitionFrequency).toBeNull();
    expect(room.modes.every(({ decayTime }) => decayTime === null)).toBe(true);
    expect(room.speedOfSound).toBeCloseTo(343.2, 6); // ISO 9613-1 at 20 degrees
  });

  it('takes six coefficients, one per wall', async () => {
    const { room } = await json(
      '--room',
      '5x4x3',
      '--absorption',
      '0.3,0.3,0.02,0.02,0.02,0.02',
      '--to',
      '45',
    );
    const [length, width] = room.modes;
    expect(length.decayTime! < width.decayTime!).toBe(true);
  });

  it('prints a table for the eye', async () => {
    const { out } = await command(['modes', '--room', '5x4x3', '--speed', '343', '--to', '45']);
    expect(out).toContain('34.30  1 0 0');
    expect(out).toContain('rigid box');
  });
});

describe('ringdown modes of a plan, and at seats', () => {
  const plan = ['--plan', '0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5', '--height', '2.4'];

  it('names the waves of the plan and of the height, with the fineness of the mesh', async () => {
    const { room } = await json(...plan, '--to', '100');
    expect(room.volume).toBeCloseTo(61.2, 6);
    expect((room as unknown as { plan: { meshError: number } }).plan.meshError).toBeLessThan(0.001);
    const upright = room.modes.find(({ order }) => order.join() === '0,0,1')!;
    expect(upright.frequency).toBeCloseTo(343.2 / 4.8, 6);
    expect(upright.kind).toBe('axial');
    expect(room.modes[0]).toMatchObject({ order: [1, 0, 0], kind: 'plan' });
    const { status, out } = await command(['modes', ...plan, '--to', '80']);
    expect(status).toBe(0);
    expect(out).toContain('finite elements');
  });

  it('gives the level at each seat from each source, and names the nodes', async () => {
    const words = ['--room', '6x4.5x2.6', '--to', '60', '--seat', '3,1.4,1.2', '--seat', '0,0,0'];
    const document = (await json(...words)) as unknown as {
      levels: { shape: number; level: number | null }[][][];
      notes: { code: string; number: number; order: string; message: string }[];
    };
    expect(document.levels).toHaveLength(4);
    for (const [bySeat] of document.levels) {
      expect(bySeat).toHaveLength(2);
      expect(Math.abs(bySeat[1].shape)).toBeCloseTo(1, 9);
      expect(bySeat[1].level).toBeNull();
    }
    expect(document.notes.map(({ number, order }) => [number, order])).toEqual([
      [1, '(1,0,0)'],
      [1, '(1,1,0)'],
    ]);
    expect(document.notes[0].message).toMatch(/^Seat 1 sits at or near a pressure node/);
    const { out } = await command(['modes', ...words, '--walls', 'plasterboard-on-studs']);
    expect(out).toMatch(/28\.60 .* node /);
    expect(out).toContain('from memory');
  });

  it('refuses a sloped ceiling, a plan without height, crossing walls and a seat outside, each in one sentence', async () => {
    const refused = async (...words: string[]): Promise<string> => {
      const { status, out, err } = await command(['modes', ...words]);
      expect(status).toBe(2);
      expect(out).toBe('');
      expect(err.trim().split('\n')).toHaveLength(1);
      return err;
    };
    expect(await refused('--plan', plan[1], '--height', '2.4-3.1')).toContain('sloped');
    expect(await refused('--plan', plan[1])).toContain('--height');
    expect(await refused('--plan', '0,0 6,0 0,4 6,4', '--height', '2.4')).toContain('cross');
    expect(await refused(...plan, '--seat', '5,4,1')).toContain('outside the plan');
    expect(await refused(...plan, '--room', '5x4x3')).toContain('cannot be given together');
    expect(await refused('--room', '5x4x3', '--walls', 'straw')).toContain('plasterboard-on-studs');
  });
});
