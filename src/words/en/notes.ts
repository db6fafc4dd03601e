import type { NumberWords, Sentence, WordParams } from '../types.js';

const given = (p: WordParams, key: string): boolean => typeof p[key] === 'number' && Number.isFinite(p[key]);
const at = (p: WordParams, key: string): number => Number(p[key]);
/** A clause that is said only where its number is known. */
const clause = (p: WordParams, key: string, say: (value: number) => string): string =>
  given(p, key) ? say(at(p, key)) : '';
const plural = (count: number, one: string, many = `${one}s`): string => (count === 1 ? one : many);
const band = (p: WordParams, n: NumberWords): string =>
  given(p, 'fromHz') && given(p, 'toHz')
    ? ` between ${n.hertz(at(p, 'fromHz'), 0)} and ${n.hertz(at(p, 'toHz'), 0)}`
    : '';

/** What the user must know before reading on: what, why it matters, what to do. */
export const notes: Readonly<Record<string, Sentence>> = {
  short: (p, n) =>
    `The recording is short${clause(p, 'seconds', (s) => `: it ends ${n.seconds(s)} after the onset`)}. Slow decays reach past its end, so their times rest on what is there and are less certain. Record at least 2 s.`,
  truncated: (p, n) =>
    `The decay was cut off${clause(p, 'atSeconds', (s) => ` at ${n.seconds(s)} after the onset`)} and silence follows. What lies past it is not the room's; record or export a longer response.`,
  noisy: (p, n) =>
    `The decay stands little above the noise${band(p, n)}${clause(p, 'rangeDb', (d) => `: ${n.decibels(d)} of range`)}. Decay times there are uncertain. Measure again with a longer sweep, more averages or less background noise.`,
  'no-range': (p, n) =>
    `Not enough range: the response${band(p, n) || ' in the bass'} stands ${given(p, 'rangeDb') ? `only ${n.decibels(at(p, 'rangeDb'))}` : 'too little'} above its own noise${clause(p, 'neededDb', (d) => `, and ${n.decibels(d)} are needed`)} to read a decay, so no resonance is reported. Measure again with a longer sweep and a source that plays this low.`,
  clipped: (p, n) =>
    `The recording is clipped${clause(p, 'count', (c) => `: ${n.integer(c)} ${plural(c, 'sample')} at full scale`)}. The start of the decay is bent; levels and early decay cannot be trusted. Measure again at a lower level.`,
  hum: (p, n) =>
    `There is hum${clause(p, 'frequencyHz', (f) => ` at ${n.hertz(f, 1)}`)}${clause(p, 'mainsHz', (f) => ` (mains of ${n.hertz(f, 0)})`)}: it never decays, so it is no room mode. It is set aside in the fit. Look for a ground loop, and measure again if it hides a ridge.`,
  'late-energy': (p, n) =>
    `There is a burst long after the start${clause(p, 'atSeconds', (s) => `, ${n.seconds(s)} after the onset`)}${clause(p, 'levelDb', (d) => `, ${n.decibels(d)} re the peak`)}: not the room's decay, but a disturbance or distortion of the sweep wrapped to the end. It is left out of the fit.`,
  'two-slopes': (p, n) =>
    `The decay${clause(p, 'frequencyHz', (f) => ` at ${n.hertz(f)}`)} bends${given(p, 'earlySeconds') && given(p, 'lateSeconds') ? `: ${n.seconds(at(p, 'earlySeconds'))} at first, ${n.seconds(at(p, 'lateSeconds'))} later` : ''}. One decay time does not describe it; a coupled room or a close pair of modes may be the cause.`,
  'channel-chosen': (p) => {
    const channel = String(p.channel ?? 1);
    const count = p.channelCount ?? p.count;
    const of = typeof count === 'number' ? ` of ${count}` : '';
    const why: Record<string, string> = {
      'only-live': ': the others are silent',
      first: ': several are live, and the first is taken unless another is named',
      asked: ', as asked',
    };
    const loopbacks = p.loopbackChosen
      ? ' It looks like a loopback, and not like a room.'
      : p.loopbacks
        ? ` Channel ${String(p.loopbacks)} looks like a loopback, and not like a room.`
        : '';
    return `Channel ${channel}${of} is read${why[String(p.reason ?? '')] ?? ''}.${loopbacks} Channels are never summed; name another if this is not the microphone.`;
  },
  'rate-suspect': (p, n) =>
    `The sample rate may be wrong: every resonance is off by one common ratio${clause(p, 'ratio', (r) => ` of ${n.number(r, 3)}`)}${given(p, 'labelledRate') && given(p, 'likelyRate') ? `, as of ${n.integer(at(p, 'likelyRate'))} Hz data labelled ${n.integer(at(p, 'labelledRate'))} Hz` : ''}. Check how the file was exported.`,
  'not-finite': (p) =>
    `${p.channels ? `Channel ${String(p.channels)} holds` : 'Another channel holds'} samples that are not numbers, and is not read.`,
  silent: (p) =>
    `${typeof p.count === 'number' && p.count > 1 ? `${p.count} channels are` : `Channel ${String(p.channel ?? '')} is`.replace('  ', ' ')} silent and not read.`,
  dc: (p, n) =>
    `The samples stand off zero${clause(p, 'shareOfPeak', (f) => ` by ${n.percent(Math.abs(f), 1)} of the peak`)}. This offset is not sound; it is left out below the lowest frequency shown.`,
  'size-guessed': (p, n) => {
    const why: Record<string, string> = {
      absent: 'The file does not say how many samples it holds',
      'beyond-end': 'The file says it holds more samples than are there',
      'partial-frame': 'The file ends within a sample',
    };
    return `${why[n.text(p.reason)] ?? 'The size in the file header is wrong'}; what is there was read${clause(p, 'readBytes', (b) => ` (${n.integer(b)} bytes)`)}. If it was cut off in copying, copy it again.`;
  },
  node: (p, n) =>
    `The ${p.place === 'source' ? 'source' : 'seat'} sits at or near a pressure node of the mode ${String(p.order ?? '')}${clause(p, 'frequencyHz', (f) => ` (${n.hertz(f)})`)}: no ridge here does not mean no mode in the room. Measure another place too.`,
  boundary: (p, n) =>
    `The dip${clause(p, 'frequencyHz', (f) => ` at ${n.hertz(f)}`)} has no tail, as of a reflection${clause(p, 'extraMetres', (d) => ` that travels ${n.metres(d)} further`)} and not of a mode. Moving the source or the seat shifts it; equalisation cannot fill it.`,
  'other-room': (p, n) =>
    `${p.label ? `“${n.text(p.label)}”` : 'One recording'} does not share the resonances of the others: it may be of another room or another stage of the work. It was left out of the joint fit.`,
};
