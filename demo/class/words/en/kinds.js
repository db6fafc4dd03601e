export const kinds = {
  title: 'Axial, tangential, oblique',
  aim: 'Three kinds of modes, told apart by how many pairs of walls they run between, and how long each rings in the same room.',
  questions: [
    {
      question:
        'All six walls absorb alike, a tenth of what falls on them. Which kind of mode rings longest?',
      options: [
        'Axial: between one pair of walls.',
        'Tangential: between two pairs.',
        'Oblique: between all three.',
        'None: the walls are alike, so all ring alike.',
      ],
      because({ kinds: { decays } }, n) {
        const of = (order) => n.seconds(decays.find((one) => one.order.join() === order).seconds);
        return `A mode loses energy at every wall, and twice as much at the walls it runs between as at those it only grazes (Morse and Bolt 1944). In 5 × 4 × 3 m with 0.1 on all walls (1,0,0) rings ${of('1,0,0')}, (1,1,0) ${of('1,1,0')} and (1,1,1) ${of('1,1,1')}.`;
      },
    },
    {
      question: 'In a cube with such walls, how much longer does an axial mode ring than an oblique one?',
      options: ['Three times as long.', 'Half as long again.', 'Just as long.'],
      because: ({ kinds: { cubeAxial, cubeTangential } }, n) =>
        `Axial to tangential to oblique is as ${n.number(cubeAxial)} to ${n.number(cubeTangential)} to 1: of the three pairs of walls an axial mode pays the double price at one, an oblique at all three.`,
    },
    {
      question: 'Two modes have the same Q of 16, one at 32 Hz and one at 125 Hz. Which rings longer?',
      options: [
        'That at 32 Hz, about four times as long.',
        'That at 125 Hz, about four times as long.',
        'Both alike: the same Q is the same decay.',
      ],
      because: ({ kinds: { q16 } }, n) =>
        `Q counts swings, the ear hears seconds: decay time is 2.1988 Q / f. A Q of 16 is ${q16.map((one) => `${n.seconds(one.seconds)} at ${n.hz(one.frequencyHz, 0)}`).join(', ')}.`,
    },
  ],
  tasks: () => [
    'Go through the modes and count the lines of silence: one direction is axial, two tangential, three oblique.',
    'Read under the picture how long each is expected to ring, and order the three kinds.',
    'Listen to one mode alone, (1,0,0) and then (1,1,1): turn the level down first, it starts muted.',
    'In the table of modes compare Q with decay time: which of the two falls with frequency?',
  ],
  seat: 'corner seat',
  source: 'corner source',
  mode: 'Mode',
};
