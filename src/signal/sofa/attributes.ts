import type { Hdf5File } from '../vendor/hdf5.js';
import * as maths from '../maths.js';

/**
 * All attributes of a file. From nine on, HDF5 keeps them in a heap of their own ("dense" storage) that the HDF5 reader
 * passes over, and AES69 files have more than nine: the places of their messages are found here, and read by the reader.
 *
 * HDF5 File Format Specification 3.0: Attribute Info Message IV.A.2.v, version 2 B-trees III.A.2, fractal heap III.G.
 * Addresses and lengths of 8 bytes, as the reader itself assumes.
 */
export function fileAttributes(file: Hdf5File): Record<string, unknown> {
  const objects = file._dataobjects;
  const attributes: Record<string, unknown> = { ...file.attrs };
  const [info] = objects.find_msg_type(0x15);
  if (!info) return attributes;
  const view = new DataView(objects.fh);
  let at = info.get('offset_to_message');
  // Version and flags, then the largest creation index where bit 0 says so.
  at += view.getUint8(at + 1) & 1 ? 4 : 2;
  const heap = addressAt(view, at);
  const tree = addressAt(view, at + 8);
  if (heap === null || tree === null) return attributes;
  for (const place of heapPlaces(view, heap, treeRecords(view, tree))) {
    const [name, value] = objects.unpack_attribute(place);
    attributes[name] = value;
  }
  return attributes;
}

/** Deeper trees and longer chains than these are loops. */
const mostRecords = 65_536;
const mostDepth = 8;

/** An address of 8 bytes; all ones mean none. */
function addressAt(view: DataView, at: number): number | null {
  const value = view.getBigUint64(at, true);
  return value === 0xffffffffffffffffn ? null : Number(value);
}

/** An unsigned number of 1 to 8 bytes. */
function numberAt(view: DataView, at: number, bytes: number): number {
  let value = 0;
  for (let i = bytes - 1; i >= 0; i--) value = value * 256 + view.getUint8(at + i);
  return value;
}

const bytesFor = (largest: number): number => Math.ceil((Math.floor(maths.log2(largest)) + 1) / 8);

function expectSignature(view: DataView, at: number, signature: string): void {
  for (let i = 0; i < 4; i++)
    if (view.getUint8(at + i) !== signature.charCodeAt(i)) throw new Error(`no ${signature} at ${at}`);
}

/** Places of the records of a version 2 B-tree. */
function treeRecords(view: DataView, tree: number): number[] {
  expectSignature(view, tree, 'BTHD');
  const nodeBytes = view.getUint32(tree + 6, true);
  const recordBytes = view.getUint16(tree + 10, true);
  const depth = view.getUint16(tree + 12, true);
  const root = addressAt(view, tree + 16);
  if (root === null) return [];
  if (depth > mostDepth || recordBytes === 0) throw new Error('a tree too deep');
  // Of a node of each level: the most records it holds, and the most below and in it, which give the widths of pointers.
  const overhead = 10;
  const most = [Math.floor((nodeBytes - overhead) / recordBytes)];
  const all = [most[0]];
  const pointerBytes = [0];
  for (let level = 1; level <= depth; level++) {
    pointerBytes[level] = 8 + bytesFor(most[level - 1]) + (level > 1 ? bytesFor(all[level - 1]) : 0);
    most[level] = Math.floor(
      (nodeBytes - overhead - pointerBytes[level]) / (recordBytes + pointerBytes[level]),
    );
    all[level] = (most[level] + 1) * all[level - 1] + most[level];
  }
  const places: number[] = [];
  const walk = (node: number, count: number, level: number): void => {
    expectSignature(view, node, level === 0 ? 'BTLF' : 'BTIN');
    const records = node + 6;
    for (let i = 0; i < count; i++) places.push(records + i * recordBytes);
    if (places.length > mostRecords) throw new Error('a tree without end');
    if (level === 0) return;
    for (let i = 0; i <= count; i++) {
      const pointer = records + count * recordBytes + i * pointerBytes[level];
      const child = addressAt(view, pointer);
      if (child !== null) walk(child, numberAt(view, pointer + 8, bytesFor(most[level - 1])), level - 1);
    }
  };
  walk(root, view.getUint16(tree + 24, true), depth);
  return places;
}

/** Where in the file the managed objects lie whose heap ids are the first 8 bytes of each record. */
function heapPlaces(view: DataView, heap: number, records: readonly number[]): number[] {
  expectSignature(view, heap, 'FRHP');
  if (view.getUint16(heap + 7, true) !== 0) throw new Error('a filtered heap');
  const width = view.getUint16(heap + 110, true);
  const startBytes = numberAt(view, heap + 112, 8);
  const largestDirect = numberAt(view, heap + 120, 8);
  const offsetBytes = Math.ceil(view.getUint16(heap + 128, true) / 8);
  const root = addressAt(view, heap + 132);
  const rows = view.getUint16(heap + 140, true);
  if (root === null || width === 0 || startBytes === 0) return [];
  const blockBytes = (row: number): number => startBytes * maths.power(2, Math.max(0, row - 1));
  const directRows = maths.log2(largestDirect / startBytes) + 2;

  /** Of an offset within an indirect block of `rowCount` rows. */
  const locate = (block: number, rowCount: number, offset: number, depth: number): number => {
    expectSignature(view, block, 'FHIB');
    if (depth > mostDepth) throw new Error('a heap too deep');
    const entries = block + 13 + offsetBytes;
    let begin = 0;
    for (let row = 0; row < rowCount; row++) {
      const bytes = blockBytes(row);
      if (offset >= begin + width * bytes) {
        begin += width * bytes;
        continue;
      }
      const column = Math.floor((offset - begin) / bytes);
      const child = addressAt(view, entries + 8 * (row * width + column));
      if (child === null) break;
      const within = offset - begin - column * bytes;
      if (row < directRows) return child + within;
      const below = maths.log2(bytes / (startBytes * width)) + 1;
      return locate(child, below, within, depth + 1);
    }
    throw new Error(`no heap block at ${offset}`);
  };

  return records.flatMap((record) => {
    // Bits 4 and 5 of the first byte: 0 for objects within the heap's blocks. Attributes are never stored otherwise here.
    if ((view.getUint8(record) >> 4) & 3) return [];
    const offset = numberAt(view, record + 1, offsetBytes);
    return [rows === 0 ? root + offset : locate(root, rows, offset, 0)];
  });
}
