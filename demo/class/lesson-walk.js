import { h, hz, number, slider, tasks } from './dom.js';

/** (1) One dimension: walk the pressure from wall to wall. */
export const walk = {
  id: 'walk',
  title: 'Walk the pressure',
  aim: 'One standing wave between two walls: where it is loud, where the air moves, and what the temperature does to it.',
  questions: [
    {
      question:
        'You walk the length of the live room while its lowest mode sounds. Where is the pressure smallest?',
      options: [
        'At both end walls.',
        'Halfway between them.',
        'A quarter of the way from each wall.',
        'Nowhere: it is the same all along.',
      ],
      answer: ({ walk: { firstHz } }) => ({
        right: 1,
        because: `Every rigid wall is a pressure maximum. The wave of (1,0,0), ${hz(firstHz)} here, is one half-wave from wall to wall: a cosine, greatest at both ends with opposite signs, and zero between them.`,
      }),
    },
    {
      question: 'And where does the air itself move most in that mode?',
      options: ['Halfway between them.', 'At both end walls.', 'Everywhere alike.'],
      answer: () => ({
        right: 0,
        because:
          'Air cannot move through a rigid wall, so motion is nothing there and greatest where the pressure is nothing. That is why a thin porous sheet on the wall does little in the bass: it works on motion.',
      }),
    },
    {
      question: 'The heating is turned up from 15 to 25 °C. What does a mode of 50 Hz do?',
      options: [
        'It stays: the walls have not moved.',
        'It falls by about 0.9 Hz.',
        'It rises by about 5 Hz.',
        'It rises by about 0.9 Hz.',
      ],
      answer: ({ walk: { warmerHz, warmerShare } }) => ({
        right: 3,
        because: `Sound is faster in warm air: 343.2 m/s at 20 °C, growing with the root of the absolute temperature (ISO 9613-1). From 15 to 25 °C that is ${number(100 * warmerShare)} %, or ${hz(warmerHz, 2)} at 50 Hz.`,
      }),
    },
  ],
  tasks({ room }) {
    const length = room.split('x')[0];
    return [
      `With the slider x, walk from 0 to ${length} m and watch the level and its sign.`,
      'Choose (2,0,0) and stand in the middle again. What changed?',
      'Switch from pressure to particle motion, and walk once more.',
      'Turn the temperature, and read the frequency of the mode.',
    ];
  },
  act(facts) {
    const {
      room,
      walk: { firstHz },
    } = facts;
    const study = h(
      'ringdown-study',
      { room, temperature: 20, to: 130, 'no-files': true, 'no-choices': true, 'data-own': true },
      h('ringdown-place', { kind: 'seat', name: 'listener', at: '1.4 1.2 1.2' }),
      h('ringdown-place', { kind: 'source', name: 'source', at: '0.4 0.4 0.3' }),
      h('ringdown-pressure-map'),
      h('details', {}, h('summary', {}, 'Drag the listener, the source and the walls'), h('ringdown-room')),
    );
    const air = slider(
      'Air',
      {
        min: 10,
        max: 35,
        step: 1,
        value: 20,
        text: (value) => `${value} °C, (1,0,0) at ${hz(firstHz * Math.sqrt((273.15 + value) / 293.15))}`,
      },
      (value) => study.setAttribute('temperature', value),
    );
    return h('div', {}, tasks(...walk.tasks(facts)), air, study);
  },
};
