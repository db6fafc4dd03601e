import { h, hz, number, tasks } from './dom.js';

/** (3) Source and seat: where a mode is not heard, and what a second source does to it. */
export const places = {
  id: 'places',
  title: 'Source and seat',
  aim: 'A mode is heard where the source can drive it and the ear lies in its pressure. Either may sit on a node, and then nothing is heard of it.',
  questions: [
    {
      question:
        'The source stands in a corner. You sit halfway across the width. How do you hear the lowest mode of the width?',
      options: ['Loudest of all places.', 'Half as loud as in the corner.', 'Hardly at all.'],
      answer: ({ places: { widthHz } }) => ({
        right: 2,
        because: `Half the width is the node of (0,1,0), ${hz(widthHz)} in the live room: the source drives it, but your ears are where it has no pressure. No ridge at this seat does not mean no mode in the room.`,
      }),
    },
    {
      question:
        'Now you take the corner and the source goes to the middle of the width. What do you hear of that mode?',
      options: [
        'Now it is loud: you sit in the corner.',
        'Hardly anything again.',
        'Twice as much as before.',
      ],
      answer: () => ({
        right: 1,
        because:
          'Source and ear may change places and nothing changes: the level goes with the shape at the source times the shape at the seat. A source on a node cannot drive the mode.',
      }),
    },
    {
      question: 'Two equal sources stand at the two side walls and play the same. What becomes of that mode?',
      options: [
        'It all but vanishes.',
        'It doubles: two sources, twice the drive.',
        'It stays as it was with one.',
      ],
      answer: ({ places: { left, right, widthHz } }) => ({
        right: 0,
        because: `The wave has opposite signs at the two sides: ${number(left, 2)} at one source and ${number(right, 2).replace('-', '−')} at the other, so their drives cancel. Turn one of them over and the mode doubles instead; so does a delay of half its period, ${number(500 / widthHz)} ms.`,
      }),
    },
  ],
  tasks({ room, places: { widthHz } }) {
    const width = Number(room.split('x')[1]);
    return [
      `Drag the seat across the width (or focus it and use the arrow keys) and find where (0,1,0) is silent: half of ${number(width)} m.`,
      'Put the seat back beside the wall, and drag the source to the middle instead.',
      `Below, two sources at the two side walls: look at the sum near ${hz(widthHz, 0)}, then invert one, then take that back and delay one by 5 and by ${number(500 / widthHz, 0)} ms.`,
    ];
  },
  act(facts) {
    const { room } = facts;
    const plan = h(
      'ringdown-study',
      { room, to: 130, 'no-files': true, 'no-choices': true, 'data-own': true },
      h('ringdown-place', { kind: 'seat', name: 'seat', at: '3.7 3.5 1.2' }),
      h('ringdown-place', { kind: 'source', name: 'source', at: '0.5 0.3 0.3' }),
      h('ringdown-room'),
      h('ringdown-pressure-map'),
    );
    const choose = () => plan.study.selectMode([0, 1, 0]);
    plan.addEventListener('ringdown-ready', choose);
    choose();
    const pair = h(
      'ringdown-study',
      { room, from: 25, to: 100, 'no-files': true, 'no-choices': true },
      ...['left', 'right'].map((side) =>
        h('ringdown-recording', {
          src: `../recordings/class-${side}.wav`,
          label: side,
          seat: 'desk',
          source: side,
          clock: 'common',
        }),
      ),
      h('ringdown-place', { kind: 'seat', name: 'desk', at: '3.7 3.5 1.2' }),
      h('ringdown-place', { kind: 'source', name: 'left', at: '0.5 0.3 0.3' }),
      h('ringdown-place', { kind: 'source', name: 'right', at: '0.5 3.6 0.3' }),
      h('ringdown-sources'),
    );
    return h(
      'div',
      {},
      tasks(...places.tasks(facts)),
      h('h4', {}, 'One source and one seat'),
      plan,
      h('h4', {}, 'Two sources at one seat'),
      pair,
    );
  },
};
