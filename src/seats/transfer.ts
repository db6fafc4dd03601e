import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { RingdownError } from '../signal/errors.js';
import type { Job, Recording } from '../signal/types.js';
import type { TransferMatrix } from './types.js';
import * as maths from '../signal/maths.js';

/** What a transfer needs of a recording. */
export type TransferRecording = Pick<
  Recording,
  'samples' | 'sampleRate' | 'timeReference' | 'label' | 'reduced'
>;

/** The last part of the window fades, so that its end makes no ripple. Fraction. */
const fadeShare = 0.2;
/** The recurrence of the phasor restarts so often: its error stays below 1e-13. */
const restartSamples = 256;

/**
 * Complex response of one recording at a list of frequencies, on the file's own clock (time zero is the file's first
 * sample): the sum of samples times exp(-j 2 pi f t), each sample of a digital impulse response counting as it stands.
 * The bass is decimated first (110 dB stop-band); an evident offset is taken off.
 *
 * @param toSeconds End of the window on the file's clock; its last fifth fades.
 */
export function transferOf(
  { samples, sampleRate, reduced }: TransferRecording,
  frequenciesHz: Float64Array,
  toSeconds: number,
): { re: Float64Array; im: Float64Array } {
  const top = frequenciesHz[frequenciesHz.length - 1];
  const low = decimate(withoutOffset(samples, sampleRate), sampleRate, top);
  const startSeconds = reduced?.startSeconds ?? 0;
  const first = startSeconds + low.firstIndex / low.sampleRate;
  const count = Math.min(
    low.samples.length,
    Math.max(0, Math.ceil((toSeconds - first) * low.sampleRate) + 1),
  );
  const fadeFrom = toSeconds * (1 - fadeShare);
  // A reduced copy stands for so many more samples of its file.
  const gain = low.factor * (reduced ? reduced.sampleRate / sampleRate : 1);
  const windowed = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    const t = first + n / low.sampleRate;
    const share = Math.min(1, Math.max(0, (t - fadeFrom) / (toSeconds - fadeFrom)));
    windowed[n] = gain * low.samples[n] * maths.square(maths.cos((Math.PI / 2) * share));
  }
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  frequenciesHz.forEach((frequency, f) => {
    const w = (2 * Math.PI * frequency) / low.sampleRate;
    const [cs, sn] = [maths.cos(w), maths.sin(w)];
    let [sumRe, sumIm] = [0, 0];
    for (let from = 0; from < count; from += restartSamples) {
      const angle = 2 * Math.PI * frequency * (first + from / low.sampleRate);
      let c = maths.cos(angle);
      let s = maths.sin(angle);
      const to = Math.min(count, from + restartSamples);
      for (let n = from; n < to; n++) {
        sumRe += windowed[n] * c;
        sumIm -= windowed[n] * s;
        const next = c * cs - s * sn;
        s = s * cs + c * sn;
        c = next;
      }
    }
    re[f] = sumRe;
    im[f] = sumIm;
  });
  return { re, im };
}

const durationOf = ({ samples, sampleRate, reduced }: TransferRecording): number =>
  reduced?.seconds ?? samples.length / sampleRate;

/**
 * Responses of sources at seats over a list of frequencies. All recordings share one window, that of the shortest, so
 * that their sum is that of the sources.
 *
 * @param grid `grid[source][seat]`: one recording per point.
 * @throws RingdownError `points-missing` where a point has no recording; `time-reference` with `label` where a recording
 *   does not share the clock of the others
 */
export function* transferMatrix(
  grid: readonly (readonly (TransferRecording | null)[])[],
  frequenciesHz: Float64Array,
): Job<TransferMatrix> {
  const sourceCount = grid.length;
  const seatCount = grid[0]?.length ?? 0;
  const all = grid.flat();
  const missing = all.filter((recording) => recording === null).length;
  if (missing > 0 || all.length === 0)
    throw new RingdownError('points-missing', { missing, points: Math.max(all.length, 1) });
  const list = all as TransferRecording[];
  const stranger = list.find(({ timeReference }) => timeReference !== 'common');
  if (stranger && sourceCount > 1) throw new RingdownError('time-reference', { label: stranger.label });
  const toSeconds = Math.min(...list.map(durationOf));
  const columns = frequenciesHz.length;
  const re = new Float64Array(list.length * columns);
  const im = new Float64Array(list.length * columns);
  for (const [point, recording] of list.entries()) {
    const spectrum = transferOf(recording, frequenciesHz, toSeconds);
    re.set(spectrum.re, point * columns);
    im.set(spectrum.im, point * columns);
    yield { stage: 'transfer', fraction: (point + 1) / list.length };
  }
  return { frequenciesHz, sourceCount, seatCount, re, im };
}
