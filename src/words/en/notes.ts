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
    `The recording is short${clause(p, 'seconds', (s) => `: it ends ${n.seconds(s)} after the onset`)}${clause(p, 'fallDb', (d) => `, where the bass has fallen ${n.decibels(d)}`)}. Slow decays reach past its end, so their times rest on what is there and are less certain. Record at least 2 s.`,
  truncated: (p, n) =>
    `The decay was cut off${clause(p, 'atSeconds', (s) => ` at ${n.seconds(s)} after the onset`)}${clause(p, 'levelDb', (d) => `, while it still sounded (${n.decibels(d)} re its start)`)}, and silence follows. What lies past it is not the room's; record or export a longer response.`,
  noisy: (p, n) =>
    `The decay stands little above the noise${band(p, n)}${clause(p, 'rangeDb', (d) => `: ${n.decibels(d)} of range in the worst third-octave`)}${clause(p, 'neededDb', (d) => `, where ${n.decibels(d)} are wanted`)}. Decay times there are uncertain. Measure again with a longer sweep, more averages or less background noise.`,
  'no-range': (p, n) =>
    `Not enough range: the response${band(p, n) || ' in the bass'} stands ${given(p, 'rangeDb') ? `only ${n.decibels(at(p, 'rangeDb'))}` : 'too little'} above its own noise, or what is left at its end${clause(p, 'neededDb', (d) => `, and ${n.decibels(d)} are needed`)} to read a decay, so no resonance is reported. Measure again with a longer sweep and a source that plays this low.`,
  clipped: (p, n) =>
    `The recording is clipped${clause(p, 'count', (c) => `: ${n.integer(c)} ${plural(c, 'sample')} in runs of one extreme value`)}${clause(p, 'lastSeconds', (s) => `, the last ${n.seconds(s, 3)} from the start of the file`)}. The start of the decay is bent; levels and early decay cannot be trusted. Measure again at a lower level.`,
  quantised: (p, n) =>
    `The samples are stored in steps of ${n.integer(p.bits)} bits without dither: below half a step, ${n.decibels(p.rangeDb)} under the peak, the decay is stored as silence${clause(p, 'atSeconds', (s) => `, which begins ${n.seconds(s)} after the onset`)}. That silence is not the room's, and the range of every band ends there. Export with 24 bits or as float.`,
  hum: (p, n) => {
    const lines = typeof p.linesHz === 'string' ? p.linesHz.split(' ').map((f) => n.hertz(Number(f), 1)) : [];
    const where = lines.length > 1 ? `${lines.slice(0, -1).join(', ')} and ${lines.at(-1)}` : lines[0];
    const strongest =
      lines.length > 1
        ? clause(p, 'frequencyHz', (f) => `, strongest at ${n.hertz(f)}`)
        : clause(
            { ...p, frequencyHz: where ? null : p.frequencyHz },
            'frequencyHz',
            (f) => ` at ${n.hertz(f)}`,
          );
    return `There is hum${where ? ` at ${where}` : ''}${strongest}${clause(p, 'levelDb', (d) => ` (${n.decibels(d)} re the loudest resonance)`)}${clause(p, 'mainsHz', (f) => `, of mains of ${n.hertz(f, 0)}`)}: it never decays, so it is no room mode. It is set aside in the fit. Look for a ground loop, and measure again if it hides a ridge.`;
  },
  'late-energy': (p, n) =>
    `There is a burst long after the start${clause(p, 'atSeconds', (s) => `, ${n.seconds(s)} after the onset`)}${clause(p, 'levelDb', (d) => `, ${n.decibels(d)} re the peak`)}${clause(p, 'riseDb', (d) => ` and ${n.decibels(d)} above what came before it`)}: not the room's decay, but a disturbance or distortion of the sweep wrapped to the end. No ridge rests on it. Measure again, and keep the distortion apart when the sweep is evaluated.`,
  'two-slopes': (p, n) => {
    const where =
      given(p, 'fromHz') && given(p, 'toHz')
        ? `${band(p, n)}`
        : clause(p, 'frequencyHz', (f) => ` at ${n.hertz(f)}`);
    const stretch = (from: string, to: string): string =>
      given(p, from) && given(p, to) ? ` from ${n.number(at(p, from), 0)} to ${n.decibels(at(p, to))}` : '';
    const both =
      given(p, 'earlySeconds') && given(p, 'lateSeconds')
        ? `: ${n.seconds(at(p, 'earlySeconds'))}${stretch('earlyFromDb', 'earlyToDb') || ' at first'}, ${n.seconds(at(p, 'lateSeconds'))}${stretch('lateFromDb', 'lateToDb') || ' later'}`
        : '';
    const read = `${clause(p, 'bandHz', (f) => `, read in the third-octave of ${n.hertz(f, 0)}`)}${
      given(p, 'fitFromSeconds') && given(p, 'fitToSeconds')
        ? `, both fitted from ${n.seconds(at(p, 'fitFromSeconds'), 3)} to ${n.seconds(at(p, 'fitToSeconds'))} after the onset`
        : ''
    }`;
    return `The decay${where} bends${both}${read}. One decay time does not describe it; a coupled room, or modes of one band that decay apart, may be the cause. Say which stretch a figure was read from, and look at the late decay too.`;
  },
  'bent-decay': (p, n) =>
    `The decay${clause(p, 'frequencyHz', (f) => ` at ${n.hertz(f)}`)} bends: a slower part stays${clause(p, 'levelDb', (d) => `, starting ${n.decibels(Math.abs(d))} below`)}. Coloured noise, or a room that changed during the measurement, can make it, so it is not told as a resonance of its own.`,
  rumble: (p, n) =>
    `There is rumble${clause(p, 'toHz', (f) => ` up to ${n.hertz(f, 0)}`)} far above the noise elsewhere. It is filtered out, and nothing is read there. Traffic, ventilation and wind make it; measure again without it if the lowest modes matter.`,
  'channel-chosen': (p) => {
    const channel = String(p.channel ?? 1);
    const of = typeof p.count === 'number' ? ` of ${p.count}` : '';
    const why: Record<string, string> = {
      'only-live': p.loopbacks ? ': it is the only live one that is no loopback' : ': the others are silent',
      first: `: ${typeof p.live === 'number' && p.live > 1 ? p.live : 'several'} are live, and the first is taken unless another is named`,
      asked: ', as asked',
    };
    const looks = String(p.loopbacks ?? '').includes(' ') ? 'Channels' : 'Channel';
    const loopbacks = p.loopbackChosen
      ? ' It looks like a loopback, and not like a room.'
      : p.loopbacks
        ? ` ${looks} ${String(p.loopbacks)} ${looks === 'Channel' ? 'looks like a loopback' : 'look like loopbacks'}, and not like a room.`
        : '';
    return `Channel ${channel}${of} is read${why[String(p.reason ?? '')] ?? ''}.${loopbacks} Channels are never summed; name another if this is not the microphone.`;
  },
  'rate-suspect': (p, n) =>
    `The sample rate may be wrong: every resonance is off by one common ratio${clause(p, 'ratio', (r) => ` of ${n.number(r, 3)}`)}${given(p, 'labelledRate') && given(p, 'likelyRate') ? `, as of ${n.integer(at(p, 'likelyRate'))} Hz data labelled ${n.integer(at(p, 'labelledRate'))} Hz` : ''}. A room given that much too large or too small looks the same. Check how the file was exported, and the room.`,
  'not-finite': (p) =>
    `${p.channels ? `Channel ${String(p.channels)} holds` : 'Another channel holds'} samples that are not numbers, and is not read. Export the file again if it is wanted.`,
  silent: (p) =>
    `${typeof p.count === 'number' && p.count > 1 ? `${p.count} channels are` : `Channel ${String(p.channel ?? '')} is`.replace('  ', ' ')} silent and not read.`,
  dc: (p, n) =>
    `The samples stand off zero${clause(p, 'offset', (o) => ` by ${n.significant(o, 2)} of full scale`)}${clause(p, 'shareOfPeak', (f) => `, ${n.percent(f, 1)} of the peak`)}. This offset is not sound; it is left out below the lowest frequency shown. Where it comes from an input, mend it.`,
  'size-guessed': (p, n) => {
    const why: Record<string, string> = {
      absent: 'The file does not say how many samples it holds',
      'beyond-end': 'The file says it holds more samples than are there',
      'partial-frame': 'The file ends within a sample',
    };
    return `${why[n.text(p.reason)] ?? 'The size in the file header is wrong'}; what is there was read${clause(p, 'readBytes', (b) => ` (${n.integer(b)} bytes${clause(p, 'declaredBytes', (d) => `; the header says ${n.integer(d)}`)})`)}. If it was cut off in copying, copy it again.`;
  },
  node: (p, n) =>
    `${typeof p.number === 'number' ? `${p.place === 'source' ? 'Source' : 'Seat'} ${p.number}` : `The ${p.place === 'source' ? 'source' : 'seat'}`} sits at or near a pressure node of the mode ${String(p.order ?? '')}${clause(p, 'frequencyHz', (f) => ` (${n.hertz(f)})`)}: no ridge here does not mean no mode in the room. Measure another place too.`,
  'near-field': (p, n) =>
    `This recording was made close to its source (${n.metres(p.metres)}): it tells what the source itself does, and is no seat. What hangs here is not what is heard in the room.`,
  boundary: (p, n) =>
    `The dip${clause(p, 'frequencyHz', (f) => ` at ${n.hertz(f)}`)}${clause(p, 'depthDb', (d) => `, ${n.decibels(d)} deep,`)} has no tail, as of a reflection${clause(p, 'extraMetres', (d) => ` that travels ${n.metres(d)} further than the direct sound (${n.metres(d / 2)} for a surface straight behind)`)} and not of a mode${clause(p, 'explained', (e) => `; one reflection explains ${n.percent(e)} of the shape of the early spectrum`)}. Moving the source or the seat shifts it; equalisation cannot fill it.`,
  'other-room': (p, n) =>
    `${p.label ? `“${n.text(p.label)}”` : 'One recording'} does not share the resonances of the others: it may be of another room or another stage of the work. It was left out of the joint fit.`,
  aligned: (p, n) =>
    `${p.label ? `“${n.text(p.label)}”` : 'One recording'} was made in other air: its resonances lie${clause(p, 'percent', (v) => ` ${n.number(Math.abs(v), 2)} % ${v > 0 ? 'higher' : 'lower'}`)} than those of the first that belongs here${clause(p, 'percent', (v) => `, as air ${n.number(Math.abs(v) / 0.17, 1)} °C ${v > 0 ? 'warmer' : 'colder'} makes them`)}. Its time was stretched to fit the others; frequencies are told as the first has them.`,
  'measurement-chosen': (p, n) =>
    `Measurement ${n.integer(p.measurement)} of ${n.integer(p.count)} is read${p.asked ? ', as asked' : ', the first, unless another is named'}.${clause(p, 'delaySeconds', (s) => ` The file asks for a delay of ${n.seconds(s, 4)} in front of its samples, which is not added.`)} A file with several measurements holds several recordings; name another to read it.`,
  swept: (p, n) => {
    const orders = [
      clause(p, 'secondDb', (d) => `second order ${n.decibels(d)}`),
      clause(p, 'thirdDb', (d) => `third order ${n.decibels(d)}`),
    ].filter(Boolean);
    return `The impulse response was worked out from a recorded sweep of ${n.significant(p.fromHz)} to ${n.hertz(p.toHz, 0)} in ${n.seconds(p.seconds, 1)}; nothing outside that band is in it. ${orders.length > 0 ? `Distortion re the response: ${orders.join(', ')}. It` : 'No distortion stood out of the noise; it'} lies before the response and is kept out of it.`;
  },
  microphone: (p, n) =>
    `The response of the microphone is taken off${p.label ? ` (“${n.text(p.label)}”` : ' ('}${p.label ? ', ' : ''}${n.integer(p.points)} points from ${n.significant(p.fromHz)} to ${n.hertz(p.toHz, 0)}): ${n.decibels(p.mostDb, 1)} at most in the bass, at ${n.hertz(p.mostHz)}. Beyond these ends the value at the end is kept. Levels change by it and decay times do not; give the file of this very microphone.`,
  calibrated: (p, n) =>
    `Levels are given re 20 µPa too, by the calibration: a sine that reaches full scale stands for ${n.decibels(p.fullScaleDb, 1)}. That holds only for a recording at the gain of the calibration; a file that was normalised since has lost it. Check it against a level meter.`,
  positions: (p, n) => {
    const place = (name: string): string =>
      `(${['X', 'Y', 'Z'].map((axis) => n.number(p[`${name}${axis}`], 2)).join('; ')}) m`;
    const where = `the microphone at ${place('seat')}, the source at ${place('source')}${clause(p, 'distanceMetres', (d) => `, ${n.metres(d)} apart`)}`;
    const room = ['length', 'width', 'height'].every((side) => given(p, side))
      ? ` The file gives a room of ${n.number(p.length, 2)} x ${n.number(p.width, 2)} x ${n.metres(at(p, 'height'))}.`
      : '';
    return p.origin === 'corner'
      ? `The file gives the places, from a low corner of the room: ${where}.${room} They are used unless others are given.`
      : `The file gives the places, but from an origin of its own and not from a corner of the room: ${where}.${room} They are not used against the modes of a room; give seat and source from a corner for that.`;
  },
};
