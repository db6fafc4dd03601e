/** Reads a document that may be anything: every field is looked at before it is believed. */
import { RingdownError } from '../signal/errors.js';
import { mostRecordings, nearFieldBounds } from '../signal/limits.js';
import type { MicrophoneResponse, Note, PositionMetres, Recording } from '../signal/types.js';
import { createPlan, createRoom, type Plan } from '../room/index.js';
import type { AbsorptionBand, Room } from '../room/types.js';
import {
  checkedBand,
  deepestMatchDb,
  defaultBounds,
  mostBandsOfAll,
  type Band,
  type BandMatch,
  type SourceSetting,
} from '../seats/index.js';
import { decodeSamples } from './base64.js';
import { choicesFailure, choiceWords, defaultChoices } from './choices.js';
import type { OpenedStudy } from './document.js';
import { migrated, type Plain } from './migrations.js';
import { defaultDesign } from './system-design.js';
import type { SystemDesign } from './system-types.js';
import type { StudyChoices, StudyPlace } from './types.js';
import { actions, emptyTexts, papers, type SheetTexts } from './sheet-texts.js';
import { documentVersion } from './version.js';

/** One field and where it lies, for the sentence that refuses it. */
class Field {
  constructor(
    readonly value: unknown,
    readonly where: string,
  ) {}

  refuse(): never {
    throw new RingdownError('study-broken', { where: this.where });
  }

  get object(): Plain {
    const { value } = this;
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Plain)
      : this.refuse();
  }

  get list(): Field[] {
    const { value, where } = this;
    return Array.isArray(value)
      ? value.map((item, k) => new Field(item, `${where}[${k + 1}]`))
      : this.refuse();
  }

  at(name: string): Field {
    return new Field(this.object[name], this.where ? `${this.where}.${name}` : name);
  }

  number(from = -Infinity, to = Infinity): number {
    const { value } = this;
    return typeof value === 'number' && value >= from && value <= to ? value : this.refuse();
  }

  integer(from: number, to: number): number {
    const value = this.number(from, to);
    return Number.isInteger(value) ? value : this.refuse();
  }

  get text(): string {
    return typeof this.value === 'string' ? this.value : this.refuse();
  }

  get flag(): boolean {
    return typeof this.value === 'boolean' ? this.value : this.refuse();
  }

  choice<T extends string>(choices: readonly T[]): T {
    return choices.find((choice) => choice === this.value) ?? this.refuse();
  }

  orNull<T>(read: (field: this) => T): T | null {
    return this.value === null || this.value === undefined ? null : read(this);
  }
}

const position = (field: Field): PositionMetres => ({
  x: field.at('x').number(-100, 100),
  y: field.at('y').number(-100, 100),
  z: field.at('z').number(-100, 100),
});

function note(field: Field): Note {
  const params = field.at('params').object;
  const plain = Object.values(params).every(
    (value) => value === null || ['string', 'number', 'boolean'].includes(typeof value),
  );
  return plain ? ({ code: field.at('code').text, params } as Note) : field.refuse();
}

const microphone = (field: Field): MicrophoneResponse => ({
  label: field.at('label').text,
  hash: field.at('hash').text,
  frequenciesHz: field.at('frequenciesHz').list.map((one) => one.number(0, 1e6)),
  levelsDb: field.at('levelsDb').list.map((one) => one.number(-100, 100)),
});

function recording(field: Field): Recording {
  const low = field.at('low');
  const samples = decodeSamples(low.at('samples').text) ?? low.at('samples').refuse();
  if (samples.length === 0) low.at('samples').refuse();
  const sampleRate = low.at('sampleRate').number(100, 384000);
  const startSeconds = low.at('startSeconds').number(-1, 1);
  const [seatName, sourceName] = ['seatName', 'sourceName'].map((name) =>
    field.at(name).orNull((f) => f.text),
  );
  // Absent where it was saved before recordings could be close to a source.
  const nearFieldMetres = field.at('nearFieldMetres').orNull((f) => f.number(...nearFieldBounds));
  const response = field.at('microphone').orNull(microphone);
  const fullScaleDb = field.at('fullScaleDb').orNull((f) => f.number(0, 300));
  const sweep = field.at('sweep').orNull((f) => ({ label: f.at('label').text, hash: f.at('hash').text }));
  return {
    samples,
    sampleRate,
    channel: field.at('channel').integer(1, 1024),
    channelCount: field.at('channelCount').integer(1, 1024),
    onsetSeconds: field.at('onsetSeconds').number(0, 3600) - startSeconds,
    timeReference: field.at('timeReference').choice(['common', 'none']),
    label: field.at('label').text,
    hash: field.at('hash').text,
    stage: field.at('stage').text,
    seat: field.at('seat').orNull(position),
    source: field.at('source').orNull(position),
    ...(seatName && { seatName }),
    ...(sourceName && { sourceName }),
    ...(nearFieldMetres !== null && { nearFieldMetres }),
    reduced: {
      sampleRate: field.at('sampleRate').number(100, 384000),
      seconds: field.at('seconds').number(0.001, 3600),
      startSeconds,
      toHz: low.at('toHz').number(1, 200000),
    },
    notes: field.at('notes').list.map(note),
    ...(response && { microphone: response }),
    ...(fullScaleDb !== null && { fullScaleDb }),
    ...(sweep && { sweep }),
  };
}

const metres = (field: Field): number => field.number(0, 1000);

const plan = (field: Field): Plan =>
  createPlan(
    field.at('corners').list.map((corner) => ({ x: metres(corner.at('x')), y: metres(corner.at('y')) })),
    metres(field.at('heightMetres')),
  );

const coefficients = (field: Field): number[] => field.list.map((one) => one.number(0, 1));

const absorptionBand = (field: Field): AbsorptionBand => ({
  frequencyHz: field.at('frequencyHz').number(1, 20000),
  absorption: coefficients(field.at('absorption')),
});

function room(field: Field): Room {
  const size = field.at('size');
  const bands = field.at('absorptionBands').orNull((f) => f.list.map(absorptionBand));
  return createRoom({
    size: {
      lengthMetres: metres(size.at('lengthMetres')),
      widthMetres: metres(size.at('widthMetres')),
      heightMetres: metres(size.at('heightMetres')),
    },
    plan: field.at('plan').orNull(plan),
    speedOfSoundMetresPerSecond: field.at('speedOfSoundMetresPerSecond').number(),
    temperatureCelsius: field.at('temperatureCelsius').orNull((f) => f.number()),
    humidityPercent: field.at('humidityPercent').orNull((f) => f.number()),
    absorption: bands ?? field.at('absorption').orNull(coefficients),
  });
}

const place = (field: Field): StudyPlace => ({
  kind: field.at('kind').choice(['seat', 'source']),
  name: field.at('name').text,
  at: position(field.at('at')),
});

/** Choices of today's kind with what the document says of them; what is new since keeps its default. */
function choices(field: Field): StudyChoices {
  const given = field.object;
  const read: Record<string, unknown> = {};
  for (const [name, standard] of Object.entries(defaultChoices)) {
    if (!(name in given)) continue;
    const one = field.at(name);
    read[name] = typeof standard === 'number' ? one.number(0, 1e6) : one.text;
  }
  const all = { ...defaultChoices, ...read };
  if (choicesFailure(all)) field.refuse();
  const chosen = new Field(all, field.where);
  for (const [name, words] of Object.entries(choiceWords)) chosen.at(name).choice(words);
  return all;
}

const bandMatch = (field: Field): BandMatch => ({
  frequencyHz: field.at('frequencyHz').number(1, 2000),
  decayTimeSeconds: field.at('decayTimeSeconds').number(1e-3, 1000),
  targetSeconds: field.at('targetSeconds').number(1e-3, 1000),
});

function band(field: Field): Band {
  const match = field.at('match').orNull(bandMatch);
  return checkedBand(
    {
      ...(match && { match }),
      kind: field.at('kind').choice(['peaking', 'low-shelf', 'high-shelf', 'all-pass']),
      frequencyHz: field.at('frequencyHz').number(),
      gainDb: field.at('gainDb').number(),
      q: field.at('q').number(),
    },
    48000,
  );
}

const setting = (field: Field): SourceSetting => ({
  gainDb: field.at('gainDb').number(-80, 20),
  delaySeconds: field.at('delaySeconds').number(0, 1),
  inverted: field.at('inverted').flag,
  muted: field.at('muted').flag,
  bands: field.at('bands').list.map(band),
});

const entries = <T>(field: Field, read: (one: Field) => T): Record<string, T> =>
  Object.fromEntries(Object.keys(field.object).map((key) => [key, read(field.at(key))]));

const bandLimits = (field: Field): SystemDesign['limits'] => ({
  mostBands: field.at('mostBands').integer(1, mostBandsOfAll),
  lowestSeatDb: field.at('lowestSeatDb').number(-30, 0),
  deepestDb: field.at('deepestDb').number(deepestMatchDb, 0),
});

function design(field: Field): SystemDesign {
  const bounds = field.at('bounds');
  return {
    ...defaultDesign,
    stage: field.at('stage').orNull((f) => f.text),
    settings: entries(field.at('settings'), setting),
    bands: field.at('bands').list.map(band),
    weights: entries(field.at('weights'), (one) => one.number(0, 1000)),
    fromHz: field.at('fromHz').number(5, 1000),
    toHz: field.at('toHz').number(5, 1000),
    sampleRate: field.at('sampleRate').number(1000, 768000),
    // Absent where it was saved before the proposal had limits of its own.
    limits: field.at('limits').orNull(bandLimits) ?? defaultDesign.limits,
    bounds: {
      ...defaultBounds,
      lowestGainDb: bounds.at('lowestGainDb').number(-40, 0),
      longestDelaySeconds: bounds.at('longestDelaySeconds').number(0, 0.1),
      polarity: bounds.at('polarity').flag,
      leastLevelDb: bounds.at('leastLevelDb').number(-40, 0),
    },
  };
}

/** Absent where it was saved before there was a sheet. */
const sheet = (field: Field): SheetTexts => ({
  title: field.at('title').text,
  client: field.at('client').text,
  author: field.at('author').text,
  date: field.at('date').text,
  notes: field.at('notes').text,
  paper: field.at('paper').choice(papers),
  decisions: field.at('decisions').list.map((one) => ({
    frequencyHz: one.at('frequencyHz').number(0, 1e6),
    action: one.at('action').choice(actions),
    note: one.at('note').text,
  })),
});

/** @throws RingdownError `study-not-ours`, `study-newer`, `study-broken`, `study-full`, and those of `createRoom` */
export function readDocument(data: unknown): OpenedStudy {
  const root = new Field(data, '');
  if (typeof data !== 'object' || data === null) throw new RingdownError('study-not-ours');
  const document = new Field(migrated(root.object, documentVersion), '');
  const given = document.at('recordings').list;
  if (given.length > mostRecordings)
    throw new RingdownError('study-full', { count: given.length, most: mostRecordings });
  const recordings = given.map(recording);
  return {
    recordings,
    room: document.at('room').orNull(room),
    // Absent where it was saved before places had names of their own.
    places: document.at('places').orNull((f) => f.list.map(place)) ?? [],
    choices: choices(document.at('choices')),
    active: document.at('active').integer(0, Math.max(0, recordings.length - 1)),
    design: document.at('design').orNull(design),
    sheet: document.at('sheet').orNull(sheet) ?? emptyTexts,
  };
}
