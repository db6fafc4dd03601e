import type { Sentence } from '../types.js';

const sides: Readonly<Record<string, string>> = { length: 'length', width: 'width', height: 'height' };

/** Refusals of the room, of a computation, and of the machine it runs on. */
export const houseErrors: Readonly<Record<string, Sentence>> = {
  'room-size-form': (p, n) =>
    `“${n.text(p.text)}” is not a room size. Give length, width and height as in 5.3x4.1x2.7 (metres; 4,5 is read as 4.5) or 16x12x8 ft.`,
  'room-side-bounds': (p, n) =>
    `The ${sides[n.text(p.side)] ?? 'side'} of the room is given as ${n.significant(p.value, 4)} m; sides from ${n.text(p.from)} to ${n.text(p.to)} m are computed. Check the figure and its unit.`,
  'place-form': (p, n) =>
    `“${n.text(p.text)}” is not a place. Give three distances in metres from one low corner, as in 1.2,0.8,1.1 (with decimal commas: 1,2; 0,8; 1,1).`,
  'place-outside': (p, n) =>
    `A place lies outside the room: ${n.text(p.axis)} is ${n.significant(p.value, 4)} m where the room reaches from 0 to ${n.significant(p.to, 4)} m.`,
  'temperature-bounds': (p, n) =>
    `A temperature of ${n.significant(p.value)} °C is outside what rooms have (${n.text(p.from)} to ${n.text(p.to)} °C). Give degrees Celsius.`,
  'humidity-bounds': (p, n) =>
    `A relative humidity of ${n.significant(p.value)} % is outside ${n.text(p.from)} to ${n.text(p.to)} %.`,
  'speed-bounds': (p, n) =>
    `A speed of sound of ${n.significant(p.value, 4)} m/s is outside what air in rooms has (${n.text(p.from)} to ${n.text(p.to)} m/s). Give metres per second.`,
  'absorption-count': (p, n) =>
    `Absorption is one coefficient for all walls, or six (two ends, two sides, floor, ceiling); ${n.text(p.count)} were given.`,
  'absorption-bounds': (p, n) =>
    `An absorption coefficient of ${n.significant(p.value)} is outside ${n.text(p.from)} to ${n.text(p.to)}.`,
  'wall-name': (p, n) =>
    `“${n.text(p.text)}” is no wall that is known here. There are: ${n.text(p.names)}. Or give absorption coefficients.`,
  'wall-count': (p, n) =>
    `Walls are one construction for all, or six (x=0, x=L, y=0, y=W, floor, ceiling); ${n.text(p.count)} were given.`,
  'mode-count': (p, n) =>
    `The room has about ${n.integer(p.count)} modes up to ${n.hertz(p.toHz, 0)}, too many to name one (at most ${n.integer(p.most)} are listed). Lower the top frequency.`,

  'frequency-range': (p, n) =>
    `A range from ${n.hertz(p.fromHz)} to ${n.hertz(p.toHz)} holds nothing: it must begin above 0 Hz and below its end.`,

  cancelled: () => 'The computation was cancelled.',
  'worker-crashed': () =>
    'The computation stopped twice for want of memory or because the browser ended it. Try a shorter file, or close other pages.',
  unexpected: (p, n) =>
    `Something went wrong that should not have (${n.text(p.detail)}). Please report it with the file that caused it.`,
};
