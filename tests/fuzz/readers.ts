import { readFileSync } from 'node:fs';
import { readRecording, readSettings, type Settings } from '../../src/elements/shared/settings.js';
import {
  decodeWav,
  defaultSweep,
  encodeWav,
  makeSweep,
  openNow,
  openRecording,
  readMicrophone,
  RingdownError,
  sofaAudio,
  recordingFromAudio,
  type Rng,
  type WavEncoding,
} from '../../src/signal/index.js';
import { flacHeader } from '../../src/signal/flac.js';
import { openHdf5 } from '../../src/signal/vendor/hdf5.js';
import { positionFromText, roomFromText } from '../../src/study/inputs.js';
import { documentText, openStudyText, studyDocument } from '../../src/study/document.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { defaultDesign } from '../../src/study/system-design.js';
import { createPlan, createRoom, parseCorners, predictRoom, wallsFromNames } from '../../src/room/index.js';
import { parseNumber, parseNumberList } from '../../src/words/index.js';
import { flacFile } from '../support/flac.js';
import { singleRoom, sofaFile } from '../support/sofa-files.js';
import { addMode } from '../support/signals.js';
import { damagedDocument, hostileTexts, microphoneText, responseText, roomTexts } from './grammars.js';
import { oneOf } from './mutate.js';

/** One reader of what comes from outside. */
export interface Reader {
  readonly name: string;
  /** Throws a `RingdownError` and nothing else. */
  readonly read: (bytes: Uint8Array) => unknown;
  readonly seeds: readonly Uint8Array[];
  /** An input by the rules of the format; none where mutations of the seeds are all there is. */
  readonly make: ((rng: Rng) => Uint8Array) | null;
  /** Put into inputs as they are. */
  readonly words: readonly string[];
  /** Typed arrays that it may make: so many times the input, and so much beside. Bytes. */
  readonly timesInput: number;
  readonly beside: number;
}

const encoder = new TextEncoder();
const decoder = new TextDecoder();
const text = (value: string): Uint8Array => encoder.encode(value);

const encodings: readonly WavEncoding[] = [
  ...(['pcm-8', 'pcm-16', 'pcm-24', 'pcm-32', 'pcm-24-in-32', 'float-32', 'float-64'] as const),
];
const decay = (length: number, rate: number): Float64Array =>
  addMode(new Float64Array(length), rate, 50, 0.3, 0.4, 0.01);

const wavSeeds = (): Uint8Array[] =>
  encodings.flatMap((encoding) =>
    (['riff', 'rf64', 'bw64'] as const).map((container) =>
      encodeWav({ channels: [decay(300, 8000), decay(300, 8000)], sampleRate: 8000, encoding, container }),
    ),
  );

/** A sweep of half a second and the file of what was heard, one behind the other, each with its length before it. */
function sweptSeed(): Uint8Array {
  const samples = makeSweep({ ...defaultSweep, sampleRate: 4000, seconds: 0.6, toHz: 800 });
  const heard = new Float64Array(samples.length + 1200);
  heard.set(
    samples.map((value) => 0.5 * value),
    40,
  );
  const [a, b] = [heard, samples].map((one) =>
    encodeWav({ channels: [one], sampleRate: 4000, encoding: 'pcm-16' }),
  );
  const both = new Uint8Array(4 + a.length + b.length);
  new DataView(both.buffer).setUint32(0, a.length, true);
  both.set(a, 4);
  both.set(b, 4 + a.length);
  return both;
}

function readSwept(bytes: Uint8Array): unknown {
  const length = bytes.length < 4 ? 0 : new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true);
  const heard = bytes.subarray(4, 4 + length);
  const sweep = { label: '', bytes: bytes.subarray(4 + length) };
  return openNow(heard, null, { sweep });
}

async function sofaSeeds(): Promise<Uint8Array[]> {
  const cube = (size: number): number[] => Array.from(decay(size, 8000));
  const place = { shape: [1, 3], data: [1, 2, 1.2], attributes: { Type: 'cartesian', Units: 'metre' } };
  const variables = {
    'Data.IR': { shape: [2, 1, 120], data: cube(240) },
    'Data.SamplingRate': { shape: [1], data: [8000], attributes: { Units: 'hertz' } },
    'Data.Delay': { shape: [1, 1], data: [0] },
    ListenerPosition: place,
    SourcePosition: { ...place, attributes: { Type: 'spherical', Units: 'degree, degree, metre' } },
    RoomCornerA: { ...place, data: [0, 0, 0] },
    RoomCornerB: { ...place, data: [5, 4, 3] },
  };
  const packed = { ...variables, 'Data.IR': { ...variables['Data.IR'], chunks: [1, 1, 60] } };
  const emitters = { ...variables, 'Data.IR': { shape: [1, 1, 120, 2], data: cube(240) } };
  return [
    await sofaFile({ attributes: singleRoom, variables }),
    await sofaFile({ attributes: singleRoom, variables, libver: 'latest' }),
    await sofaFile({ attributes: singleRoom, variables: packed }),
    await sofaFile({ attributes: { ...singleRoom, DataType: 'FIR-E' }, variables: emitters }),
    await sofaFile({ attributes: { ...singleRoom, RoomType: 'free field' }, variables }),
  ];
}

async function studySeeds(): Promise<object[]> {
  const study = createStudy({ pool: createPool({ routes: [] }) });
  const at = { x: 3.6, y: 1.5, z: 1.2 };
  const bytes = encodeWav({ channels: [decay(1600, 4000)], sampleRate: 4000, encoding: 'float-32' }).buffer;
  const about = { seat: at, source: at, seatName: 'console', sourceName: 'A', fullScaleDb: 110 };
  const microphone = { label: 'm', bytes: text('20 -3\n200 0.5') };
  await study.addRecording(bytes, { label: 'one', stage: 'before', microphone, ...about });
  study.setPlaces([{ kind: 'seat', name: 'console', at }]);
  study.setRoom(
    createRoom({ size: { lengthMetres: 5, widthMetres: 4, heightMetres: 2.6 }, absorption: 0.1 }),
  );
  const box = studyDocument(await study.settled(), defaultDesign);
  const plan = createPlan(parseCorners('0,0 6,0 6,3 3,3 3,5 0,5'), 2.5);
  study.setRoom(createRoom({ plan, absorption: wallsFromNames(['carpet'], 8) }));
  const other = studyDocument(study.snapshot, defaultDesign);
  study.dispose();
  return [box, other];
}

/** Attributes of elements, a line each: what is typed into a page or a form. */
function readAttributes(bytes: Uint8Array): unknown {
  const lines = decoder.decode(bytes).split('\n');
  const at = (k: number): string | null => lines[k] ?? null;
  const settings: Settings = {
    ...{ room: at(0), plan: at(1), height: at(2), walls: at(3), temperature: at(4), humidity: at(5) },
    ...{ speed: at(6), absorption: at(7), from: at(8), to: at(9), method: at(10), window: at(11) },
    ...{ step: at(12), span: at(13), limit: at(14), range: at(15), axis: at(16), smoothing: at(17) },
    scale: at(26),
  };
  const { room, choices, failures } = readSettings(settings);
  const [failure] = failures;
  if (failure) throw new RingdownError(failure.code, { ...failure.params });
  const about = { label: at(18), seat: at(19), source: at(20), stage: at(21), channel: at(22), rate: at(23) };
  return [room, choices, readRecording({ ...about, clock: at(24), measurement: at(25) }, 'x', new Map())];
}

function attributesMade(rng: Rng): Uint8Array {
  const { size, corners, height, walls, number, list, place } = roomTexts;
  const some = (make: (rng: Rng) => string, likely: number): string =>
    rng.uniform() < likely ? make(rng) : '';
  const word = (...words: readonly string[]): string =>
    oneOf(rng, ['', ...words, ...hostileTexts.slice(0, 2)]);
  const boxed = rng.uniform() < 0.6;
  return text(
    [
      ...[boxed ? size(rng) : '', boxed ? '' : corners(rng), boxed ? '' : height(rng), some(walls, 0.1)],
      ...[some(number, 0.1), some(number, 0.1), some(number, 0.05), some(list, 0.1), some(number, 0.1)],
      ...[some(number, 0.1), word('sliding', 'cumulative'), some(number, 0.1), some(number, 0.1)],
      ...[some(number, 0.1), word('target'), some(number, 0.1), word('log', 'linear'), word('1/12')],
      ...[oneOf(rng, hostileTexts), some(place, 0.7), some(place, 0.7), oneOf(rng, hostileTexts)],
      ...[some(number, 0.2), some(number, 0.2), word('common', 'none'), some(number, 0.2)],
      word('auto', 'clear'),
    ].join('\n'),
  );
}

/** One string by several rules: a room and what lies in it, and lists of numbers. */
function readRoomText(bytes: Uint8Array): unknown {
  const [kind, ...rest] = decoder.decode(bytes).split('|');
  const given = rest.join('|');
  if (kind === 'size') return roomFromText({ size: given });
  if (kind === 'plan') {
    const room = roomFromText({ plan: given, height: '2.4' });
    // What is accepted is also computed: a mesh that never ends would be the page's.
    return [room, room.plan!.corners.length > 12 ? null : predictRoom(room, { toHz: 60 })];
  }
  if (kind === 'height') return roomFromText({ plan: '0,0 5,0 5,4 0,4', height: given });
  if (kind === 'place') return positionFromText(given);
  const [number, list] = [parseNumber(given), parseNumberList(given)];
  if (number === null && list === null)
    throw new RingdownError('attribute-list', { name: kind, text: given });
  return [number, list?.map((one) => one)];
}

function roomTextMade(rng: Rng): Uint8Array {
  const [kind, make] = oneOf(rng, [
    ...[['size', roomTexts.size] as const, ['plan', roomTexts.corners] as const],
    ...[['height', roomTexts.height] as const, ['place', roomTexts.place] as const],
    ...[['number', roomTexts.number] as const, ['list', roomTexts.list] as const],
  ]);
  return text(`${kind}|${make(rng)}`);
}

function readFlac(bytes: Uint8Array): unknown {
  return flacHeader(bytes);
}

const jsonWords = [
  'null',
  '1e999',
  '-1',
  '[]',
  '{}',
  '"',
  '\\u0000',
  '"__proto__":',
  ',',
  '[[[[[[[[',
  '"x":1,',
];
const tones = Array.from(decay(400, 8000), (value) => Math.round(value * 30000));

/** Every reader, with inputs of the formats that it reads. */
export async function readers(): Promise<readonly Reader[]> {
  const wav = wavSeeds();
  const documents = await studySeeds();
  const flac = flacFile([tones, tones], 8000, 16);
  const fixture = new Uint8Array(readFileSync('tests/fixtures/single-room.sofa'));
  return [
    {
      ...{ name: 'wav', seeds: wav, make: null, timesInput: 200, beside: 65_536 },
      words: ['RIFF', 'RF64', 'BW64', 'RIFX', 'WAVE', 'fmt ', 'data', 'ds64', 'LIST', 'fact'],
      read: (bytes) => openRecording(bytes),
    },
    {
      ...{ name: 'wav-channels', seeds: wav, make: null, timesInput: 30, beside: 65_536 },
      words: ['fmt ', 'data', 'ds64'],
      read: (bytes) => decodeWav(bytes).sampleRate,
    },
    {
      ...{ name: 'flac', seeds: [flac], make: null, words: ['fLaC'], timesInput: 1, beside: 4096 },
      read: readFlac,
    },
    {
      ...{ name: 'text', seeds: [text('0.1\n0.2\n'), text('0 1\n0.001 2')], timesInput: 200, beside: 65_536 },
      make: (rng) => text(responseText(rng)),
      words: [
        ',',
        '.',
        ';',
        '\t',
        ' ',
        '\n',
        '\r\n',
        '1e999',
        '-',
        '#',
        'ms',
        '\ufeff',
        '0,0',
        ...hostileTexts,
      ],
      read: (bytes) => openRecording(bytes, bytes.length % 4 ? { sampleRate: 8000 } : {}),
    },
    {
      ...{ name: 'microphone', seeds: [text('20 -3\n200 0.5')], timesInput: 30, beside: 65_536 },
      make: (rng) => text(microphoneText(rng)),
      words: [',', '.', ';', '\t', ' ', '\n', '1e999', '-', '*', '"'],
      read: (bytes) => readMicrophone(bytes),
    },
    {
      ...{ name: 'sofa', seeds: [...(await sofaSeeds()), fixture], make: null, timesInput: 640 },
      ...{ words: ['SOFA', 'FIR', 'FIR-E', 'TREE', 'SNOD', 'HEAP', 'OHDR', 'FRHP', 'BTHD'], beside: 2 ** 22 },
      read: (bytes) => recordingFromAudio(sofaAudio(openHdf5, bytes), ''),
    },
    {
      ...{ name: 'sweep', seeds: [sweptSeed()], make: null, timesInput: 2000, beside: 2 ** 20 },
      words: ['fmt ', 'data'],
      read: readSwept,
    },
    {
      ...{ name: 'study', seeds: documents.map((one) => text(documentText(one as never))) },
      ...{ words: [...jsonWords, ...hostileTexts], timesInput: 30, beside: 65_536 },
      make: (rng) => text(damagedDocument(oneOf(rng, documents), rng)),
      read: (bytes) => openStudyText(decoder.decode(bytes)),
    },
    {
      ...{ name: 'room', seeds: [text('size|5x4x2.5'), text('plan|0,0 6,0 6,3 3,3 3,5 0,5')] },
      ...{
        words: ['x', '×', ',', ';', ' ', "'", '"', 'm', 'ft', 'cm', '-', '1e9'],
        timesInput: 2 ** 20,
        beside: 2 ** 26,
      },
      make: roomTextMade,
      read: readRoomText,
    },
    {
      ...{ name: 'attributes', seeds: [text('5x4x2.5')], make: attributesMade },
      ...{ words: ['\n', 'x', ',', ';', ...hostileTexts], timesInput: 30, beside: 65_536 },
      read: readAttributes,
    },
  ];
}
