import { expect, it } from 'vitest';
import { encodeWav, openRecording, RingdownError, Rng, type WavEncoding } from '../../src/signal/index.js';

it('answers 20,000 damaged WAV files with a recording or with one error of ours', () => {
  const rng = new Rng(20);
  const encodings: WavEncoding[] = [
    'pcm-8',
    'pcm-16',
    'pcm-24',
    'pcm-32',
    'pcm-24-in-32',
    'float-32',
    'float-64',
  ];
  const samples = Float64Array.from({ length: 600 }, () => 0.2 * rng.uniform() - 0.1);
  const seeds = encodings.flatMap((encoding) =>
    (['riff', 'rf64', 'bw64'] as const).map((container) =>
      encodeWav({ channels: [samples, samples], sampleRate: 8000, encoding, container }),
    ),
  );
  const pick = (n: number) => Math.floor(rng.uniform() * n);
  let opened = 0;
  for (let round = 0; round < 20_000; round++) {
    let bytes: Uint8Array = seeds[pick(seeds.length)].slice();
    for (let edits = 1 + pick(6); edits > 0; edits--) bytes[pick(pick(2) ? 120 : bytes.length)] = pick(256);
    if (pick(4) === 0) bytes = bytes.slice(0, pick(bytes.length));
    try {
      expect(openRecording(bytes).samples.length).toBeLessThanOrEqual(bytes.length);
      opened++;
    } catch (error) {
      if (!(error instanceof RingdownError)) throw error;
    }
  }
  expect(opened).toBeGreaterThan(1000);
});
