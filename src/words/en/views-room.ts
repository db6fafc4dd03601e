import type { Sentence } from '../types.js';

/** What the views of the room say: modes, the room itself, where a mode is loud. */
export const roomViews: Readonly<Record<string, Sentence>> = {
  'this-room': () => 'This room',
  'room-none': () => 'No room yet: with its sides, its modes stand here.',
  'room-coming': () => 'Computing the modes of the room',
  'room-of-sides': (p, n) => `Room of ${n.text(p.length)} × ${n.text(p.width)} × ${n.text(p.height)} m`,
  'room-of-plan': (p, n) => `Room of ${n.integer(p.corners)} walls, ${n.metres(p.height)} high`,

  // The room.
  'room-name': (p, n) => `Floor plan: ${n.text(p.room)}`,
  'room-help': () =>
    'Drag a seat, a source or a corner, or move it with the arrow keys (0.1 m; with Shift 0.5 m). The fields hold the same places, with their height.',
  'room-caption': (p, n) =>
    `${n.text(p.room)}: ${n.number(p.volume, 1)} m³. Speed of sound ${n.number(p.speed, 1)} m/s.`,
  'room-fit': () => 'Fit the sides to the ridges',
  'room-fit-working': () => 'Fitting the sides, and 99 sets of random resonances with them',
  'room-fit-heading': () => 'Sides fitted to the resonances',
  'room-fit-sides': (p, n) =>
    `${n.text(p.sides)} m instead of ${n.text(p.typed)} m, at ${n.number(p.speed, 1)} m/s. A side may differ by ${n.percent(p.tolerance)} and the air by ${n.integer(p.air)} K: walls are not rigid and no tape is perfect.`,
  'room-fit-unknown': (p, n) =>
    `${n.text(p.side)}: no matched resonance depends enough on it; its figure is no measurement.`,
  'room-fit-bound': (p, n) =>
    `${n.text(p.side)}: at the end of what it may differ by, so that the true one may lie beyond.`,
  'room-fit-explains': (p, n) =>
    `${n.integer(p.explained)} of ${n.integer(p.count)} resonances up to ${n.hertz(p.toHz, 0)} have a mode within 2 % of them${p.rms === null ? '' : `, ${n.percent(p.rms, 1)} away (rms)`}; with the sides as typed ${n.integer(p.asTyped)}${p.rmsAsTyped === null ? '' : `, ${n.percent(p.rmsAsTyped, 1)} away`}.`,
  'room-fit-left': (p, n) => `No mode lies near ${n.text(p.list)} Hz.`,
  'room-fit-above': (p, n) =>
    `${n.integer(p.count)} above ${n.hertz(p.toHz, 0)} were left out: there any resonance has a mode near.`,
  'room-fit-chance': (p, n) =>
    `Of ${n.integer(p.trials)} sets of random resonances, as many and as dense, ${n.integer(p.asGood)} were fitted as well. ${Number(p.chance) > 0.1 ? 'This fit says nothing on the room.' : 'It is better than chance, which does not prove the sides.'}`,
  'room-fit-common': (p, n) =>
    `Together the frequencies lie ${n.percent(Math.abs(Number(p.share)), 1)} ${Number(p.share) < 0 ? 'lower' : 'higher'} than those of the sides as typed. Air of ${n.number(p.celsius, 0)} °C does the same as such a change of all sides: a recording cannot tell which.${p.within === false ? ' But that is more than the air may differ by.' : ''}`,
  'room-fit-rival': (p, n) => `${n.text(p.sides)} m fit as well.`,
  'room-fit-take': () => 'Take these sides',
  'room-fit-leave': () => 'Leave the room as typed',
  'room-fit-mode': () => 'Mode',
  'room-fit-measured': () => 'Measured, Hz',
  'room-fit-fitted': () => 'Fitted, Hz',
  'room-fit-typed': () => 'As typed, Hz',
  'room-fit-off': () => 'Off, %',
  'room-empty': () => 'Give the sides of the room, or draw its plan.',
  'room-shape': () => 'Shape',
  'shape-box': () => 'box',
  'shape-plan': () => 'floor plan',
  'room-unit': () => 'Lengths in',
  'unit-m': () => 'metres',
  'unit-ft': () => 'feet and inches',
  'feet-inches': (p, n) => `${n.text(p.feet)} ft ${n.text(p.inches)} in`,
  'length-m': (p, n) => `${n.text(p.length)} m`,
  'length-ft': (p, n) => n.text(p.length),
  'room-length': () => 'Length',
  'room-width': () => 'Width',
  'room-height': () => 'Height',
  'room-temperature': () => 'Air, °C',
  'room-humidity': () => 'Humidity, %',
  'room-corners': () => 'Corners in turn: x, y',
  'corner-axis': (p, n) => `Corner ${n.integer(p.number)}: ${n.text(p.axis)}`,
  'corner-remove': (p, n) => `Remove corner ${n.integer(p.number)}`,
  'add-corner': () => 'Add a corner',
  'room-walls': () => 'Walls',
  'walls-all': () => 'All of',
  'walls-each': () => 'One by one',
  'walls-each-differ': () => 'One by one (they differ)',
  'walls-hint': () =>
    'Only expected decay times rest on them. Common values, from memory: built walls of one name differ by a factor of two and more, and hardly any are measured below 125 Hz. If you know better, type a coefficient.',
  'wall-own': () => 'coefficient of your own',
  'wall-coefficient': (p, n) => `absorption coefficient ${n.number(p.value, 2)}`,
  'wall-own-of': (p, n) => `Absorption coefficient, 0 to 1, of: ${n.text(p.wall)}`,
  'constructions-table': () => 'What each of these is taken to absorb',
  'construction-column': () => 'Construction',
  'construction-spread': (p, n) => `At ${n.hertz(p.frequencyHz, 0)} between`,
  'construction-from-to': (p, n) => `${n.text(p.from)} and ${n.text(p.to)}`,
  'construction-source': () => 'Source',
  'construction-source-memory': () => 'from memory; common practice, no document',
  'wall-unknown': () => 'not known',
  'wall-given': () => 'as given',
  'wall-0': () => 'End at x = 0',
  'wall-1': () => 'Far end',
  'wall-2': () => 'Side at y = 0',
  'wall-3': () => 'Far side',
  'wall-number': (p, n) => `Wall ${n.integer(p.number)}`,
  'wall-floor': () => 'Floor',
  'wall-ceiling': () => 'Ceiling',
  places: () => 'Seats and sources',
  'place-kind': () => 'Kind',
  'place-name': () => 'Name',
  'axis-x': () => 'x',
  'axis-y': () => 'y',
  'axis-z': () => 'Height',
  'kind-seat': () => 'Seat',
  'kind-source': () => 'Source',
  'seat-number': (p, n) => `Seat ${n.integer(p.number)}`,
  'source-number': (p, n) => `Source ${n.integer(p.number)}`,
  'of-recording': () => 'of a recording',
  'place-name-of': (p, n) => `Name of ${n.text(p.name)}`,
  'place-axis': (p, n) => `${n.text(p.name)}: ${p.axis === 'z' ? 'height' : n.text(p.axis)}`,
  'place-remove': (p, n) => `Remove ${n.text(p.name)}`,
  'place-beyond': (p, n) => `${n.text(p.name)} lies outside the walls: nothing is computed for it.`,
  'add-seat': () => 'Add a seat',
  'add-source': () => 'Add a source',
  'handle-place': (p, n) => `${n.text(p.name)}: x ${n.text(p.x)}, y ${n.text(p.y)}`,
  'handle-corner': (p, n) => `Corner ${n.integer(p.number)}: x ${n.text(p.x)}, y ${n.text(p.y)}`,

  // Where a mode is loud.
  'pressure-map': () => 'Pressure of a mode',
  'pressure-map-name': (p, n) => `Pressure of one mode of ${n.text(p.label)} in plan and section`,
  'pressure-map-help': () =>
    'Point at the plan or the section to read it; press to move the cursor there; drag the room to turn it. The sliders below move it along, across and in height. Seats and sources stand in the table.',
  'pressure-room-name': (p, n) => `Pressure of one mode of ${n.text(p.label)} upon the walls and the floor`,
  'pressure-view-plan': () => 'Plan and section',
  'pressure-view-room': () => 'Room',
  'room-needs-webgl': () =>
    'The room that can be turned needs WebGL, which is missing or was refused here; plan and section show the same.',
  'pressure-room-caption': () =>
    'The walls towards the eye and the ceiling are left out. Dashed lines lead from seats, sources and the cursor to the floor below them.',
  'choose-mode': () => 'Mode',
  'mode-choice': (p, n) => `${n.text(p.order)}, ${n.hertz(p.frequencyHz)}`,
  swing: () => 'Swing',
  'choose-quantity': () => 'Shown',
  'quantity-pressure': () => 'pressure',
  'quantity-motion': () => 'particle motion',
  'no-motion': () => 'no motion',
  'motion-readout': (p, n) =>
    `x ${n.metres(p.x, 2)}, y ${n.metres(p.y, 2)}, height ${n.metres(p.z, 2)}: motion ${n.text(p.level)}`,
  'key-motion': () => 'the air moves most',
  'motion-caption': () =>
    'Particle motion re its largest, without its direction, and not what is heard: it is greatest at the nodes of pressure, and across a wall there is none. Porous absorbers work where the air moves; panels and resonators where the pressure is great.',
  'motion-level': () => 'Motion',
  'plan-at': (p, n) => `Plan at a height of ${n.metres(p.z, 2)}`,
  'section-at': (p, n) => `Section along x at y = ${n.metres(p.y, 2)}`,
  'cursor-x': () => 'Cursor: x',
  'cursor-y': () => 'Cursor: y',
  'cursor-z': () => 'Cursor: height',
  'on-a-node': () => 'on a node',
  'pressure-readout': (p, n) =>
    `x ${n.metres(p.x, 2)}, y ${n.metres(p.y, 2)}, height ${n.metres(p.z, 2)}: ${n.text(p.level)}${p.sign === 'none' ? '' : p.sign === 'above' ? ', above' : ', below'}`,
  'pressure-readout-outside': (p, n) => `x ${n.metres(p.x, 2)}, y ${n.metres(p.y, 2)}: outside the walls`,
  'key-pressure-above': () => 'pressure above, at one instant',
  'key-pressure-below': () => 'below, at the same instant',
  'key-node': () => 'node: the mode is not heard there',
  'pressure-caption': (p, n) =>
    `Mode ${n.text(p.order)}, ${n.text(p.kind)}, ${n.hertz(p.frequencyHz)}. Levels re its loudest place; thin lines at half its pressure${p.inRoom ? '' : ', broken where it is below'}.`,
  'pressure-decay': (p, n) => `By the walls it should ring for ${n.seconds(p.decayTimeSeconds)}.`,
  'pressure-limits': () =>
    'Rigid walls and an empty room: furniture, doors and soft walls bend the shape, most of all near nodes.',
  'pressure-no-places': () => 'No seat and no source yet: nothing to tell a level at.',
  'pressure-at-places': () => 'The mode at seats and sources',
  'pressure-column': () => 'Pressure',
  'pressure-level': () => 'Level',
  'levels-known': () =>
    'Steady tone at the mode, each source at each seat, dB re the same source in free field at 1 m',
  'levels-relative': () => 'Each source at each seat, dB re both in corners',

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
