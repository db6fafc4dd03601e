import { describe, expect, it } from 'vitest';
import { RingdownError, sofaAudio } from '../../src/signal/index.js';
import { openHdf5 } from '../../src/signal/vendor/hdf5.js';
import { singleRoom, sofaFile } from '../support/sofa-files.js';

const rest = {
  'Data.SamplingRate': { shape: [1], data: [8000], attributes: { Units: 'hertz' } },
  'Data.Delay': { shape: [1, 1], data: [0] },
};

function codeOf(bytes: Uint8Array): string {
  try {
    sofaAudio(openHdf5, bytes);
    return 'read';
  } catch (error) {
    if (!(error instanceof RingdownError)) throw error;
    return `${error.code} ${String(error.params.detail ?? '')}`;
  }
}

/** The file with a 64-bit number put in place of another, everywhere. */
function replaced(bytes: Uint8Array, from: number, to: number): { bytes: Uint8Array; count: number } {
  const changed = bytes.slice();
  const view = new DataView(changed.buffer);
  let count = 0;
  for (let at = 0; at + 8 <= changed.length; at++)
    if (view.getBigUint64(at, true) === BigInt(from)) {
      view.setBigUint64(at, BigInt(to), true);
      count++;
    }
  return { bytes: changed, count };
}

describe('an AES69 file that promises more than it holds', () => {
  it('is refused before its samples are made: 4 million zeros in a few kilobytes', async () => {
    const length = 2 ** 22;
    const data = { shape: [1, 1, length], data: new Float64Array(length), chunks: [1, 1, 2 ** 16] };
    const bytes = await sofaFile({ attributes: singleRoom, variables: { ...rest, 'Data.IR': data } });
    expect(bytes.length).toBeLessThan(100_000);
    expect(codeOf(bytes)).toBe('sofa-unreadable it leads further than its own length allows');
  });

  it('is refused where its header says 60 million samples and there are 777', async () => {
    const data = { shape: [1, 1, 777], data: new Float64Array(777).fill(0.1) };
    const plain = await sofaFile({ attributes: singleRoom, variables: { ...rest, 'Data.IR': data } });
    const { bytes, count } = replaced(plain, 777, 60_000_000);
    expect(count).toBeGreaterThan(0);
    expect(codeOf(bytes)).toBe('sofa-unreadable it leads further than its own length allows');
  });

  it('is refused where a place has a million rows that are not there', async () => {
    const data = { shape: [1, 1, 300], data: new Float64Array(300).map((_, n) => Math.sin(n)) };
    const listener = { shape: [888, 3], data: new Float64Array(2664) };
    const variables = { ...rest, 'Data.IR': data, ListenerPosition: listener, SourcePosition: listener };
    const plain = await sofaFile({ attributes: singleRoom, variables });
    const { bytes, count } = replaced(plain, 888, 300_000_000);
    expect(count).toBeGreaterThan(0);
    expect(codeOf(bytes)).toBe('sofa-unreadable it leads further than its own length allows');
  });

  it('is refused where a packed chunk holds more than a chunk', async () => {
    const data = { shape: [1, 1, 5000], data: new Float64Array(5000), chunks: [1, 1, 5000] };
    const plain = await sofaFile({ attributes: singleRoom, variables: { ...rest, 'Data.IR': data } });
    // 32-bit sizes of the chunk, in the layout message.
    const bytes = plain.slice();
    const view = new DataView(bytes.buffer);
    for (let at = 0; at + 4 <= bytes.length; at++)
      if (view.getUint32(at, true) === 5000 && view.getUint32(at + 4, true) === 8)
        view.setUint32(at, 50, true);
    expect(codeOf(bytes)).toMatch(/^sofa-unreadable a packed chunk holds more than a chunk/);
  });

  it('does not stop one that packs the silence at its end to a tenth', async () => {
    const samples = Float64Array.from({ length: 40_000 }, (_, n) =>
      n < 4000 ? Math.sin(n / 20) * Math.exp(-n / 800) : 0,
    );
    const data = { shape: [1, 1, 40_000], data: samples, chunks: [1, 1, 40_000] };
    const bytes = await sofaFile({ attributes: singleRoom, variables: { ...rest, 'Data.IR': data } });
    expect(codeOf(bytes)).toBe('read');
  });
});
