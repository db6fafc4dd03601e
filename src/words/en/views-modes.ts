import type { Sentence } from '../types.js';

/** What is said of a room wherever it is shown, and of its modes along the frequency. */
export const modeViews: Readonly<Record<string, Sentence>> = {
  'this-room': () => 'This room',
  'room-none': () => 'No room yet: with its sides, its modes stand here.',
  'room-coming': () => 'Computing the modes of the room',
  'room-of-sides': (p, n) => `Room of ${n.text(p.length)} × ${n.text(p.width)} × ${n.text(p.height)} m`,
  'room-of-plan': (p, n) => `Room of ${n.integer(p.corners)} walls, ${n.metres(p.height)} high`,

  // Modes.
  modes: () => 'Modes',
  'modes-name': (p, n) => `Predicted modes of ${n.text(p.label)} against what was measured, over frequency`,
  'modes-help': () =>
    'Point at the picture to read it; a mode or a ridge can be chosen there or in the table. The slider below moves the cursor.',
  'modes-measured': () => 'Measured: decay time, s',
  'modes-predicted': () => 'Predicted modes',
  'modes-per-band': () => 'Predicted modes per third-octave',
  'transition-band': () => 'single modes give way to a crowd',
  'key-tie': () => 'may be this mode; the stronger, the likelier',
  'key-count': () => 'modes in a third-octave',
  'key-expected': () => 'expected of this volume',
  'modes-caption-box': (p, n) =>
    `${n.integer(p.count)} modes from ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)} of a box with rigid walls, speed of sound ${n.number(p.speed, 1)} m/s. Real walls move modes by up to 5 or 6 %.`,
  'modes-caption-plan': (p, n) =>
    `${n.integer(p.count)} modes from ${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)} of the floor plan with rigid walls and a level ceiling, by finite elements within about ${n.percent(p.meshError, 2)}; speed of sound ${n.number(p.speed, 1)} m/s. Real walls move modes by up to 5 or 6 %.`,
  'modes-caption-ties': () =>
    'A tie is a candidate, not a proof: its strength is the chance of it, and ridges without one are explained by nothing here.',
  'modes-transition': (p, n) =>
    `By its walls the crowd begins between about ${n.hertz(p.fromHz, 0)} and ${n.hertz(p.toHz, 0)}; no sharp line was ever found.`,
  'modes-transition-measured': (p, n) =>
    `By the decay that was measured the crowd begins between about ${n.hertz(p.fromHz, 0)} and ${n.hertz(p.toHz, 0)}; no sharp line was ever found.`,
  'modes-transition-unknown': () =>
    'Where single modes give way to a crowd depends on the decay time, which is not known here.',
  'modes-readout-mode': (p, n) =>
    `mode ${n.text(p.order)} at ${n.hertz(p.frequencyHz)}${Number(p.more) > 0 ? ` and ${n.integer(p.more)} more` : ''}`,
  'modes-readout-measured': (p, n) => `measured ${n.hertz(p.frequencyHz)}, ${n.seconds(p.decayTimeSeconds)}`,
  'modes-readout-band': (p, n) => `${n.integer(p.count)} in the ${n.hertz(p.centreHz, 0)} band`,
  'next-mode': () => 'To the next',
  'expected-decay': () => 'Expected decay',
  'nearest-measured': () => 'Nearest measured',
  'off-by': () => 'Off by',
  'nothing-near': () => 'nothing within 6 %',
  'count-column': () => 'Modes',
  'expected-column': () => 'Expected',
  'widest-gap': () => 'Widest gap',
  'closest-pair': () => 'Closest pair',
};
