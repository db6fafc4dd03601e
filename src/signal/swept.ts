import { within } from './job.js';
import { refusal } from './error-codes.js';
import { deconvolve, type Deconvolved } from './deconvolve.js';
import { sweepLaw, type SweepLaw } from './sweep-law.js';
import type { DecodedAudio, Job, Note } from './types.js';

/** Impulse responses from the recording of a sweep, a channel each. */
export interface Swept {
  readonly audio: DecodedAudio;
  readonly law: SweepLaw;
  readonly responses: readonly Deconvolved[];
}

/** Channels of a recording that are all worked out when none is named. */
const mostChannels = 32;

/**
 * Works the impulse responses out of a recorded sweep, channel by channel.
 *
 * @param sweep The file that was played, or the same by wire; its first channel that sounds is taken.
 * @param channel 1-based; all channels unless said.
 * @throws RingdownError `sweep-rate`, `channel-range`, `silent`, and those of `sweepLaw` and `deconvolve`
 */
export function* responsesOfSweep(
  recording: DecodedAudio,
  sweep: DecodedAudio,
  channel?: number,
): Job<Swept> {
  const { sampleRate } = recording;
  if (sweep.sampleRate !== sampleRate)
    throw refusal('sweep-rate', { rate: sampleRate, sweepRate: sweep.sampleRate });
  const count = recording.channels.length;
  if (channel !== undefined && !(channel >= 1 && channel <= count))
    throw refusal('channel-range', { channel, count });
  const played = sweep.channels.find((samples) => samples.some((value) => value !== 0));
  if (!played) throw refusal('silent', { channels: sweep.channels.length });
  const law = sweepLaw(played, sampleRate);
  const chosen = (channel === undefined ? recording.channels : [recording.channels[channel - 1]]).slice(
    0,
    mostChannels,
  );
  const responses: Deconvolved[] = [];
  for (const [i, samples] of chosen.entries()) {
    const bad = samples.findIndex((value) => !Number.isFinite(value));
    if (bad >= 0)
      throw refusal('not-finite', { channel: channel ?? i + 1, count: 1, firstSeconds: bad / sampleRate });
    const part = deconvolve(samples, played, law);
    responses.push(yield* within(part, i / chosen.length, (i + 1) / chosen.length));
  }
  return { audio: audioOf(recording, responses, law), law, responses };
}

/** All channels from one moment of the sweep's clock to another, so that their delays stay. */
function audioOf(recording: DecodedAudio, responses: readonly Deconvolved[], law: SweepLaw): DecodedAudio {
  const first = Math.max(...responses.map(({ zeroIndex }) => zeroIndex));
  const end = Math.max(...responses.map(({ samples, zeroIndex }) => samples.length - zeroIndex));
  const channels = responses.map(({ samples, zeroIndex }) => {
    const all = new Float64Array(first + end);
    all.set(samples, first - zeroIndex);
    return all;
  });
  return {
    sampleRate: recording.sampleRate,
    channels,
    encoding: 'float-64',
    notes: [...recording.notes, sweptNote(responses, law)],
  };
}

/** `swept`: from which sweep, and how strong the distortion was that was kept out. */
function sweptNote(responses: readonly Deconvolved[], { fromHz, toHz, seconds }: SweepLaw): Note {
  const strongest = (order: number): number | null => {
    const levels = responses.flatMap(
      ({ distortion }) => distortion.find((one) => one.order === order)?.levelDb ?? [],
    );
    return levels.length > 0 ? Math.max(...levels) : null;
  };
  return {
    code: 'swept',
    params: { fromHz, toHz, seconds, secondDb: strongest(2), thirdDb: strongest(3) },
  };
}
