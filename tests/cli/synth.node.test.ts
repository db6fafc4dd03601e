import { describe, expect, it } from 'vitest';
import { decodeWav, openRecording } from '../../src/signal/index.js';
import { command } from '../support/command.js';

const call = '--room 5.3x4.1x2.7 --seat 2.1,1.3,1.2 --source 0.4,0.3,0.3 --out x.wav'.split(' ');
const synth = async (...more: string[]): Promise<Uint8Array> => {
  const { status, written, err } = await command(['synth', ...call, ...more]);
  expect(err).toBe('');
  expect(status).toBe(0);
  return written.get('x.wav')!;
};

describe('ringdown synth', () => {
  it('writes a file that the reader opens, with its onset where the sound arrives', async () => {
    const bytes = await synth('--seconds', '1,5', '--rate', '44100');
    const { sampleRate, channels } = decodeWav(bytes);
    expect(sampleRate).toBe(44100);
    expect(channels[0].length).toBe(66150);
    // 2.168 m at 343.2 m/s behind a lead of 20 ms.
    const arrival = 0.02 + Math.hypot(1.7, 1.0, 0.9) / 343.2;
    expect(Math.abs(openRecording(bytes).onsetSeconds - arrival)).toBeLessThan(0.002);
  });

  it('gives the same bytes for the same seed and others for another', async () => {
    const [a, b, c] = [await synth(), await synth('--seed', '1'), await synth('--seed', '2')];
    expect(a).toEqual(b);
    expect(a).not.toEqual(c);
  });

  it('warns of playing the file', async () => {
    const { out } = await command(['synth', ...call, '--seconds', '0.5']);
    expect(out.replace(/\s+/g, ' ')).toContain('start at a low level');
  });
});
