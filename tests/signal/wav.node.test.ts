import { describe, expect, it } from 'vitest';
import { decodeWav, encodeWav, openRecording, Rng, type WavEncoding } from '../../src/signal/index.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { dataOffset, withChunks } from '../support/wav.js';

const sampleRate = 48000;
const response = (() => {
  const rng = new Rng(5);
  return Float64Array.from({ length: 24001 }, (_, i) => {
    const t = (i - 2400) / sampleRate;
    return (
      (t < 0 ? 0 : 0.7 * Math.exp(-6.9078 * (t / 0.5)) * Math.sin(2 * Math.PI * 48 * t)) +
      1e-4 * rng.gaussian()
    );
  });
})();

const encodings: [WavEncoding, number][] = [
  ['pcm-8', 1 / 256],
  ['pcm-16', 2 ** -16],
  ['pcm-24', 2 ** -24],
  ['pcm-32', 2 ** -32],
  ['pcm-24-in-32', 2 ** -24],
  ['float-32', 1e-7],
  ['float-64', 0],
];

describe('the WAV reader', () => {
  for (const [encoding, step] of encodings)
    for (const container of ['riff', 'rf64', 'bw64'] as const)
      it(`reads the same samples from ${encoding} in ${container}, also with other chunks around`, () => {
        const bytes = encodeWav({ channels: [response], sampleRate, encoding, container });
        for (const form of container === 'riff' ? [bytes, withChunks(bytes)] : [bytes]) {
          const audio = decodeWav(form);
          expect(audio.sampleRate).toBe(sampleRate);
          const worst = audio.channels[0].reduce(
            (most, v, i) => Math.max(most, Math.abs(v - response[i])),
            0,
          );
          expect(worst).toBeLessThanOrEqual(step);
        }
      });

  it('reads what is there where the data size is 0, 0xFFFFFFFF or ends in half a frame, and says so', () => {
    for (const size of [0, 0xffffffff]) {
      const bytes = encodeWav({ channels: [response], sampleRate, encoding: 'pcm-16' });
      new DataView(bytes.buffer).setUint32(dataOffset(bytes) + 4, size, true);
      const audio = decodeWav(bytes);
      expect(audio.channels[0]).toHaveLength(response.length);
      expect(audio.notes.map((note) => note.code)).toEqual(['size-guessed']);
    }
    const whole = encodeWav({ channels: [response, response], sampleRate, encoding: 'pcm-16' });
    const audio = decodeWav(whole.slice(0, whole.length - 3));
    expect(audio.channels[0]).toHaveLength(response.length - 1);
    expect(audio.notes.map((note) => note.code)).toEqual(['size-guessed']);
  });

  it('keeps float samples above full scale', () => {
    const loud = response.map((v) => v * 5);
    const audio = decodeWav(encodeWav({ channels: [loud], sampleRate, encoding: 'float-32' }));
    expect(Math.max(...audio.channels[0])).toBeGreaterThan(2);
  });

  it('refuses broken files with one code each', () => {
    const good = () => encodeWav({ channels: [response], sampleRate, encoding: 'pcm-16' });
    const edit = (change: (view: DataView, bytes: Uint8Array) => void) => {
      const bytes = good();
      change(new DataView(bytes.buffer), bytes);
      return bytes;
    };
    const cases: [string, Uint8Array][] = [
      ['file-empty', new Uint8Array(0)],
      ['wav-not-riff', new Uint8Array(4000).fill(200)],
      ['wav-not-wave', edit((view) => view.setUint32(8, 0x41564920))],
      ['wav-big-endian', edit((view) => view.setUint32(0, 0x52494658))],
      ['wav-truncated-header', good().slice(0, 10)],
      ['wav-no-format', edit((view) => view.setUint32(12, 0x6a756e6b))],
      ['wav-no-data', good().slice(0, 36)],
      ['wav-codec-unsupported', edit((view) => view.setUint16(20, 0x55, true))],
      ['wav-channels', edit((view) => view.setUint16(22, 0, true))],
      ['wav-rate', edit((view) => view.setUint32(24, 900, true))],
      ['wav-bits', edit((view) => view.setUint16(34, 48, true))],
      ['wav-frame-size', edit((view) => view.setUint16(32, 7, true))],
      ['no-samples', good().slice(0, 44)],
      ['too-short', encodeWav({ channels: [response.slice(0, 1)], sampleRate, encoding: 'pcm-16' })],
      ['silent', encodeWav({ channels: [new Float64Array(24000)], sampleRate, encoding: 'pcm-16' })],
    ];
    for (const [code, bytes] of cases)
      expect(() => openRecording(bytes), code).toThrow(expect.objectContaining({ code }));
  });

  it('never reads a loopback as the room, nor the sum of two channels', () => {
    const loopback = new Float64Array(response.length);
    loopback[100] = 0.9;
    const wav = (channels: Float64Array[]) => encodeWav({ channels, sampleRate, encoding: 'float-64' });
    expect(openRecording(wav([loopback, response])).channel).toBe(2);
    const stereo = openRecording(wav([response, response.map((v) => -v)]));
    expect(stereo.channel).toBe(1);
    expect(stereo.samples).toEqual(response);
    expect(stereo.notes.map((note) => note.code)).toContain('channel-chosen');
  });
});

describe('the onset', () => {
  it('is found within 2 ms behind 300 ms of silence, and a later louder arrival does not win', () => {
    for (const rate of [8000, 44100, 48000, 192000]) {
      const length = Math.round(rate * 1.5);
      const start = Math.round(rate * 0.3);
      const samples = new Float64Array(length);
      for (let i = start; i < length; i++) {
        const t = (i - start) / rate;
        samples[i] += 0.5 * Math.exp(-t / 0.01) * Math.sin(2 * Math.PI * 60 * t);
        const later = t - 0.025;
        if (later > 0) samples[i] += Math.exp(-later / 0.01) * Math.sin(2 * Math.PI * 60 * later);
      }
      const { onsetSeconds } = openRecording(
        encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-64' }),
      );
      expect(Math.abs(onsetSeconds - 0.3), `${rate} Hz`).toBeLessThan(0.002);
    }
  });
});

describeWithRecordings('real recordings', () => {
  it('open at their own rate with their onset', () => {
    const names = [
      recordingNames.frl,
      recordingNames.livingRoom,
      recordingNames.coupled,
      recordingNames.sevenChannels,
    ];
    expect(names.map((name) => openRecording(recordingBytes(name)).sampleRate)).toEqual([
      48000, 44100, 48000, 48000,
    ]);
    // The direct sound of this set is aligned to 10 ms by its publishers.
    expect(openRecording(recordingBytes(recordingNames.corner1)).onsetSeconds).toBeCloseTo(0.01, 2);
  });
});
