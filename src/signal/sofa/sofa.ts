import { refusal } from '../error-codes.js';
import { RingdownError } from '../errors.js';
import { highestChannelCount, highestSampleRate, lowestSampleRate, requireFits } from '../limits.js';
import type { DecodedAudio, Note } from '../types.js';
import type { Hdf5Dataset, Hdf5File, OpenHdf5 } from '../vendor/hdf5.js';
import { fileAttributes } from './attributes.js';
import { placesOf, type PlaceVariables } from './places.js';

/** Data types of AES69 that are impulse responses; the last two have emitters as a dimension of their own. */
const dataTypes = ['FIR', 'FIR-E', 'FIRE'];

/** How the samples of a file are arranged: measurements, receivers, emitters, samples. */
interface Layout {
  readonly measurements: number;
  readonly receivers: number;
  readonly emitters: number;
  readonly frames: number;
  /** Place of a sample in the array. */
  readonly at: (measurement: number, receiver: number, emitter: number, frame: number) => number;
}

function layoutOf({ shape }: Hdf5Dataset, dataType: string): Layout {
  const [measurements, receivers, third, fourth] = shape;
  if (dataType === 'FIR' || shape.length === 3)
    return {
      ...{ measurements, receivers, emitters: 1, frames: third },
      at: (m, r, _e, n) => (m * receivers + r) * third + n,
    };
  // FIR-E keeps the emitters last; FIRE, its forerunner, before the samples.
  return dataType === 'FIR-E'
    ? {
        ...{ measurements, receivers, emitters: fourth, frames: third },
        at: (m, r, e, n) => ((m * receivers + r) * third + n) * fourth + e,
      }
    : {
        ...{ measurements, receivers, emitters: third, frames: fourth },
        at: (m, r, e, n) => ((m * receivers + r) * third + e) * fourth + n,
      };
}

const count = (value: unknown): boolean => Number.isInteger(value) && Number(value) > 0;

/** A number that a file gives once, or once per measurement. */
function perMeasurement(variable: Hdf5Dataset | null, measurement: number, column = 0): number | null {
  if (!variable) return null;
  const columns = variable.shape.slice(1).reduce((all, size) => all * size, 1);
  const row = variable.shape[0] === 1 ? 0 : measurement;
  const value = Number(variable.value[row * columns + Math.min(column, columns - 1)]);
  return Number.isFinite(value) ? value : null;
}

/**
 * One measurement of an AES69 (SOFA) file as audio, a channel per receiver, with the places that the file gives. Files of
 * single rooms are read, and any other that holds impulse responses and does not say that it was measured in free field.
 * Measurements with several emitters are counted emitter by emitter.
 *
 * @param open The HDF5 reader, handed in so that it is loaded only where a file needs it.
 * @param measurement 1-based; the first unless said.
 * @throws RingdownError those whose code begins with `sofa-`, `rate`, `too-long`, `no-samples`
 */
export function sofaAudio(open: OpenHdf5, bytes: Uint8Array, measurement?: number): DecodedAudio {
  try {
    const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
    return read(open(buffer as ArrayBuffer), measurement);
  } catch (thrown) {
    if (thrown instanceof RingdownError) throw thrown;
    const detail = thrown instanceof Error ? thrown.message : String(thrown);
    throw refusal('sofa-unreadable', { detail: detail.split('\n')[0].slice(0, 120) });
  }
}

function read(file: Hdf5File, asked: number | undefined): DecodedAudio {
  const names = new Set(file.keys);
  const variable = (name: string): Hdf5Dataset | null => (names.has(name) ? file.get(name) : null);
  const attributes = fileAttributes(file);
  const text = (name: string): string =>
    typeof attributes[name] === 'string' ? String(attributes[name]) : '';
  if (text('Conventions') !== 'SOFA') throw refusal('sofa-not', {});
  const dataType = text('DataType');
  if (!dataTypes.includes(dataType)) throw refusal('sofa-data-type', { dataType });
  if (/free.?field/i.test(text('RoomType')))
    throw refusal('sofa-free-field', { conventions: text('SOFAConventions') });
  const data = variable('Data.IR');
  const wanted = dataType === 'FIR' ? 3 : 4;
  if (!data || !data.shape.every(count) || data.shape.length !== wanted) throw refusal('sofa-not', {});

  const { measurements, receivers, emitters, frames, at } = layoutOf(data, dataType);
  const total = measurements * emitters;
  const chosen = asked ?? 1;
  if (!Number.isInteger(chosen) || chosen < 1 || chosen > total)
    throw refusal('sofa-measurement', { measurement: chosen, count: total });
  const m = Math.floor((chosen - 1) / emitters);
  const e = (chosen - 1) % emitters;
  const sampleRate = perMeasurement(variable('Data.SamplingRate'), m) ?? 0;
  if (!(sampleRate >= lowestSampleRate && sampleRate <= highestSampleRate))
    throw refusal('rate', { rate: sampleRate, lowest: lowestSampleRate, highest: highestSampleRate });
  // The reader expands the whole array, so that all of it must fit.
  requireFits(frames * total, receivers, sampleRate);
  if (receivers > highestChannelCount) throw refusal('sofa-not', {});

  const { value } = data;
  const channels = Array.from({ length: receivers }, (_, r) =>
    Float64Array.from({ length: frames }, (_, n) => Number(value[at(m, r, e, n)])),
  );
  const places = placeVariables(variable);
  const delay = perMeasurement(variable('Data.Delay'), m) ?? 0;
  const notes: Note[] =
    total > 1 || delay !== 0
      ? [
          {
            code: 'measurement-chosen',
            params: {
              ...{ measurement: chosen, count: total, asked: asked !== undefined },
              delaySeconds: delay === 0 ? null : delay / sampleRate,
            },
          },
        ]
      : [];
  return {
    sampleRate,
    channels,
    encoding: `AES69 ${text('SOFAConventions')}`,
    notes,
    measurement: chosen,
    places: channels.map((_, receiver) => placesOf(places, { measurement: m, receiver, emitter: e })),
  };
}

const placeVariables = (variable: (name: string) => Hdf5Dataset | null): PlaceVariables => ({
  listener: variable('ListenerPosition'),
  view: variable('ListenerView'),
  up: variable('ListenerUp'),
  receiver: variable('ReceiverPosition'),
  source: variable('SourcePosition'),
  sourceView: variable('SourceView'),
  sourceUp: variable('SourceUp'),
  emitter: variable('EmitterPosition'),
  cornerA: variable('RoomCornerA'),
  cornerB: variable('RoomCornerB'),
});
