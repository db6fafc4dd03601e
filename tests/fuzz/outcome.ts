import { RingdownError } from '../../src/signal/index.js';
import { createSpeaker } from '../../src/words/index.js';
import { notFinite } from '../support/finite.js';
import { countedBytes, TooMuch } from './allocation.js';
import type { Reader } from './readers.js';

/** What came of one input: a result, or one refusal of ours; else what is wrong with it. */
export interface Outcome {
  /** `read`, or the code of the refusal. */
  readonly what: string;
  readonly complaint: string | null;
  readonly bytes: number;
  readonly milliseconds: number;
}

const speaker = createSpeaker('en', { space: ' ' });

/** Longer than this no refusal is read: it would be the input itself. */
const mostLetters = 700;
const holes = /undefined|NaN|Infinity|\[object/;

/** A sentence: it ends as one does, and shows neither a hole nor an object. */
export function sentenceComplaint(error: RingdownError): string | null {
  // What is quoted may say anything: a word that would be a hole of ours is one of the input's.
  const params = Object.fromEntries(
    Object.entries(error.params).map(([name, value]) => [
      name,
      typeof value === 'string' && holes.test(value) ? 'quoted' : value,
    ]),
  );
  const sentence = speaker.error({ code: error.code, params });
  if (sentence.length > mostLetters) return `${sentence.length} letters for ${error.code}`;
  if (!Object.hasOwn(speaker.words.errors, error.code)) return `no sentence for ${error.code}`;
  if (!/[.!?]$/.test(sentence) || holes.test(sentence))
    return `“${sentence}” is no sentence (${error.message.slice(0, 200)})`;
  return null;
}

/** Milliseconds of processor time by which an input of up to 64 KiB is answered. */
export const mostMilliseconds = 250;

function once(reader: Reader, bytes: Uint8Array): Outcome {
  countedBytes();
  const begin = process.cpuUsage();
  let what = 'read';
  let complaint: string | null;
  try {
    complaint = notFinite(reader.read(bytes));
  } catch (thrown) {
    if (thrown instanceof RingdownError) {
      what = thrown.code;
      complaint = sentenceComplaint(thrown);
    } else if (thrown instanceof TooMuch) complaint = thrown.message;
    else complaint = `${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`;
  }
  // Not by the clock: other programs share the machine.
  const { user, system } = process.cpuUsage(begin);
  const milliseconds = (user + system) / 1000;
  const allocated = countedBytes();
  const most = reader.timesInput * bytes.length + reader.beside;
  if (!complaint && allocated > most)
    complaint = `${allocated} bytes of arrays for ${bytes.length} bytes of input, more than ${most}`;
  return { what, complaint, bytes: allocated, milliseconds };
}

/** Slow is slow only where it is so again: the first run of a code is compiled in it. */
export function outcomeOf(reader: Reader, bytes: Uint8Array): Outcome {
  let outcome = once(reader, bytes);
  for (let times = 0; times < 4 && !outcome.complaint && outcome.milliseconds > mostMilliseconds; times++)
    outcome = once(reader, bytes);
  if (outcome.complaint || outcome.milliseconds <= mostMilliseconds) return outcome;
  return { ...outcome, complaint: `${outcome.milliseconds.toFixed(0)} ms for ${bytes.length} bytes` };
}
