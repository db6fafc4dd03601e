import { describe, expect, it } from 'vitest';
import { mostStudySamples } from '../../src/signal/limits.js';
import { failureOf } from '../../src/study/failure.js';
import { createStudy } from '../../src/study/study.js';
import type { Pool } from '../../src/study/pool.js';
import { createSpeaker } from '../../src/words/index.js';

/** A pool whose files are as long as their one byte says, in hundredths of what a study holds; nothing else comes back. */
function longFiles(): Pool {
  const run = async (type: string, params: { bytes?: Uint8Array; options?: { label?: string } }) => {
    if (type === 'open') {
      const [hundredths] = params.bytes!;
      const samples = { length: (hundredths * mostStudySamples) / 100 };
      return {
        label: params.options?.label,
        hash: `${params.options?.label}`,
        channel: 1,
        channelCount: 1,
        samples,
      };
    }
    if (type === 'examine') return { notes: [], ranges: [], decays: [] };
    return new Promise(() => undefined);
  };
  return { way: 'main', peek: () => undefined, dispose: () => undefined, run } as unknown as Pool;
}

describe('the memory of a study', () => {
  it('is bounded: what would go beyond is refused by name, and the rest stays and can be added to', async () => {
    const study = createStudy({ pool: longFiles() });
    for (const [label, hundredths] of [
      ['a', 60],
      ['b', 41],
      ['c', 40],
    ] as const)
      await study.addRecording(Uint8Array.of(hundredths).buffer, { label });
    const { recordings, failures } = study.snapshot;
    expect(recordings.map(({ label }) => label)).toEqual(['a', 'c']);
    expect(failures.map(({ code, label }) => [code, label])).toEqual([['study-memory', 'b']]);
    expect(createSpeaker('en').error(failures[0])).toBe(
      'A study holds at most 1074 MB of samples, and this would be 1084 MB. Remove some recordings, or shorten them to the impulse responses.',
    );
    study.dispose();
  });

  it('that a browser refuses has its sentence, in the words of each', () => {
    for (const message of [
      'Array buffer allocation failed',
      'Invalid typed array length: 99999999999',
      'invalid array length',
      'out of memory',
      'Array size is not a small enough positive integer.',
      'Out of memory',
    ])
      expect(failureOf(new RangeError(message)).code, message).toBe('out-of-memory');
    expect(failureOf(new RangeError('Maximum call stack size exceeded')).code).toBe('unexpected');
    expect(failureOf(new TypeError('out of memory')).code).toBe('unexpected');
  });
});
