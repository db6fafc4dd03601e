import { refusal } from './error-codes.js';
import { peakOf } from './level.js';
import type { Note } from './types.js';
import * as maths from './maths.js';

/** A channel that is quieter than this beside the loudest, dB, is an open input: crosstalk and idle noise. */
const liveRangeDb = -60;

/** A loopback holds more than this share of its energy within this time (design of the product). */
const loopbackShare = 0.9;
const loopbackSeconds = 0.002;

export type ChannelReason = 'only-live' | 'first' | 'asked';

export interface ChannelFacts {
  /** 1-based. */
  readonly channel: number;
  /** Largest excursion from the mean, full scale 1; NaN and infinity are passed over. */
  readonly peak: number;
  /** Samples that are NaN or infinite. */
  readonly notFinite: number;
  /** Largest share of the energy (mean removed) within 2 ms. */
  readonly shareWithin2ms: number;
  readonly loopback: boolean;
}

export interface ChannelChoice {
  /** 1-based. */
  readonly channel: number;
  readonly notes: readonly Note[];
}

/** What of a channel decides whether it is taken. */
export function channelFacts(samples: Float64Array, sampleRate: number, channel: number): ChannelFacts {
  let sum = 0;
  let notFinite = 0;
  for (const value of samples) {
    if (Number.isFinite(value)) sum += value;
    else notFinite++;
  }
  const mean = sum / Math.max(1, samples.length - notFinite);
  const centred = samples.map((value) => (Number.isFinite(value) ? value - mean : 0));
  const peak = peakOf(centred);
  // Scaled by the peak, so that neither tiny nor huge samples leave the range of the squares.
  const energies = peak > 0 ? centred.map((value) => maths.square(value / peak)) : centred;
  const total = energies.reduce((all, energy) => all + energy, 0);
  const width = Math.max(1, Math.round(loopbackSeconds * sampleRate));
  let within = 0;
  let most = 0;
  for (let i = 0; i < energies.length; i++) {
    within += energies[i];
    if (i >= width) within -= energies[i - width];
    if (within > most) most = within;
  }
  const shareWithin2ms = total > 0 ? most / total : 0;
  return { channel, peak, notFinite, shareWithin2ms, loopback: shareWithin2ms > loopbackShare };
}

/**
 * Chooses the one channel that is read: the one asked for; else the only live one that is no loopback; else the first
 * such. Channels are never summed. A single channel is taken as it is, since nothing is there to choose.
 *
 * @param asked 1-based.
 * @throws RingdownError `channel-range`, `silent`, `only-loopback`
 */
export function chooseChannel(
  channels: readonly Float64Array[],
  sampleRate: number,
  asked?: number,
): ChannelChoice {
  const count = channels.length;
  if (asked !== undefined && !(Number.isInteger(asked) && asked >= 1 && asked <= count))
    throw refusal('channel-range', { channel: asked, count });
  if (count === 1) return { channel: 1, notes: [] };

  const facts = channels.map((samples, index) => channelFacts(samples, sampleRate, index + 1));
  const loud = facts.filter(({ peak }) => peak > 0);
  if (asked === undefined && loud.length === 0 && facts.every(({ notFinite }) => notFinite === 0))
    throw refusal('silent', { channels: count });
  const loopbacks = loud.filter(({ loopback }) => loopback);
  const rooms = loud.filter(({ loopback }) => !loopback);
  const loudest = Math.max(...rooms.map(({ peak }) => peak));
  const live = rooms.filter(({ peak }) => peak >= loudest * maths.power(10, liveRangeDb / 20));
  const broken = facts.filter(({ notFinite }) => notFinite > 0);
  const whole = live.filter(({ notFinite }) => notFinite === 0);
  if (asked === undefined && live.length === 0 && broken.length === 0)
    throw refusal('only-loopback', { count });

  const chosen = asked ?? (whole[0] ?? live[0] ?? broken[0]).channel;
  const reason: ChannelReason = asked !== undefined ? 'asked' : live.length === 1 ? 'only-live' : 'first';
  const list = (some: readonly ChannelFacts[]) => some.map(({ channel }) => channel).join(' ');
  const notes: Note[] = [
    {
      code: 'channel-chosen',
      params: {
        channel: chosen,
        count,
        reason,
        live: live.length,
        loopbacks: list(loopbacks),
        loopbackChosen: loopbacks.some(({ channel }) => channel === chosen),
      },
    },
  ];
  const skipped = broken.filter(({ channel }) => channel !== chosen);
  if (skipped.length > 0) notes.push({ code: 'not-finite', params: { channels: list(skipped) } });
  return { channel: chosen, notes };
}
