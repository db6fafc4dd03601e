import { choices, h, hz, number, seconds, tasks } from './dom.js';

const order = (numbers) => `(${numbers.join(',')})`;

/** (2) Axial, tangential and oblique modes, and why they do not decay alike. */
export const kinds = {
  id: 'kinds',
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
      answer: ({ kinds: { decays } }) => {
        const of = (numbers) => decays.find((one) => one.order.join() === numbers.join());
        return {
          right: 0,
          because: `A mode loses energy at every wall, and twice as much at the walls it runs between as at those it only grazes (Morse and Bolt 1944). In 5 × 4 × 3 m with 0.1 on all walls (1,0,0) rings ${seconds(of([1, 0, 0]).seconds)}, (1,1,0) ${seconds(of([1, 1, 0]).seconds)} and (1,1,1) ${seconds(of([1, 1, 1]).seconds)}.`,
        };
      },
    },
    {
      question: 'In a cube with such walls, how much longer does an axial mode ring than an oblique one?',
      options: ['Three times as long.', 'Half as long again.', 'Just as long.'],
      answer: ({ kinds: { cubeAxial, cubeTangential } }) => ({
        right: 1,
        because: `Axial to tangential to oblique is as ${number(cubeAxial)} to ${number(cubeTangential)} to 1: of the three pairs of walls an axial mode pays the double price at one, an oblique at all three.`,
      }),
    },
    {
      question: 'Two modes have the same Q of 16, one at 32 Hz and one at 125 Hz. Which rings longer?',
      options: [
        'That at 32 Hz, about four times as long.',
        'That at 125 Hz, about four times as long.',
        'Both alike: the same Q is the same decay.',
      ],
      answer: ({ kinds: { q16 } }) => ({
        right: 0,
        because: `Q counts swings, the ear hears seconds: decay time is 2.1988 Q / f. A Q of 16 is ${q16.map((one) => `${seconds(one.seconds)} at ${hz(one.frequencyHz, 0)}`).join(', ')}.`,
      }),
    },
  ],
  tasks() {
    return [
      'Go through the modes and count the lines of silence: one direction is axial, two tangential, three oblique.',
      'Read under the picture how long each is expected to ring, and order the three kinds.',
      'Listen to one mode alone, (1,0,0) and then (1,1,1): turn the level down first, it starts muted.',
      'In the table of modes compare Q with decay time: which of the two falls with frequency?',
    ];
  },
  act(facts) {
    const {
      kinds: { decays },
    } = facts;
    const study = h(
      'ringdown-study',
      {
        room: '5x4x3',
        speed: 343,
        absorption: '0.1',
        to: 100,
        'no-files': true,
        'no-choices': true,
        'data-own': true,
      },
      h('ringdown-place', { kind: 'seat', name: 'corner seat', at: '4.9 3.9 2.9' }),
      h('ringdown-place', { kind: 'source', name: 'corner source', at: '0.1 0.1 0.1' }),
      h('ringdown-pressure-map'),
      h('ringdown-listen', { response: 'predicted', heard: 'mode', material: 'burst' }),
      h('ringdown-modes'),
    );
    const pick = choices(
      'Mode',
      decays.map(({ order: numbers, frequencyHz }) => [`${order(numbers)} ${hz(frequencyHz)}`, numbers]),
      (numbers) => study.study.selectMode(numbers),
    );
    return h('div', {}, tasks(...kinds.tasks(facts)), pick, study);
  },
};
