import { refusal } from './error-codes.js';
import { complexFft, inverseFft, nextPowerOfTwo, realFft } from './fft.js';
import { hashOf } from './hash.js';
import { containerOf } from './read-audio.js';
import { columnsOf } from './text.js';
import type { Job, MicrophoneResponse, Note } from './types.js';
import * as maths from './maths.js';

/** A microphone whose response lies further off than this is none, dB: the columns are others, or the unit is. */
const mostDb = 40;
/** The correction rings no longer than this: its narrowest feature is a band of some hertz in the bass. */
const ringSeconds = 1;
/** The range in which a correction is told, Hz: that of modes. */
const toldHz = [20, 200] as const;

/**
 * The response of a microphone as text: frequency (Hz) and level (dB) per line, as it comes with a measuring microphone;
 * a third column (phase) is passed over, since the microphones in use are of minimum phase (common practice). Parted and
 * written as the text of recordings is.
 *
 * @throws RingdownError `microphone-none`, `microphone-columns`, `microphone-order`, `microphone-level`, `text-line`,
 * `text-ambiguous`
 */
export function readMicrophone(bytes: Uint8Array, label = ''): MicrophoneResponse {
  const rows = containerOf(bytes) === 'text' ? columnsOf(bytes, 2) : [];
  if (rows.length < 2) throw refusal('microphone-none', { lines: rows.length });
  rows.forEach(({ values, line }, k) => {
    const [frequencyHz, levelDb] = values;
    if (values.length < 2 || values.length > 3)
      throw refusal('microphone-columns', { columns: values.length, line });
    if (!(frequencyHz > 0 && (k === 0 || frequencyHz > rows[k - 1].values[0])))
      throw refusal('microphone-order', { frequencyHz, line });
    if (!(Math.abs(levelDb) <= mostDb)) throw refusal('microphone-level', { levelDb, mostDb, line });
  });
  return {
    label,
    hash: hashOf(bytes),
    frequenciesHz: rows.map(({ values }) => values[0]),
    levelsDb: rows.map(({ values }) => values[1]),
  };
}

/** Level at a frequency: linear in dB over the logarithm of frequency; beyond the ends, the value at the end. */
export function microphoneLevel(
  { frequenciesHz, levelsDb }: MicrophoneResponse,
  frequencyHz: number,
): number {
  const last = frequenciesHz.length - 1;
  if (!(frequencyHz > frequenciesHz[0])) return levelsDb[0];
  if (frequencyHz >= frequenciesHz[last]) return levelsDb[last];
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (frequenciesHz[middle] <= frequencyHz) low = middle;
    else high = middle;
  }
  const share =
    maths.log(frequencyHz / frequenciesHz[low]) / maths.log(frequenciesHz[high] / frequenciesHz[low]);
  return levelsDb[low] + share * (levelsDb[high] - levelsDb[low]);
}

/**
 * What the microphone would have heard without its own response, in a new array of the same length: divided by the
 * minimum-phase response of that magnitude (Oppenheim and Schafer, Discrete-Time Signal Processing: the phase is the
 * Hilbert transform of the log magnitude, by the folded cepstrum). Causal, so that nothing rings before the onset. What the
 * file leaves out below its lowest frequency turns the phase in the bass and changes no level in it.
 */
export function* withoutMicrophone(
  samples: Float64Array,
  sampleRate: number,
  microphone: MicrophoneResponse,
): Job<Float64Array> {
  const size = nextPowerOfTwo(samples.length + Math.round(ringSeconds * sampleRate));
  const one = new Float64Array(2 * size);
  const two = new Float64Array(2 * size);
  // Log magnitude of the correction at every bin, then its cepstrum.
  for (let k = 0; k <= size / 2; k++) {
    const log = (-Math.LN10 / 20) * microphoneLevel(microphone, (k * sampleRate) / size);
    one[2 * k] = log;
    one[2 * ((size - k) % size)] = log;
  }
  inverseFft(one, two);
  yield { stage: 'microphone', fraction: 0.2 };
  // Twice the causal half: log magnitude and phase of the minimum-phase correction.
  one.fill(0);
  one[0] = two[0];
  for (let n = 1; n < size / 2; n++) one[2 * n] = 2 * two[2 * n];
  one[size] = two[size];
  complexFft(one, two);
  yield { stage: 'microphone', fraction: 0.4 };
  const padded = new Float64Array(size);
  padded.set(samples);
  realFft(padded, one);
  yield { stage: 'microphone', fraction: 0.6 };
  for (let k = 0; k <= size / 2; k++) {
    const gain = maths.exp(two[2 * k]);
    const re = gain * maths.cos(two[2 * k + 1]);
    const im = gain * maths.sin(two[2 * k + 1]);
    const [xr, xi] = [one[2 * k], one[2 * k + 1]];
    one[2 * k] = re * xr - im * xi;
    one[2 * k + 1] = re * xi + im * xr;
    // Of real samples the other half is the conjugate.
    const mirror = 2 * ((size - k) % size);
    if (k > 0 && k < size / 2) {
      one[mirror] = one[2 * k];
      one[mirror + 1] = -one[2 * k + 1];
    }
  }
  inverseFft(one, two);
  yield { stage: 'microphone', fraction: 0.9 };
  return Float64Array.from(samples, (_, n) => two[2 * n]);
}

/** `microphone`: whose response was taken off, over which range, and how much that is in the bass. */
export function microphoneNote(microphone: MicrophoneResponse): Note {
  const { label, frequenciesHz } = microphone;
  let at: number = toldHz[0];
  for (let f: number = toldHz[0]; f <= toldHz[1]; f *= maths.power(2, 1 / 24))
    if (Math.abs(microphoneLevel(microphone, f)) > Math.abs(microphoneLevel(microphone, at))) at = f;
  return {
    code: 'microphone',
    params: {
      label,
      points: frequenciesHz.length,
      fromHz: frequenciesHz[0],
      toHz: frequenciesHz[frequenciesHz.length - 1],
      mostDb: -microphoneLevel(microphone, at),
      mostHz: at,
    },
  };
}
