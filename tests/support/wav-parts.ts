/** Pieces of WAV files, put together otherwise than writers do. */

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  new DataView(whole.buffer).setUint32(4, whole.length - 8, true);
  return whole;
}

/** A chunk of zeros, padded to an even length. */
export function chunk(id: string, length: number): Uint8Array {
  const bytes = new Uint8Array(8 + length + (length % 2));
  bytes.set([...id].map((c) => c.charCodeAt(0)));
  new DataView(bytes.buffer).setUint32(4, length, true);
  return bytes;
}

export function withDataSize(wav: Uint8Array, size: number): Uint8Array {
  const bytes = wav.slice();
  const at = new TextDecoder('latin1').decode(bytes).indexOf('data');
  new DataView(bytes.buffer).setUint32(at + 4, size, true);
  return bytes;
}

export const withoutLast = (bytes: Uint8Array, count: number): Uint8Array => bytes.slice(0, -count);
