import * as hdf5 from 'h5wasm/node';
import { beforeAll, describe, expect, it } from 'vitest';
import { openFile, openRecording, readSofa, RingdownError, Rng, sofaAudio } from '../../src/signal/index.js';
import { fileAttributes } from '../../src/signal/sofa/attributes.js';
import { openHdf5 } from '../../src/signal/vendor/hdf5.js';
import { command } from '../support/command.js';
import {
  describeWithRecordings,
  recordingBytes,
  recordingNames,
  recordingPath,
} from '../support/shared-data.js';
import { addMode } from '../support/signals.js';
import { singleRoom, sofaFile } from '../support/sofa-files.js';

const rate = 16000;
const frames = 4000;
/** Two measurements of two microphones, every one told by its frequency. */
const responses = [40, 50, 60, 70].map((f) => addMode(new Float64Array(frames), rate, f, 0.3, 0.5, 0.01));
const cartesian = { Type: 'cartesian', Units: 'metre' };
const spherical = { Type: 'spherical', Units: 'degree, degree, metre' };
const flat = Float64Array.from(responses.flatMap((one) => Array.from(one)));
const variables = {
  'Data.IR': { shape: [2, 2, frames], data: flat, chunks: [1, 2, frames] },
  'Data.SamplingRate': { shape: [1], data: [rate], attributes: { Units: 'hertz' } },
  'Data.Delay': { shape: [1, 2], data: [0, 0] },
  ListenerPosition: { shape: [2, 3], data: [2, 1, 1.2, 3, 1.5, 1.2], attributes: cartesian },
  ListenerView: { shape: [1, 3], data: [0, 1, 0], attributes: cartesian },
  ListenerUp: { shape: [1, 3], data: [0, 0, 1], attributes: cartesian },
  // Facing along y, a microphone a metre to the left stands at smaller x.
  ReceiverPosition: { shape: [2, 3, 1], data: [0, 0, 0, 0, 1, 0], attributes: cartesian },
  SourcePosition: { shape: [1, 3], data: [-0.5, -0.4, 0.3], attributes: cartesian },
  EmitterPosition: { shape: [1, 3, 1], data: [0, 0, 0], attributes: cartesian },
  RoomCornerA: { shape: [1, 3], data: [-1, -1, 0], attributes: cartesian },
  RoomCornerB: { shape: [1, 3], data: [4.2, 2.9, 2.6], attributes: cartesian },
};

const codeOf = async (bytes: Uint8Array, measurement?: number): Promise<string> => {
  try {
    await readSofa(bytes, measurement);
  } catch (thrown) {
    return thrown instanceof RingdownError ? thrown.code : String(thrown);
  }
  return 'opened';
};

describe('an AES69 file of a single room', () => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = await sofaFile({ attributes: singleRoom, variables });
  });

  it('opens as one recording per measurement and microphone, with exactly its samples', async () => {
    for (const measurement of [1, 2])
      for (const channel of [1, 2]) {
        const recording = await openFile(bytes, { measurement, channel });
        expect(recording.samples).toEqual(responses[2 * (measurement - 1) + channel - 1]);
        expect(recording).toMatchObject({ sampleRate: rate, measurement, channel, channelCount: 2 });
      }
  });

  it('gives its places from the corner of the room that it names, and the room itself', async () => {
    const left = await openFile(bytes, { measurement: 2, channel: 2 });
    // Listener (3, 1.5, 1.2), a metre to its left along -x, from the corner at (-1, -1, 0).
    expect(left.seat!.x).toBeCloseTo(3, 9);
    expect(left.seat!.y).toBeCloseTo(2.5, 9);
    expect(left.source).toEqual({ x: 0.5, y: 0.6, z: 0.3 });
    expect(left.filePlaces).toMatchObject({ origin: 'corner', roomMetres: { x: 5.2, y: 3.9, z: 2.6 } });
    const note = left.notes.find(({ code }) => code === 'positions')!;
    expect(note.params).toMatchObject({ origin: 'corner', length: 5.2, seatZ: 1.2 });
  });

  it('takes the first measurement unless one is named, and says how many there are', async () => {
    const { notes, samples } = await openFile(bytes);
    expect(samples).toEqual(responses[0]);
    expect(notes.find(({ code }) => code === 'measurement-chosen')!.params).toMatchObject({
      measurement: 1,
      count: 2,
      asked: false,
    });
  });

  it('lets what the user says of the places stand above what the file says', async () => {
    const seat = { x: 1, y: 1, z: 1 };
    expect((await openFile(bytes, { seat })).seat).toEqual(seat);
  });

  it('is diagnosed by the command, measurement by measurement', async () => {
    const files = { 'room.sofa': bytes };
    const read = async (...argv: string[]) =>
      JSON.parse((await command(['diagnose', 'room.sofa', '--json', ...argv], files)).out) as {
        error?: { code: string };
        files: { notes: { code: string; message: string }[] }[];
      };
    const [{ notes }] = (await read('--measurement', '2')).files;
    expect(notes.find(({ code }) => code === 'measurement-chosen')!.message).toMatch(
      /^Measurement 2 of 2 is read/,
    );
    expect(notes.find(({ code }) => code === 'positions')!.message).toContain('5.20 x 3.90 x 2.60 m');
    expect((await read('--measurement', '3')).error?.code).toBe('sofa-measurement');
    expect((await command(['grid', 'room.sofa', '--measurement', '2'], files)).status).toBe(0);
  });

  it('reads every attribute as the HDF5 library does, in either kind of storage', async () => {
    // Enough of them for a heap of several blocks and a tree of more than one leaf.
    const many = Object.fromEntries(
      Array.from({ length: 60 }, (_, i) => [`Note${i}`, `${i} `.repeat(20 + i).trim()]),
    );
    for (const libver of ['v108', 'latest'] as const) {
      const file = await sofaFile({ attributes: { ...singleRoom, ...many }, variables, libver });
      const read = fileAttributes(openHdf5(file.buffer.slice(0) as ArrayBuffer));
      expect(read).toEqual({ ...singleRoom, ...many });
    }
  });

  it('counts the emitters of a file with several, one after the other', async () => {
    const interleaved = new Float64Array(flat.length);
    // [M R N E]: one measurement, two receivers, two emitters, samples of the emitters side by side.
    for (let r = 0; r < 2; r++)
      for (let n = 0; n < frames; n++)
        for (let e = 0; e < 2; e++) interleaved[(r * frames + n) * 2 + e] = responses[2 * r + e][n];
    const file = await sofaFile({
      attributes: { ...singleRoom, SOFAConventions: 'SingleRoomMIMOSRIR', DataType: 'FIR-E' },
      variables: {
        ...variables,
        'Data.IR': { shape: [1, 2, frames, 2], data: interleaved },
        EmitterPosition: { shape: [2, 3, 1], data: [0, 0, 0, 0.4, 0, 0], attributes: cartesian },
      },
    });
    const second = await openFile(file, { measurement: 2, channel: 1 });
    expect(second.samples).toEqual(responses[1]);
    expect(second.source!.x).toBeCloseTo(0.9, 9);
    expect(await codeOf(file, 3)).toBe('sofa-measurement');
  });

  it('turns spherical places, and keeps them apart from the room where no corner is named', async () => {
    const { RoomCornerA: _a, RoomCornerB: _b, ...rest } = variables;
    const file = await sofaFile({
      attributes: singleRoom,
      variables: { ...rest, SourcePosition: { shape: [1, 3], data: [90, 30, 2], attributes: spherical } },
    });
    const { seat, filePlaces } = await openFile(file);
    expect(seat).toBeNull();
    expect(filePlaces).toMatchObject({ origin: 'file', roomMetres: null });
    expect(filePlaces!.source.x).toBeCloseTo(0, 9);
    expect(filePlaces!.source.y).toBeCloseTo(2 * Math.cos(Math.PI / 6), 9);
    expect(filePlaces!.source.z).toBeCloseTo(1, 9);
  });

  it('is refused with one code where it holds no room, no responses, or another layout', async () => {
    const made = (attributes: Record<string, string>, change: Record<string, unknown> = {}) =>
      sofaFile({
        attributes: { ...singleRoom, ...attributes },
        variables: { ...variables, ...(change as typeof variables) },
      });
    expect(await codeOf(await made({ RoomType: 'free field' }))).toBe('sofa-free-field');
    expect(await codeOf(await made({ DataType: 'TF' }))).toBe('sofa-data-type');
    expect(await codeOf(await made({ Conventions: 'other' }))).toBe('sofa-not');
    expect(await codeOf(await made({ DataType: 'FIR-E' }))).toBe('sofa-not');
    expect(await codeOf(await made({}, { 'Data.SamplingRate': { shape: [1], data: [48] } }))).toBe('rate');
    expect(() => openRecording(bytes)).toThrow(expect.objectContaining({ code: 'sofa-apart' }));
  });

  it('answers damaged files with a recording or with one error of ours, and never hangs', () => {
    const rng = new Rng(69);
    const pick = (n: number) => Math.floor(rng.uniform() * n);
    let refused = 0;
    const begin = performance.now();
    for (let round = 0; round < 120; round++) {
      let damaged = bytes.slice();
      // Structure lies in the first and the last part of the file, samples between.
      for (let edits = 1 + pick(8); edits > 0; edits--)
        damaged[pick(2) ? pick(6000) : damaged.length - 1 - pick(6000)] = pick(256);
      if (pick(4) === 0) damaged = damaged.slice(0, pick(damaged.length));
      try {
        sofaAudio(openHdf5, damaged);
      } catch (thrown) {
        if (!(thrown instanceof RingdownError)) throw thrown;
        refused++;
      }
    }
    expect(refused).toBeGreaterThan(10);
    expect(performance.now() - begin).toBeLessThan(25_000);
  });
});

describeWithRecordings('the AES69 file of an office', () => {
  const name = 'surrey-roomA-5.72x6.64x2.31/UniS_Room_A_BRIR_16k.sofa';

  it('opens with its positions and gives the same samples as the WAV made from it', async () => {
    const wav = recordingBytes(recordingNames.office);
    // Its 37 azimuths run from 270 degrees in steps of 5: straight ahead is the nineteenth.
    for (const channel of [1, 2]) {
      const ours = await openFile(recordingBytes(name), { measurement: 19, channel });
      const theirs = openRecording(wav, { channel });
      expect(ours.sampleRate).toBe(theirs.sampleRate);
      expect(ours.samples).toHaveLength(theirs.samples.length);
      const step = 2 ** -23;
      expect(ours.samples.every((v, i) => Math.abs(v - theirs.samples[i]) <= step)).toBe(true);
      const { origin, seat, source } = ours.filePlaces!;
      expect(origin).toBe('file');
      expect(ours.seat).toBeNull();
      expect(source.x).toBeCloseTo(1.5, 6);
      expect(source.y).toBeCloseTo(0, 6);
      expect(seat).toEqual({ x: 0, y: channel === 1 ? 0.09 : -0.09, z: 0 });
    }
  });

  it('has the attributes that the HDF5 library finds in it', async () => {
    await hdf5.ready;
    const file = new hdf5.File(recordingPath(name), 'r');
    const ours = fileAttributes(openHdf5(recordingBytes(name).slice().buffer));
    const theirs = Object.entries(file.attrs);
    expect(Object.keys(ours).sort()).toEqual(theirs.map(([key]) => key).sort());
    for (const [key, { value }] of theirs) if (typeof value === 'string') expect(ours[key], key).toBe(value);
    file.close();
  });
});
