/** A FLAC file (RFC 9639) of verbatim frames: the plainest that every decoder must read. */
export function flacFile(
  channels: readonly (readonly number[])[],
  sampleRate: number,
  bits: 16 | 24,
): Uint8Array {
  const frames = channels[0].length;
  const blockSize = 4096;
  const out: number[] = [...'fLaC'].map((c) => c.charCodeAt(0));
  const write = writer(out);
  // The only block of metadata: STREAMINFO, without a checksum of the samples.
  write(8, 0x80);
  write(24, 34);
  write(16, blockSize);
  write(16, blockSize);
  write(24, 0);
  write(24, 0);
  write(20, sampleRate);
  write(3, channels.length - 1);
  write(5, bits - 1);
  write(4, 0);
  write(32, frames);
  for (let i = 0; i < 16; i++) write(8, 0);
  for (let number = 0, from = 0; from < frames; number++, from += blockSize) {
    const count = Math.min(blockSize, frames - from);
    const frame: number[] = [];
    const bit = writer(frame);
    bit(16, 0xfff8);
    // Block size in 16 bits at the end of the header; sample rate from STREAMINFO.
    bit(4, 7);
    bit(4, 0);
    bit(4, channels.length - 1);
    bit(3, bits === 16 ? 4 : 6);
    bit(1, 0);
    if (number > 127) throw new Error('longer than this writer numbers');
    bit(8, number);
    bit(16, count - 1);
    bit(8, crc(frame, 8, 0x07));
    for (const samples of channels) {
      bit(8, 0x02);
      for (let n = from; n < from + count; n++) bit(bits, samples[n]);
    }
    bit(16, crc(frame, 16, 0x8005));
    out.push(...frame);
  }
  return Uint8Array.from(out);
}

/** Appends whole or part bytes, most significant bit first; every frame here ends on a byte. */
function writer(out: number[]): (bits: number, value: number) => void {
  let held = 0;
  let count = 0;
  return (bits, value) => {
    for (let i = bits - 1; i >= 0; i--) {
      held = (held << 1) | (Math.floor(value / 2 ** i) & 1);
      if (++count === 8) {
        out.push(held);
        held = 0;
        count = 0;
      }
    }
  };
}

function crc(bytes: readonly number[], width: 8 | 16, polynomial: number): number {
  let sum = 0;
  const top = 1 << (width - 1);
  for (const byte of bytes) {
    sum ^= byte << (width - 8);
    for (let i = 0; i < 8; i++)
      sum = ((sum & top ? (sum << 1) ^ polynomial : sum << 1) & ((1 << width) - 1)) >>> 0;
  }
  return sum;
}
