import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { examine } from '../../src/decay/index.js';
import {
  defaultDiagnosisParams,
  diagnose,
  type Diagnosis,
  type DiagnosisParams,
} from '../../src/diagnosis/index.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import {
  decodeWav,
  defaultSweep,
  encodeWav,
  makeSweep,
  openRecording,
  recordingFromAudio,
  recordingFromSamples,
  responsesOfSweep,
  Rng,
  sofaAudio,
  type Note,
  type Recording,
} from '../../src/signal/index.js';
import { openHdf5 } from '../../src/signal/vendor/hdf5.js';
import { drain } from './drain.js';
import { convolved, distorted } from './loudspeaker.js';
import { addMode } from './signals.js';

/** Recordings each of which gives rise to notes: what a person must be told before reading on. */

export const rate = 48000;
export const blank = (seconds = 2): Float64Array => new Float64Array(Math.round(seconds * rate));

/** The samples with white noise whose rms from 35 to 71 Hz is `sd`. */
export function withNoise(samples: Float64Array, sd: number, seed = 1): Float64Array {
  const rng = new Rng(seed);
  const deviation = sd / Math.sqrt((2 * 36) / rate);
  return samples.map((value) => value + deviation * rng.gaussian());
}

export function addHum(samples: Float64Array, mainsHz: number, levelDb: number, lines = 3): Float64Array {
  for (let k = 1; k <= lines; k++)
    for (let n = 0; n < samples.length; n++)
      samples[n] += 10 ** (levelDb / 20) * Math.sin((2 * Math.PI * mainsHz * k * n) / rate + k);
  return samples;
}

export const diagnosed = (
  given: Recording | Float64Array,
  params: Partial<DiagnosisParams> = {},
): Diagnosis => {
  const recording = given instanceof Float64Array ? recordingFromSamples(given, rate) : given;
  return drain(diagnose([recording], { ...defaultDiagnosisParams, ...params }));
};

const opened = (channels: readonly Float64Array[], channel?: number): readonly Note[] =>
  openRecording(encodeWav({ channels, sampleRate: rate, encoding: 'float-64' }), { channel }).notes;

const told = (given: Recording | Float64Array, params: Partial<DiagnosisParams> = {}): readonly Note[] =>
  diagnosed(given, params).files[0].notes;

/** What the samples alone say. */
const examined = (samples: Float64Array): readonly Note[] =>
  drain(examine(recordingFromSamples(samples, rate))).notes;

const room = createRoom({ size: { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 } });
const seat = { x: 2.8, y: 3.3, z: 1.2 };
const source = { x: 0.3, y: 0.3, z: 0.3 };

/** Of the AES69 file of the fixtures, and of the same without the corners of its room. */
function sofaNotes(): Note[] {
  const path = fileURLToPath(new URL('../fixtures/single-room.sofa', import.meta.url));
  const audio = sofaAudio(openHdf5, new Uint8Array(readFileSync(path)));
  const lost = (audio.places ?? []).map(
    (place) => place && { ...place, origin: 'file' as const, roomMetres: null },
  );
  return [audio, { ...audio, places: lost }].flatMap((one) => [...recordingFromAudio(one, '').notes]);
}

/** Of a response that was worked out of a sweep, with the harmonics of a loudspeaker and without. */
function sweptNotes(): Note[] {
  const law = { ...defaultSweep, sampleRate: 8000, seconds: 4, toHz: 800 };
  const answer = addMode(new Float64Array(4000), 8000, 50, 0.3, 0.02, 0.01);
  const audio = (samples: Float64Array) =>
    decodeWav(encodeWav({ channels: [samples], sampleRate: 8000, encoding: 'float-64' }));
  return [[0.03, 0.01], []].flatMap((shares) => {
    const heard = convolved(distorted(law, shares), answer);
    return [...drain(responsesOfSweep(audio(heard), audio(makeSweep(law)))).audio.notes];
  });
}

/** A mode whose slow part lies far below it, and traffic under another. */
function fittedNotes(): Note[] {
  const bent = addMode(addMode(blank(), rate, 45, 0.4), rate, 45.2, 1.4, 10 ** (-38 / 20));
  const rumbling = withNoise(addMode(blank(), rate, 60, 0.5), 1e-4).map((value, n) =>
    [4, 7, 9.5, 12, 14.5, 17, 19.5, 22].reduce(
      (sum, f) => sum + 0.02 * Math.sin((2 * Math.PI * f * n) / rate + f * f),
      value,
    ),
  );
  return [...told(withNoise(bent, 1e-5)), ...told(rumbling)];
}

/** Every note the engine gives, from recordings that give rise to it. */
export function everyNote(): Note[] {
  const mode = addMode(blank(), rate, 48, 0.5);
  const cut = addMode(blank(0.3), rate, 30, 1.2);
  const zeroed = blank();
  zeroed.set(cut);
  const burst = addMode(mode.slice(), rate, 55, 0.15, 0.01, 1);
  const reflected = blank(1);
  reflected[4800] = 1;
  reflected[4800 + 280] = 0.9;
  const bent = addMode(addMode(blank(), rate, 45, 0.3, 1, 0.05), rate, 45, 1.6, 10 ** (-18 / 20), 0.05);
  const { samples: box } = synthesise({
    room,
    seat: { ...seat, x: 4.1 },
    source,
    absorption: 0.12,
    noiseDb: -60,
  });
  const loopback = blank(0.5);
  loopback[100] = 0.9;
  const short = mode.slice(0, loopback.length);
  const pcm = encodeWav({ channels: [mode.map((v) => v / 2)], sampleRate: rate, encoding: 'pcm-16' });
  const open = pcm.slice();
  new DataView(open.buffer).setUint32(40, 0xffffffff, true);
  return [
    ...examined(cut),
    ...examined(zeroed),
    ...examined(withNoise(addMode(blank(), rate, 50, 0.4), 10 ** (-35 / 20))),
    ...told(withNoise(addMode(blank(), rate, 50, 0.4), 10 ** (-10 / 20))),
    ...examined(mode.map((v) => Math.max(-0.5, Math.min(0.5, v)))),
    ...told(addHum(withNoise(mode.slice(), 5e-4), 50, -40)),
    ...told(addHum(withNoise(mode.slice(), 5e-4), 60, -40, 1)),
    ...examined(burst),
    ...examined(withNoise(bent, 5e-4)),
    ...told(withNoise(addMode(addMode(blank(), rate, 45, 0.2), rate, 45, 1.6, 0.05), 1e-5)),
    ...examined(reflected),
    ...told(recordingFromSamples(box, 44100), { toHz: 120, room }),
    ...told(recordingFromSamples(box, rate, { seat, source }), { room }),
    ...told(recordingFromSamples(box, rate, { source, nearFieldMetres: 0.05 }), { room }),
    ...opened([mode, mode.map((v) => -v)]),
    ...opened([mode, blank()]),
    ...opened([mode, mode], 2),
    ...opened([loopback, short]),
    ...opened([loopback, short, loopback]),
    ...opened([short, loopback], 2),
    ...opened([mode.map((v) => v + 0.1)]),
    ...recordingFromSamples([mode, mode.map((v, i) => (i === 9 ? NaN : v))], rate).notes,
    ...fittedNotes(),
    ...sofaNotes(),
    ...sweptNotes(),
    ...examined(openRecording(encodeWav({ channels: [mode], sampleRate: rate, encoding: 'pcm-8' })).samples),
    ...openRecording(encodeWav({ channels: [mode], sampleRate: rate, encoding: 'float-32' }), {
      microphone: { label: 'A', bytes: new TextEncoder().encode('20 -3\n200 1') },
      fullScaleDb: 114,
    }).notes,
    ...openRecording(open).notes,
    ...openRecording(pcm.slice(0, pcm.length - 1)).notes,
    ...openRecording(pcm.slice(0, pcm.length - 2000)).notes,
  ];
}
