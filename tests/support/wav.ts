/** Puts chunks before `fmt ` and after the data, of odd sizes with their pad byte. */
export function withChunks(bytes: Uint8Array): Uint8Array {
  const junk = (id: string, length: number) => {
    const chunk = new Uint8Array(8 + length + (length % 2));
    chunk.set([...id].map((c) => c.charCodeAt(0)));
    new DataView(chunk.buffer).setUint32(4, length, true);
    return chunk;
  };
  const parts = [bytes.slice(0, 12), junk('LIST', 13), junk('junk', 7), bytes.slice(12), junk('LIST', 5)];
  const whole = new Uint8Array(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  new DataView(whole.buffer).setUint32(4, whole.length - 8, true);
  return whole;
}

/** Where the chunk of the samples begins. */
export const dataOffset = (bytes: Uint8Array): number =>
  new TextDecoder('latin1').decode(bytes).indexOf('data');
