import { describe, expect, it } from 'vitest';
import { createRoom, parseRoomSize, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { command } from '../support/command.js';

/** A corner source in a room of 5.4 x 4.1 x 2.7 m, heard from a far corner, so that all its low modes are there. */
const room = createRoom({ size: parseRoomSize('5.4x4.1x2.7') });
const { samples, sampleRate } = synthesise({
  room: { ...room, absorption: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1] },
  source: { x: 0.2, y: 0.3, z: 0.2 },
  seat: { x: 5.1, y: 3.9, z: 2.4 },
  sampleRate: 8000,
  noiseDb: -70,
});
const file = { 'desk.wav': encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' }) };

interface Document {
  roomFit: {
    sides: { fitted: number; sd: number | null; typed: number }[];
    chance: number;
    common: { share: number; temperature: number };
    explained: number;
    explainedAsTyped: number;
    error?: { code: string; message: string };
  };
}

describe('ringdown diagnose --fit-room', () => {
  it('finds the sides of the room that rang from sides typed 2 to 3 % wrong', async () => {
    const { out, status } = await command(
      ['diagnose', 'desk.wav', '--room', '5.55x4x2.76', '--fit-room', '--json'],
      file,
    );
    expect(status).toBe(0);
    const { roomFit } = JSON.parse(out) as Document;
    const [length, width, height] = roomFit.sides.map(({ fitted }) => fitted);
    expect(Math.abs(length - 5.4)).toBeLessThan(0.04);
    expect(Math.abs(width - 4.1)).toBeLessThan(0.04);
    expect(Math.abs(height - 2.7)).toBeLessThan(0.04);
    expect(roomFit.chance).toBeLessThanOrEqual(0.05);
    expect(roomFit.explained).toBeGreaterThanOrEqual(roomFit.explainedAsTyped);
  });

  it('says in words what it explains, how likely that is chance, and that the air does the same', async () => {
    const { out } = await command(['diagnose', 'desk.wav', '--room', '5.55x4x2.76', '--fit-room'], file);
    expect(out).toContain('Sides fitted to the resonances');
    expect(out).toMatch(/Of 99 sets of random resonances/);
    expect(out).toMatch(/a recording\s+cannot tell which/);
  });

  it('needs a room', async () => {
    const { status, err } = await command(['diagnose', 'desk.wav', '--fit-room'], file);
    expect(status).toBe(2);
    expect(err).toContain('--room');
  });

  it('refuses a plan with its reason, and still says what it found', async () => {
    const { status, out } = await command(
      [
        'diagnose',
        'desk.wav',
        '--plan',
        '0,0 5.4,0 5.4,4.1 0,4.1',
        '--height',
        '2.7',
        '--fit-room',
        '--json',
      ],
      file,
    );
    expect(status).toBe(0);
    expect((JSON.parse(out) as Document).roomFit.error?.code).toBe('fit-room-plan');
  });
});
