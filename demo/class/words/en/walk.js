export const walk = {
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
      because: ({ walk: { firstHz } }, n) =>
        `Every rigid wall is a pressure maximum. The wave of (1,0,0), ${n.hz(firstHz)} here, is one half-wave from wall to wall: a cosine, greatest at both ends with opposite signs, and zero between them.`,
    },
    {
      question: 'And where does the air itself move most in that mode?',
      options: ['Halfway between them.', 'At both end walls.', 'Everywhere alike.'],
      because: () =>
        'Air cannot move through a rigid wall, so motion is nothing there and greatest where the pressure is nothing. That is why a thin porous sheet on the wall does little in the bass: it works on motion.',
    },
    {
      question: 'The heating is turned up from 15 to 25 °C. What does a mode of 50 Hz do?',
      options: [
        'It stays: the walls have not moved.',
        'It falls by about 0.9 Hz.',
        'It rises by about 5 Hz.',
        'It rises by about 0.9 Hz.',
      ],
      because: ({ walk: { warmerHz, warmerShare } }, n) =>
        `Sound is faster in warm air: 343.2 m/s at 20 °C, growing with the root of the absolute temperature (ISO 9613-1). From 15 to 25 °C that is ${n.number(100 * warmerShare)} %, or ${n.hz(warmerHz, 2)} at 50 Hz.`,
    },
  ],
  tasks: ({ room }, n) => [
    `With the slider x, walk from 0 to ${n.number(room.split('x')[0])} m and watch the level and its sign.`,
    'Choose (2,0,0) and stand in the middle again. What changed?',
    'Switch from pressure to particle motion, and walk once more.',
    'Turn the temperature, and read the frequency of the mode.',
  ],
  listener: 'listener',
  source: 'source',
  drag: 'Drag the listener, the source and the walls',
  air: 'Air',
  airText: (celsius, hertz, n) => `${celsius} °C, (1,0,0) at ${n.hz(hertz)}`,
};
