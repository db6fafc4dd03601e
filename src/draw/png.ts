/** PNG files, as in the specification (W3C, third edition): pixels in, and text in iTXt chunks, 11.3.3.4. */
import { zlibSync } from 'fflate';
import type { Pixels } from './pen.js';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** CRC-32 of the specification's annex D, of chunk type and data. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const made = new Uint8Array(data.length + 12);
  const view = new DataView(made.buffer);
  view.setUint32(0, data.length);
  made.set(new TextEncoder().encode(type), 4);
  made.set(data, 8);
  view.setUint32(data.length + 8, crc32(made.subarray(4, data.length + 8)));
  return made;
}

/** Offset behind the header chunk, where text may stand. */
function behindHeader(png: Uint8Array): number {
  if (SIGNATURE.some((byte, k) => png[k] !== byte)) throw new RangeError('These bytes are not a PNG file.');
  return 8 + 12 + new DataView(png.buffer, png.byteOffset).getUint32(8);
}

/** The file with its texts: keywords of 1 to 79 Latin letters, values of any letters. */
export function pngWithText(
  png: Uint8Array,
  texts: Readonly<Record<string, string>>,
): Uint8Array<ArrayBuffer> {
  const at = behindHeader(png);
  const chunks = Object.entries(texts).map(([keyword, text]) =>
    // Keyword, no compression, no language, no translated keyword.
    chunk('iTXt', new TextEncoder().encode(`${keyword}\0\0\0\0\0${text}`)),
  );
  const length = chunks.reduce((sum, { length: own }) => sum + own, png.length);
  const made = new Uint8Array(length);
  made.set(png.subarray(0, at));
  let offset = at;
  for (const one of chunks) {
    made.set(one, offset);
    offset += one.length;
  }
  made.set(png.subarray(at), offset);
  return made;
}

/** The texts that such a file carries. */
export function textsOfPng(png: Uint8Array): Record<string, string> {
  const view = new DataView(png.buffer, png.byteOffset);
  const texts: Record<string, string> = {};
  behindHeader(png);
  for (let at = 8; at + 12 <= png.length;) {
    const length = view.getUint32(at);
    const type = new TextDecoder('latin1').decode(png.subarray(at + 4, at + 8));
    if (type === 'iTXt') {
      const [keyword, ...rest] = new TextDecoder().decode(png.subarray(at + 8, at + 8 + length)).split('\0');
      texts[keyword] = rest[rest.length - 1];
    }
    at += length + 12;
  }
  return texts;
}

/** Opaque pixels as a file: 8-bit truecolour, each line told as its difference from the one above (filter 2, 9.2). */
export function encodePng({ data, width, height }: Pixels): Uint8Array<ArrayBuffer> {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  // Bits per sample, truecolour; then compression, filter and interlace, of which only the last has a choice.
  header.set([8, 2, 0, 0, 0], 8);
  const line = 1 + 3 * width;
  const lines = new Uint8Array(line * height);
  for (let y = 0; y < height; y += 1) {
    lines[y * line] = 2;
    for (let x = 0; x < width; x += 1)
      for (let c = 0; c < 3; c += 1) {
        const above = y > 0 ? data[4 * ((y - 1) * width + x) + c] : 0;
        lines[y * line + 1 + 3 * x + c] = data[4 * (y * width + x) + c] - above;
      }
  }
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', zlibSync(lines)),
    chunk('IEND', new Uint8Array(0)),
  ];
  const file = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    file.set(part, at);
    at += part.length;
  }
  return file;
}

/** The file as an address that holds it (RFC 2397). */
export function pngAddress(png: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < png.length; at += 0x8000)
    binary += String.fromCharCode(...png.subarray(at, at + 0x8000));
  return `data:image/png;base64,${btoa(binary)}`;
}
