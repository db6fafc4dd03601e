import { chooseChannel } from './channel.js';
import { dcNotes } from './dc.js';
import { refusal } from './error-codes.js';
import { hashOf } from './hash.js';
import { highestSampleRate, lowestSampleRate, requireFits, shortestSeconds } from './limits.js';
import { onsetIndex } from './onset.js';
import type { DecodedAudio, FilePlaces, Note, PositionMetres, Recording } from './types.js';
import { encodeWav } from './wav-write.js';
import type { FileBeside } from './open-job.js';
import * as maths from './maths.js';

/** What is known of a recording beside its samples. */
export interface OpenOptions {
  /** 1-based; without it the only live channel, or the first, is chosen, and said. */
  readonly channel?: number;
  readonly label?: string;
  readonly stage?: string;
  readonly seat?: PositionMetres | null;
  readonly source?: PositionMetres | null;
  readonly seatName?: string;
  readonly sourceName?: string;
  /** Of a recording close to its source, m: see `Recording`. */
  readonly nearFieldMetres?: number | null;
  /** `none` unless said: two files rarely share their time zero. */
  readonly timeReference?: Recording['timeReference'];
  /** Hz; for text without times. */
  readonly sampleRate?: number;
  /** 1-based; of a file that holds several. */
  readonly measurement?: number;
  /** Text with the response of the microphone, which is taken off. */
  readonly microphone?: FileBeside;
  /** Sound pressure level of a sine that reaches full scale, dB re 20 µPa. */
  readonly fullScaleDb?: number;
  /** The sweep that was played; the file is then the recording of it. */
  readonly sweep?: FileBeside;
}

function requireFinite(samples: Float64Array, sampleRate: number, channel: number): void {
  const first = samples.findIndex((value) => !Number.isFinite(value));
  if (first < 0) return;
  const count = samples.reduce((bad, value) => (Number.isFinite(value) ? bad : bad + 1), 0);
  throw refusal('not-finite', { channel, count, firstSeconds: first / sampleRate });
}

/**
 * One channel of decoded audio as a recording. The samples are not changed: no scaling, no shift to the onset, an
 * offset is noted and kept.
 *
 * @param hash SHA-256 of the bytes that the audio was read from.
 * @throws RingdownError `channel-range`, `too-short`, `not-finite`, `silent`, `only-loopback`, `no-samples`
 */
export function recordingFromAudio(audio: DecodedAudio, hash: string, options: OpenOptions = {}): Recording {
  const { sampleRate, channels } = audio;
  const frames = channels[0]?.length ?? 0;
  if (frames === 0) throw refusal('no-samples', {});
  if (frames < shortestSeconds * sampleRate)
    throw refusal('too-short', {
      seconds: frames / sampleRate,
      samples: frames,
      neededSeconds: shortestSeconds,
    });
  const { channel, notes } = chooseChannel(channels, sampleRate, options.channel);
  const samples = channels[channel - 1];
  requireFinite(samples, sampleRate, channel);
  if (samples.every((value) => value === samples[0])) throw refusal('silent', { channels: 1 });
  const places = audio.places?.[channel - 1] ?? null;
  // Only places from a corner of the room are places in it.
  const inRoom = places?.origin === 'corner' ? places : null;
  return {
    samples,
    sampleRate,
    channel,
    channelCount: channels.length,
    ...(audio.measurement !== undefined && { measurement: audio.measurement }),
    onsetSeconds: onsetIndex(samples, sampleRate) / sampleRate,
    timeReference: options.timeReference ?? 'none',
    label: options.label ?? '',
    hash,
    stage: options.stage ?? '',
    seat: options.seat ?? inRoom?.seat ?? null,
    source: options.source ?? inRoom?.source ?? null,
    ...(places && { filePlaces: places }),
    ...(options.seatName && { seatName: options.seatName }),
    ...(options.sourceName && { sourceName: options.sourceName }),
    ...(typeof options.nearFieldMetres === 'number' && { nearFieldMetres: options.nearFieldMetres }),
    notes: [...audio.notes, ...notes, ...placesNote(places), ...dcNotes(samples, sampleRate)],
  };
}

/** `positions`: where the file says that microphone and source were, and from where that is counted. */
function placesNote(places: FilePlaces | null): Note[] {
  if (!places) return [];
  const { origin, seat, source, roomMetres } = places;
  return [
    {
      code: 'positions',
      params: {
        origin,
        ...{ seatX: seat.x, seatY: seat.y, seatZ: seat.z },
        ...{ sourceX: source.x, sourceY: source.y, sourceZ: source.z },
        distanceMetres: maths.hypot(seat.x - source.x, seat.y - source.y, seat.z - source.z),
        ...(roomMetres && { length: roomMetres.x, width: roomMetres.y, height: roomMetres.z }),
      },
    },
  ];
}

/**
 * Samples already in memory as a recording, copied. Their hash is that of the 64-bit float WAV file they would make,
 * so that samples and file are known as one; samples with NaN or infinity are refused before.
 *
 * @param samples One array, or one per channel, all of the same length.
 * @param sampleRate Hz; whole numbers where the hash is to equal that of a file.
 * @throws RingdownError `rate`, `lengths-differ`, `too-long` and those of `recordingFromAudio`
 */
export function recordingFromSamples(
  samples: Float64Array | Float32Array | readonly (Float64Array | Float32Array)[],
  sampleRate: number,
  options: OpenOptions = {},
): Recording {
  const given = ArrayBuffer.isView(samples) ? [samples] : samples;
  if (!(sampleRate >= lowestSampleRate && sampleRate <= highestSampleRate))
    throw refusal('rate', { rate: sampleRate, lowest: lowestSampleRate, highest: highestSampleRate });
  const expected = given[0]?.length ?? 0;
  given.forEach(({ length }, index) => {
    if (length !== expected)
      throw refusal('lengths-differ', { channel: index + 1, samples: length, expected });
  });
  requireFits(expected, given.length, sampleRate);
  const channels = given.map((channel) => Float64Array.from(channel));
  const audio = { sampleRate, channels, encoding: 'float-64', notes: [] };
  const recording = recordingFromAudio(audio, '', options);
  return { ...recording, hash: samplesHash(channels, sampleRate) };
}

function samplesHash(channels: readonly Float64Array[], sampleRate: number): string {
  const finite = channels.map((samples) => samples.map((value) => (Number.isFinite(value) ? value : 0)));
  return hashOf(encodeWav({ channels: finite, sampleRate: Math.round(sampleRate), encoding: 'float-64' }));
}
