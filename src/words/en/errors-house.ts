import type { Sentence } from '../types.js';

const sides: Readonly<Record<string, string>> = { length: 'length', width: 'width', height: 'height' };

const wallsOf = (walls: unknown): string =>
  typeof walls === 'number' && walls !== 6
    ? `${walls} (the ${walls - 2} walls of the plan in turn, floor, ceiling)`
    : 'six (two ends, two sides, floor, ceiling)';

/** Refusals of the room, of a computation, and of the machine it runs on. */
export const houseErrors: Readonly<Record<string, Sentence>> = {
  'room-size-form': (p, n) =>
    `“${n.text(p.text)}” is not a room size. Give length, width and height as in 5.3x4.1x2.7 (metres; 4,5 is read as 4.5) or 16x12x8 ft.`,
  'room-side-bounds': (p, n) =>
    `The ${sides[n.text(p.side)] ?? 'side'} of the room is given as ${n.significant(p.value, 4)} m; sides from ${n.text(p.from)} to ${n.text(p.to)} m are computed: below, no listener fits in; above, modes lie so close that naming one means nothing. Check the figure and its unit.`,
  'length-form': (p, n) =>
    `“${n.text(p.text)}” is not a length. Give one as in 4.5 or 4,5 (metres), 450 cm, or 14 ft 9 in.`,
  'number-form': (p, n) => `“${n.text(p.text)}” is not a number.`,
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
    `Absorption is one coefficient for all walls, or ${wallsOf(p.walls)}; ${n.text(p.count)} were given.`,
  'absorption-bounds': (p, n) =>
    `An absorption coefficient of ${n.significant(p.value)} is outside ${n.text(p.from)} to ${n.text(p.to)}.`,
  'wall-name': (p, n) =>
    `“${n.text(p.text)}” is no wall that is known here. There are: ${n.text(p.names)}. Or give absorption coefficients.`,
  'walls-partly': (p, n) =>
    `${n.integer(p.missing)} of the walls are not named. Say what each is made of, or one for all.`,
  'wall-count': (p, n) =>
    `Walls are one construction for all, or ${wallsOf(p.walls)}; ${n.text(p.count)} were given.`,
  'plan-form': (p, n) =>
    `“${n.text(p.text)}” is not a floor plan. Give its corners in turn, each as x,y in metres, as in “0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5” (with decimal commas: “0;0 6;0 6;3,2”).`,
  'plan-corners': (p, n) =>
    `The plan has ${n.text(p.count)} corners; from ${n.text(p.from)} to ${n.text(p.to)} are computed.`,
  'plan-side': (p, n) =>
    `Wall ${n.text(p.wall)} of the plan is ${n.significant(p.value, 3)} m long; walls from ${n.significant(p.from, 2)} to ${n.text(p.to)} m are computed.`,
  'plan-crossing': (p, n) =>
    `Walls ${n.text(p.first)} and ${n.text(p.second)} of the plan cross or touch. Give the corners in the order in which one walks round the room.`,
  'plan-area': (p, n) =>
    `The plan encloses ${n.significant(p.value, 2)} m2; a room of at least ${n.text(p.from)} m2 is computed.`,
  'plan-modes': (p, n) =>
    `The plan has about ${n.integer(p.count)} waves up to this frequency; at most ${n.integer(p.most)} are computed. Lower the top frequency.`,
  'plan-place': (p, n) =>
    `A place lies outside the plan: ${n.significant(p.x, 4)}, ${n.significant(p.y, 4)} is not within its walls.`,
  'ceiling-sloped': (p, n) =>
    `“${n.text(p.text)}” is a ceiling of several heights. A sloped or stepped ceiling is outside what can be computed here: a room is a plan times one height. Its mean height gives a rough guide at best.`,
  'plan-mesh': () =>
    'The floor plan could not be divided into triangles, so its modes are not computed. Move a corner by some centimetres.',
  'fit-room-plan': () =>
    'Only the three sides of a box are fitted to resonances; this room is given by a floor plan.',
  'fit-room-few': (p, n) =>
    `Sides are fitted to resonances known to 1 % below ${n.hertz(p.toHz, 0)}, above which any resonance has a mode near. There are ${n.integer(p.count)}; at least ${n.integer(p.needed)} are needed for three sides.`,
  'fit-room-nothing': () =>
    'The sides of a room are fitted to the resonances of a recording: give both, and wait until it is read.',
  'plan-height': () => 'A room given by a plan needs its height too.',
  'height-form': (p, n) => `“${n.text(p.text)}” is not a height. Give one length, as in 2.6 (metres).`,
  'mode-count': (p, n) =>
    `The room has about ${n.integer(p.count)} modes up to ${n.hertz(p.toHz, 0)}, too many to name one (at most ${n.integer(p.most)} are listed). Lower the top frequency.`,

  cancelled: () => 'The computation was cancelled.',
  'worker-crashed': () =>
    'The computation stopped twice for want of memory or because the browser ended it. Try a shorter file, or close other pages.',
  'out-of-memory': () => 'There is not enough memory for this. Try a shorter file, or close other pages.',
  unexpected: (p, n) =>
    `Something went wrong that should not have (${n.text(p.detail)}). Please report it with the file that caused it.`,
};
