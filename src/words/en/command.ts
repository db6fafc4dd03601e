import type { Sentence } from '../types.js';

const one = (count: unknown): boolean => Number(count) === 1;

/** What the command says of its own; pages never load it. */
export const commandSentences: Readonly<Record<string, Sentence>> = {
  // Diagnosis.
  file: (p, n) =>
    `${n.integer(p.sampleRate)} Hz, channel ${n.text(p.channel)} of ${n.text(p.channels)}, ${n.seconds(p.seconds)}, onset at ${n.seconds(p.onsetSeconds, 4)}`,
  'head-range': () => 'Range, dB',
  'head-decay': () => 'Decay, s',
  'no-resonance': () => 'No resonance was found.',
  'no-ridge': (p, n) =>
    `No ridge exceeds the limit “${n.text(p.limit)}”. That is of this seat and this source: a mode is not seen from one of its nodes.`,
  ridges: (p, n) => `Ridges above the limit “${n.text(p.limit)}”, worst first`,
  remedies: () => 'What may help, by the number of the ridge',
  'may-be': (p, n) => `${n.text(p.number)}. ${n.hertz(p.frequencyHz)} may be ${n.text(p.list)}.`,
  candidate: (p, n) =>
    `(${n.text(p.order)}) ${n.text(p.kind)} at ${n.hertz(p.frequencyHz)}: ${n.percent(p.weight)}`,
  none: (p, n) => `none of these: ${n.percent(p.share)}`,
  run: (p, n) => `${n.text(p.from)} to ${n.text(p.to)}`,
  resonances: () => 'All resonances',
  'room-modes': (p, n) =>
    `Room of ${n.text(p.sides)} m at ${n.number(p.speed, 1)} m/s, modes in Hz: ${n.text(p.list)}${Number(p.more) > 0 ? ` and ${n.integer(p.more)} more (ringdown modes lists them)` : ''}.`,

  // Modes.
  box: (p, n) => `Room of ${n.text(p.sides)} m`,
  plan: (p, n) =>
    `Room of a plan with ${n.text(p.corners)} walls, ${n.number(p.area, 1)} m2, ${n.significant(p.height, 4)} m high`,
  room: (p, n) =>
    `${n.text(p.shape)}, ${n.number(p.volume, 1)} m3, speed of sound ${n.number(p.speed, 1)} m/s.`,
  crowd: (p, n) =>
    `Single modes give way to a crowd between about ${n.hertz(p.fromHz, 0)} and ${n.hertz(p.toHz, 0)} (around ${n.hertz(p.frequencyHz, 0)}).`,
  'crowd-unknown': () =>
    'Where single modes give way to a crowd depends on the decay time; give --absorption or --walls to estimate it.',
  'modes-box': (p, n) =>
    `${n.integer(p.count)} modes up to ${n.hertz(p.toHz, 0)}. Real walls move modes by up to 5 or 6 % from the rigid box.`,
  'modes-plan': (p, n) =>
    `${n.integer(p.count)} modes up to ${n.hertz(p.toHz, 0)}. Real walls move modes by up to 5 or 6 % from rigid ones.`,
  mesh: (p, n) =>
    `By finite elements in the plan and cosines in height; the mesh leaves frequencies within about ${n.percent(p.meshError, 3)}.`,
  'walls-memory': () =>
    'Absorption of named walls is that of a handbook, quoted from memory, and held below 125 Hz; built walls differ by a factor of two.',
  'levels-known': (p) =>
    `Levels are of a steady tone at the mode, dB re the same source in free field at 1 m${one(p.sources) ? '' : ', source by seat'}.`,
  'levels-relative': (p) =>
    `Levels are dB re source and seat in corners${one(p.sources) ? '' : ', source by seat'}.`,
  node: () => 'node',
  'head-seat': (p, n) => `seat ${n.text(p.number)}`,

  // Grid.
  recording: (p, n) => `${n.text(p.label)}, channel ${n.text(p.channel)}`,
  'grid-legend': () => 'dB; in brackets where it is noise, a dot where there is no data or no meaning.',

  // Files that are written.
  sweep: (p, n) =>
    `${n.text(p.path)}: exponential sweep from ${n.significant(p.fromHz)} to ${n.significant(p.toHz)} Hz in ${n.seconds(p.seconds, 1)} and ${n.seconds(p.silenceSeconds, 1)} of silence, at ${n.integer(p.sampleRate)} Hz, 24 bits, peak ${n.decibels(p.levelDb)} re full scale.`,
  'sweep-record': () =>
    'Record from before it begins until after it has rung out, at the same rate and without effects; then: ringdown response SWEEP RECORDING --out FILE.wav',
  caution: (p, n) => `Caution: ${n.text(p.sentence)}`,
  response: (p, n) =>
    `${n.text(p.path)}: impulse response of ${n.seconds(p.seconds)} at ${n.integer(p.sampleRate)} Hz, 32-bit float, from a sweep of ${n.significant(p.fromHz)} to ${n.significant(p.toHz)} Hz in ${n.seconds(p.sweepSeconds, 1)}. Nothing outside that band is in it.`,
  'response-table': () =>
    'Arrival from the start of the sweep, and distortion re the response (kept out of it; a dash where it is lost in the noise)',
  'head-channel': () => 'Channel',
  'head-arrival': () => 'Arrival',
  'head-order': (p, n) => `Order ${n.text(p.order)}`,
  synth: (p, n) =>
    `${n.text(p.path)}: ${n.seconds(p.seconds)} at ${n.integer(p.sampleRate)} Hz, 32-bit float, a sum of ${n.integer(p.modes)} modes; the onset is at ${n.seconds(p.onsetSeconds, 4)}.`,

  // Help.
  'help-usage': (p, n) => `Usage: ${n.text(p.usage)}`,
  'help-more': () =>
    '“ringdown COMMAND --help” lists the options of a command; “ringdown --version” prints the version.',
  'help-status': () =>
    'Exit status: 0 done; 1 a file was refused (the others are still done); 2 the call is off.',
  'help-command': () => 'COMMAND',
};
