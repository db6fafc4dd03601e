import { RingdownError } from '../signal/errors.js';
import type { Recording } from '../signal/types.js';
import type { ModeOrder } from '../room/types.js';
import { choiceFields, choiceNames, choiceWords, defaultChoices, isBounds } from './choices.js';
import type { ChoiceField as Field } from './choices.js';
import type { Cursor, StudyChoices, StudySnapshot } from './types.js';

/**
 * The state of a view as a short text that survives an address: `1;to=120;axis=linear;cursor=43.9,0.31;waterfall=30,25`.
 * What is not said is as it is by default, so that one text always means one view, whatever a page's attributes say.
 */
export type LinkValue = number | string | null;

const scales = choiceWords.scale;
const metres = [0, 1000] as const;

/** What each view keeps of its own, in the units of its controls; a value that is left out is the view's own default. */
export const viewFields = {
  /** Turn and tilt, degrees; nearness; colour scale. */
  waterfall: [[-180, 180], [0, 90], [0.1, 10], scales],
  spectrogram: [scales],
  'decay-times': [['t20', 't30', 'edt']],
  /** Half the window, dB (0 for none), its level, dB, its range, Hz; other seats hidden. */
  response: [[0, 30], [-300, 300], [1, 2000], [1, 2000], ['alone']],
  recordings: [['first']],
  /** What is drawn, where it is cut, m, whether it stands still; the room, and how it is turned. */
  'pressure-map': [['motion'], metres, metres, metres, ['still'], ['room'], [-180, 180], [0, 90], [0.1, 10]],
} as const satisfies Readonly<Record<string, readonly Field[]>>;

export type LinkedViewName = keyof typeof viewFields;

export interface ViewLink {
  readonly choices: StudyChoices;
  /** Beginning of the hash, channel, measurement; null for the first recording. */
  readonly recording: string | null;
  readonly cursor: Cursor | null;
  /** Of the ridge or resonance that is selected. */
  readonly ridgeHz: number | null;
  readonly mode: ModeOrder | null;
  /** By the view's name; the second of a kind is `waterfall.2`. */
  readonly views: ReadonlyMap<string, readonly LinkValue[]>;
}

const version = '1';
/** Longer than any view's text. */
const mostLetters = 2000;

/** How a link names a recording: short, and the same wherever the file is opened. */
export const recordingMark = ({ hash, channel, measurement }: Recording): string =>
  [hash.slice(0, 8), channel, ...(measurement ? [measurement] : [])].join('.');

/** Four digits tell any two points of a picture apart. */
const short = (value: number): string => String(Number(value.toPrecision(4)));
const textOf = (value: LinkValue): string => (typeof value === 'number' ? short(value) : (value ?? ''));

export function viewLinkText(
  snapshot: StudySnapshot,
  views: Iterable<readonly [string, readonly LinkValue[]]> = [],
): string {
  const { choices, recordings, active, cursor, diagnosis, selectedRidge, selectedResonance, selectedMode } =
    snapshot;
  const parts = [version];
  for (const [name, key] of Object.entries(choiceNames))
    if (choices[key] !== defaultChoices[key]) parts.push(`${name}=${String(choices[key])}`);
  if (active > 0) parts.push(`recording=${recordingMark(recordings[active])}`);
  if (cursor) parts.push(`cursor=${short(cursor.frequencyHz)},${short(cursor.timeSeconds)}`);
  const selected =
    selectedRidge === null
      ? diagnosis?.resonances[selectedResonance ?? -1]
      : diagnosis?.ridges[selectedRidge];
  if (selected) parts.push(`ridge=${short(selected.frequencyHz)}`);
  if (selectedMode) parts.push(`mode=${selectedMode.join(',')}`);
  for (const [name, values] of views) {
    const text = values.map(textOf).join(',').replace(/,+$/, '');
    if (text) parts.push(`${name}=${text}`);
  }
  return parts.join(';');
}

/**
 * @throws RingdownError `link-version`, `link-long`, `link-part`, `band-order`: a text that is read in part would show
 *   another view than the one it was made of
 */
export function readViewLink(text: string): ViewLink {
  if (text.length > mostLetters)
    throw new RingdownError('link-long', { letters: text.length, most: mostLetters });
  const [first, ...rest] = text.split(';');
  if (first !== version)
    throw new RingdownError('link-version', { version: first.slice(0, 20), known: version });
  const parts = new Map<string, string>();
  for (const part of rest) {
    const at = part.indexOf('=');
    const name = part.slice(0, Math.max(0, at));
    if (at < 1 || parts.has(name)) throw broken(part);
    parts.set(name, part.slice(at + 1));
  }
  const take = <T>(name: string, read: (text: string) => T | null): T | null => {
    const value = parts.get(name);
    if (value === undefined) return null;
    parts.delete(name);
    const result = read(value);
    if (result === null) throw broken(`${name}=${value}`);
    return result;
  };
  const choices: Record<string, number | string> = { ...defaultChoices };
  for (const [name, key] of Object.entries(choiceNames)) {
    const value = take(name, (given) => readValue(given, choiceFields[name as keyof typeof choiceNames]));
    if (value !== null) choices[key] = value;
  }
  if (!(choices.fromHz < choices.toHz))
    throw new RingdownError('band-order', { fromHz: Number(choices.fromHz), toHz: Number(choices.toHz) });
  const numbers =
    (...bounds: readonly Field[]) =>
    (given: string) =>
      readValues(given, bounds, true) as number[] | null;
  const cursor = take('cursor', numbers([1, 2000], [-60, 60]));
  const ridge = take('ridge', numbers([1, 2000]));
  const mode = take('mode', (given) =>
    /^\d{1,3},\d{1,3},\d{1,3}$/.test(given) ? given.split(',').map(Number) : null,
  );
  const recording = take('recording', (given) =>
    /^[0-9a-f]{8}(\.\d{1,7}){1,2}$/.test(given) ? given : null,
  );
  const views = new Map<string, readonly LinkValue[]>();
  for (const [name, value] of parts) {
    const kind = /^([a-z-]+)(\.([2-9]|[1-9]\d))?$/.exec(name)?.[1] ?? '';
    const values = Object.hasOwn(viewFields, kind)
      ? readValues(value, viewFields[kind as LinkedViewName], false)
      : null;
    if (!values) throw broken(`${name}=${value}`);
    views.set(name, values);
  }
  return {
    choices: choices as unknown as StudyChoices,
    recording,
    cursor: cursor && { frequencyHz: cursor[0], timeSeconds: cursor[1] },
    ridgeHz: ridge && ridge[0],
    mode: mode as ModeOrder | null,
    views,
  };
}

const broken = (part: string): RingdownError => new RingdownError('link-part', { part: part.slice(0, 40) });

function readValue(text: string, field: Field): number | string | null {
  if (!isBounds(field)) return field.find((word) => word === text) ?? null;
  if (!/^-?\d{1,6}(\.\d{1,9})?(e-?\d)?$/.test(text)) return null;
  const value = Number(text);
  return value >= field[0] && value <= field[1] ? value : null;
}

/** Values apart by commas, in the order of the fields; null where one cannot be, or one too many is given. */
function readValues(text: string, fields: readonly Field[], all: boolean): LinkValue[] | null {
  const texts = text.split(',');
  if (texts.length > fields.length || (all && texts.length < fields.length)) return null;
  const values = texts.map((one, k) => (one === '' && !all ? null : readValue(one, fields[k])));
  return values.some((value, k) => value === null && (all || texts[k] !== '')) ? null : values;
}

const partName = (id: string): string => (id ? `ringdown.${encodeURIComponent(id)}` : 'ringdown');

/** What an address says after its `#` for the study of an id (none for ''); null where it says nothing. */
export function linkInFragment(fragment: string, id: string): string | null {
  const start = `${partName(id)}=`;
  const part = fragment
    .replace(/^#/, '')
    .split('&')
    .find((one) => one.startsWith(start));
  if (part === undefined) return null;
  const text = part.slice(start.length);
  try {
    return decodeURIComponent(text);
  } catch {
    // A stray per cent sign: it is refused as it stands.
    return text;
  }
}

/** A fragment that says so, and keeps what it says of other studies. */
export function fragmentWith(fragment: string, id: string, link: string): string {
  const start = `${partName(id)}=`;
  const others = fragment
    .replace(/^#/, '')
    .split('&')
    .filter((part) => part.includes('=') && !part.startsWith(start));
  return [...others, start + link].join('&');
}
