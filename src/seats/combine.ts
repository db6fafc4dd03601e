import { withoutOffset } from '../signal/dc.js';
import { RingdownError } from '../signal/errors.js';
import { complexFft, inverseFft, nextPowerOfTwo } from '../signal/fft.js';
import { hashOf } from '../signal/hash.js';
import type { Job, Recording } from '../signal/types.js';
import { reducedCopy } from './reduce.js';
import { settingResponse } from './sum.js';
import type { SourceSetting } from './types.js';

/** Room behind the samples for delays and for filters that ring. s. */
const spareSeconds = 2;

/**
 * The samples that would be measured at one seat with all sources playing through their settings: their recordings, each
 * delayed, turned down, turned over and filtered, added on their common clock. The result is a low-frequency recording like
 * any other, to be fitted and drawn.
 *
 * @param recordings One per source, of one seat.
 * @throws RingdownError `time-reference` with `label`, `rates-differ` with `label`, `rate`, `expected`; `all-muted`
 */
export function combineAtSeat(
  recordings: readonly Recording[],
  settings: readonly SourceSetting[],
): Recording {
  const heard = recordings
    .map((recording, k) => ({ recording, setting: settings[k] }))
    .filter(({ setting }) => !setting.muted);
  if (heard.length === 0) throw new RingdownError('all-muted');
  const copies = heard.map(({ recording, setting }) => ({ copy: reducedCopy(recording), setting }));
  const [first] = copies;
  const rate = first.copy.sampleRate;
  for (const { copy } of copies) {
    if (heard.length > 1 && copy.timeReference !== 'common')
      throw new RingdownError('time-reference', { label: copy.label });
    if (
      Math.abs(copy.sampleRate / rate - 1) > 1e-9 ||
      copy.reduced?.startSeconds !== first.copy.reduced?.startSeconds
    )
      throw new RingdownError('rates-differ', {
        label: copy.label,
        rate: copy.reduced?.sampleRate ?? copy.sampleRate,
        expected: first.copy.reduced?.sampleRate ?? rate,
      });
  }
  const length = Math.min(...copies.map(({ copy }) => copy.samples.length));
  const size = nextPowerOfTwo(length + spareSeconds * rate);
  const sum = new Float64Array(2 * size);
  const frequenciesHz = Float64Array.from({ length: size / 2 + 1 }, (_, k) => (k * rate) / size);
  const input = new Float64Array(2 * size);
  const bins = new Float64Array(2 * size);
  for (const { copy, setting } of copies) {
    input.fill(0);
    const samples = withoutOffset(copy.samples.subarray(0, length), rate);
    for (let n = 0; n < length; n++) input[2 * n] = samples[n];
    complexFft(input, bins);
    const through = settingResponse(setting, frequenciesHz);
    for (let k = 0; k <= size / 2; k++) {
      const [br, bi] = [bins[2 * k], bins[2 * k + 1]];
      sum[2 * k] += br * through.re[k] - bi * through.im[k];
      sum[2 * k + 1] += br * through.im[k] + bi * through.re[k];
    }
  }
  // A real signal's upper bins are the conjugates of the lower; the middle one is real.
  sum[size + 1] = 0;
  for (let k = 1; k < size / 2; k++) {
    sum[2 * (size - k)] = sum[2 * k];
    sum[2 * (size - k) + 1] = -sum[2 * k + 1];
  }
  inverseFft(sum, bins);
  const samples = Float64Array.from({ length }, (_, n) => bins[2 * n]);
  const { recording } = heard[0];
  const inputs = heard.map(({ recording: { hash, channel }, setting }) => [hash, channel, setting]);
  return {
    ...first.copy,
    samples,
    onsetSeconds: Math.min(...copies.map(({ copy, setting }) => copy.onsetSeconds + setting.delaySeconds)),
    label: recording.seatName ?? recording.label,
    hash: hashOf(new TextEncoder().encode(JSON.stringify(inputs))),
    source: heard.length === 1 ? recording.source : null,
    ...(heard.length > 1 && { sourceName: '' }),
    channel: recording.channel,
    notes: [],
  };
}

/** `combineAtSeat` for every seat: `grid[source][seat]`. */
export function* combineAll(
  grid: readonly (readonly Recording[])[],
  settings: readonly SourceSetting[],
): Job<Recording[]> {
  const seats = grid[0]?.length ?? 0;
  const combined: Recording[] = [];
  for (let seat = 0; seat < seats; seat++) {
    combined.push(
      combineAtSeat(
        grid.map((row) => row[seat]),
        settings,
      ),
    );
    yield { stage: 'combine', fraction: (seat + 1) / seats };
  }
  return combined;
}
