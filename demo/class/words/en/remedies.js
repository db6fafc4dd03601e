export const remedies = {
  title: 'Cut, move or absorb',
  aim: 'One mode hangs at the desk (seat A). Three remedies, looked at from the desk and from the sofa (seat B), where this mode is weak.',
  questions: [
    {
      question:
        'A filter over the source cuts the mode exactly, measured at seat A. What does it do at seat B, where the mode was weak?',
      options: [
        'Nothing: there was nothing to cut.',
        'It takes as many decibels there too.',
        'It raises the bass there.',
      ],
      because: ({ remedies: { frequencyHz, cutDb, levelsDb } }, n) =>
        `A filter knows no seats. It takes ${n.decibels(-cutDb, 1)} at ${n.hz(frequencyHz)}, and so the response changes by ${n.decibels(levelsDb.cut.a, 1)} at A and ${n.decibels(levelsDb.cut.b, 1)} at B, which may leave a dip where nothing hung. Cut what is common to most seats (common practice).`,
    },
    {
      question: 'Instead the source is moved to the middle of the width. What happens to this mode?',
      options: [
        'It is driven no more, so it is gone at both seats.',
        'It is gone at A and stays at B.',
        'It rings shorter, but is as loud.',
      ],
      because: ({ remedies: { levelsDb } }, n) =>
        `A source on the node cannot drive the mode: the response at its frequency changes by ${n.decibels(levelsDb.moved.a, 0)} at A and ${n.decibels(levelsDb.moved.b, 0)} at B, what is left being other modes. The mode itself is still in the room: another source, or a door that slams, excites it.`,
    },
    {
      question: 'Which of the three makes the mode decay faster for every source and every seat?',
      options: ['The cut.', 'Moving the source.', 'Absorbers.', 'All three.'],
      because: ({ remedies: { beforeSeconds, absorbedSeconds, targetSeconds } }, n) =>
        `Absorption changes the room: ${n.seconds(beforeSeconds)} becomes ${n.seconds(absorbedSeconds)}, for whatever excites it. The cut makes what this one loudspeaker plays end in ${n.seconds(targetSeconds)}, because its zeros lie on the poles of the mode; it does nothing for a bass guitar in the room. Flattening the level alone would not shorten the decay.`,
    },
    {
      question: 'Seat B lacks bass now. Somebody boosts by 6 dB. What does the loudspeaker pay?',
      options: [
        'A little more power.',
        'Twice the power and the same excursion.',
        'Four times the power and twice the excursion of its cone.',
      ],
      because: () =>
        '6 dB is twice the amplitude: twice the excursion and four times the power. Drive limits are the maker’s. A null cannot be filled by equalisation at all.',
    },
  ],
  tasks: () => [
    'Try each remedy. The line below says what was read at both seats.',
    'Compare the responses of A and B under the cut: what did seat B lose?',
    'Below, add a matched cut for the ridge at 43.9 Hz while you look at seat A. Then choose seat B: what did it cost there?',
    'Listen to it, through the room and treated by your filters. Turn the level down first; it starts muted.',
  ],
  names: {
    before: 'Nothing done',
    cut: 'Cut, matched at seat A',
    moved: 'Source moved to the middle of the width',
    absorbed: 'Absorbers for this mode',
  },
  remedy: 'Remedy',
  seat: (letter) => `Seat ${letter}`,
  found: (decay, sd, frequency) => `${decay} ± ${sd} at ${frequency}`,
  notFound: (frequency) => `no resonance found near ${frequency}`,
  ofSeat: (letter, text) => `seat ${letter}: ${text}`,
  fitted: (name, parts) => `${name}. Fitted here, ${parts}.`,
  reading: 'Reading both seats …',
  own: 'Filters of your own, at both seats',
};
