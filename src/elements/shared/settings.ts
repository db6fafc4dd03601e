import { choiceFields, choiceNames, isBounds } from '../../study/choices.js';
import { failureOf } from '../../study/failure.js';
import {
  nearFieldBounds,
  nearFieldMetres,
  positionFromText,
  RingdownError,
  roomFromText,
} from '../../study/inputs.js';
import type { RecordingOptions, StudyChoices, StudyFailure, StudySnapshot } from '../../study/types.js';
import { parseNumber, parseNumberList } from '../../words/index.js';

/** An attribute's text, or what a script set as a property. */
export type Given = string | number | null | undefined;

type Room = NonNullable<StudySnapshot['room']>;
type Position = NonNullable<RecordingOptions['seat']>;

/** What attributes say of room and choices, as written. */
export type Settings = Readonly<
  Record<
    | ('room' | 'plan' | 'height' | 'walls' | 'temperature' | 'humidity' | 'speed' | 'absorption')
    | keyof typeof choiceNames,
    Given
  >
>;

export interface ReadSettings {
  readonly room: Room | null;
  readonly choices: Partial<StudyChoices>;
  /** What could not be read: its setting is left at its default. */
  readonly failures: readonly StudyFailure[];
}

const given = (value: Given): value is string | number =>
  value !== null && value !== undefined && String(value).trim() !== '';

export function readNumber(name: string, value: Given, range?: readonly [number, number]): number | null {
  if (!given(value)) return null;
  const number = typeof value === 'number' ? value : parseNumber(value);
  if (number === null || !Number.isFinite(number))
    throw new RingdownError('attribute-number', { name, text: String(value) });
  if (range && !(number >= range[0] && number <= range[1]))
    throw new RingdownError('attribute-range', { name, value: number, from: range[0], to: range[1] });
  return number;
}

function readChoice<T extends string>(name: string, value: Given, choices: readonly T[]): T | null {
  if (!given(value)) return null;
  const found = choices.find((choice) => choice === String(value).trim());
  if (found === undefined)
    throw new RingdownError('attribute-choice', { name, text: String(value), choices: choices.join(', ') });
  return found;
}

function readList(name: string, value: Given): number[] | null {
  if (!given(value)) return null;
  const list = parseNumberList(String(value));
  if (list === null) throw new RingdownError('attribute-list', { name, text: String(value) });
  return list;
}

/** What the attribute `crossorigin` means, as of images: credentials go to other origins only where it says so. */
export const credentialsOf = (crossOrigin: string | null): RequestCredentials =>
  crossOrigin?.trim().toLowerCase() === 'use-credentials' ? 'include' : 'same-origin';

/** A thrown value as a failure of one recording, or of the whole study. */
export function failed(error: unknown, label: string | null = null): StudyFailure {
  return { ...failureOf(error), label };
}

/** Room and choices from attributes. A wrong one is a failure in words; it never stops the others. */
export function readSettings(settings: Settings): ReadSettings {
  const failures: StudyFailure[] = [];
  const attempt = <T>(read: () => T | null): T | null => {
    try {
      return read();
    } catch (error) {
      failures.push(failed(error));
      return null;
    }
  };
  const room = attempt(() =>
    given(settings.room) || given(settings.plan)
      ? roomFromText({
          size: String(settings.room),
          plan: given(settings.plan) ? String(settings.plan) : null,
          height: given(settings.height) ? String(settings.height) : null,
          walls: given(settings.walls) ? String(settings.walls) : null,
          temperatureCelsius: readNumber('temperature', settings.temperature),
          humidityPercent: readNumber('humidity', settings.humidity),
          speedOfSoundMetresPerSecond: readNumber('speed', settings.speed),
          absorption: readList('absorption', settings.absorption),
        })
      : null,
  );
  const choices: Record<string, number | string> = {};
  for (const name of Object.keys(choiceNames) as (keyof typeof choiceNames)[]) {
    const [value, field] = [settings[name], choiceFields[name]];
    const read = attempt<number | string>(() =>
      isBounds(field) ? readNumber(name, value, field) : readChoice(name, value, field),
    );
    if (read !== null) choices[choiceNames[name]] = read;
  }
  return { room, choices, failures };
}

/** From and to together, once defaults have filled what was not given. */
export function checkOrder(choices: StudyChoices): StudyFailure | null {
  const { fromHz, toHz } = choices;
  return fromHz < toHz ? null : { code: 'attribute-order', params: { fromHz, toHz }, label: null };
}

/** What attributes say of one recording, as written. */
export interface RecordingSettings {
  readonly label: Given;
  readonly seat: Given;
  readonly source: Given;
  readonly stage: Given;
  readonly channel: Given;
  readonly rate?: Given;
  readonly measurement?: Given;
  readonly calibration?: Given;
  readonly clock?: Given;
  readonly nearField?: Given;
}

/**
 * @param places By name; a seat or source that is none of them is read as three distances.
 * @throws RingdownError where an attribute cannot be read: a recording on a wrong channel would be a silent guess
 */
export function readRecording(
  settings: RecordingSettings,
  fallbackLabel: string,
  places: ReadonlyMap<string, Position>,
): RecordingOptions {
  const place = (value: Given): Position | null => {
    if (!given(value)) return null;
    const text = String(value).trim();
    const named = places.get(text);
    if (named) return named;
    if (!/\d/.test(text)) throw new RingdownError('place-unknown', { text });
    return positionFromText(text);
  };
  const channel = readNumber('channel', settings.channel, [1, 1024]);
  const sampleRate = readNumber('rate', settings.rate, [1000, 384000]);
  const measurement = readNumber('measurement', settings.measurement, [1, 1e6]);
  const clock = readChoice('clock', settings.clock, ['common', 'none'] as const);
  const named = (value: Given): string | undefined =>
    places.has(String(value).trim()) ? String(value).trim() : undefined;
  const [seatName, sourceName] = [named(settings.seat), named(settings.source)];
  const fullScaleDb = readNumber('calibration', settings.calibration, [40, 200]);
  const close = settings.nearField;
  const nearField = close === '' ? nearFieldMetres : readNumber('near-field', close, nearFieldBounds);
  return {
    label: given(settings.label) ? String(settings.label) : fallbackLabel,
    seat: place(settings.seat),
    source: place(settings.source),
    ...(clock !== null && { timeReference: clock }),
    ...(seatName !== undefined && { seatName }),
    ...(sourceName !== undefined && { sourceName }),
    ...(given(settings.stage) && { stage: String(settings.stage) }),
    ...(channel !== null && { channel: Math.round(channel) }),
    ...(sampleRate !== null && { sampleRate }),
    ...(measurement !== null && { measurement: Math.round(measurement) }),
    ...(fullScaleDb !== null && { fullScaleDb }),
    ...(nearField !== null && { nearFieldMetres: nearField }),
  };
}

/** The file's name of an address, without its ending: what a reader would call it. */
export function nameOf(url: string): string {
  const path = url.split(/[?#]/)[0];
  const name = path.slice(path.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(name).replace(/\.(wave?|flac|sofa|txt|csv)$/i, '');
  } catch {
    return name;
  }
}
