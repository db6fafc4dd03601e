import { choices, decibels, h, hz, seconds, tasks } from './dom.js';

const names = {
  before: 'Nothing done',
  cut: 'Cut, matched at seat A',
  moved: 'Source moved to the middle of the width',
  absorbed: 'Absorbers for this mode',
};

/** (6) Cut, move or absorb, at seat A and at seat B. */
export const remedies = {
  id: 'remedies',
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
      answer: ({ remedies: { frequencyHz, cutDb, levelsDb } }) => ({
        right: 1,
        because: `A filter knows no seats. It takes ${decibels(-cutDb, 1)} at ${hz(frequencyHz)}, and so the response changes by ${decibels(levelsDb.cut.a, 1)} at A and ${decibels(levelsDb.cut.b, 1)} at B, which may leave a dip where nothing hung. Cut what is common to most seats (common practice).`,
      }),
    },
    {
      question: 'Instead the source is moved to the middle of the width. What happens to this mode?',
      options: [
        'It is driven no more, so it is gone at both seats.',
        'It is gone at A and stays at B.',
        'It rings shorter, but is as loud.',
      ],
      answer: ({ remedies: { levelsDb } }) => ({
        right: 0,
        because: `A source on the node cannot drive the mode: the response at its frequency changes by ${decibels(levelsDb.moved.a, 0)} at A and ${decibels(levelsDb.moved.b, 0)} at B, what is left being other modes. The mode itself is still in the room: another source, or a door that slams, excites it.`,
      }),
    },
    {
      question: 'Which of the three makes the mode decay faster for every source and every seat?',
      options: ['The cut.', 'Moving the source.', 'Absorbers.', 'All three.'],
      answer: ({ remedies: { beforeSeconds, absorbedSeconds, targetSeconds } }) => ({
        right: 2,
        because: `Absorption changes the room: ${seconds(beforeSeconds)} becomes ${seconds(absorbedSeconds)}, for whatever excites it. The cut makes what this one loudspeaker plays end in ${seconds(targetSeconds)}, because its zeros lie on the poles of the mode; it does nothing for a bass guitar in the room. Flattening the level alone would not shorten the decay.`,
      }),
    },
    {
      question: 'Seat B lacks bass now. Somebody boosts by 6 dB. What does the loudspeaker pay?',
      options: [
        'A little more power.',
        'Twice the power and the same excursion.',
        'Four times the power and twice the excursion of its cone.',
      ],
      answer: () => ({
        right: 2,
        because:
          '6 dB is twice the amplitude: twice the excursion and four times the power. Drive limits are the maker’s. A null cannot be filled by equalisation at all.',
      }),
    },
  ],
  tasks() {
    return [
      'Try each remedy. The line below says what was read at both seats.',
      'Compare the responses of A and B under the cut: what did seat B lose?',
      'Below, add a matched cut for the ridge at 43.9 Hz while you look at seat A. Then choose seat B: what did it cost there?',
      'Listen to it, through the room and treated by your filters. Turn the level down first; it starts muted.',
    ];
  },
  act(facts) {
    const {
      remedies: { frequencyHz },
    } = facts;
    const of = (seat, what) => `../recordings/class-${what}-${seat}.wav`;
    const at = { a: '3.7 3.0 1.2', b: '4.6 2.05 1.1' };
    const seats = ['a', 'b'].map((seat) => {
      const recording = h('ringdown-recording', {
        src: of(seat, 'before'),
        label: `Seat ${seat.toUpperCase()}`,
        seat: at[seat],
      });
      const study = h(
        'ringdown-study',
        { room: '5.6x3.9x2.7', to: 120, 'no-files': true, 'no-choices': true, 'data-own': true },
        recording,
        h('ringdown-waterfall'),
        h('ringdown-response'),
      );
      return { seat, recording, study };
    });
    const read = h('p', { class: 'read', role: 'status' });
    let chosen = 'before';
    const tell = () => {
      const parts = seats.map(({ seat, study }) => {
        const { status, diagnosis } = study.snapshot;
        if (status !== 'ready' || !diagnosis) return null;
        const near = diagnosis.resonances.find(
          (one) => Math.abs(one.frequencyHz - frequencyHz) < 1 && one.decayTimeSeconds !== null,
        );
        const text = near
          ? `${seconds(near.decayTimeSeconds)} ± ${seconds(near.decayTimeSdSeconds)} at ${hz(near.frequencyHz)}`
          : `no resonance found near ${hz(frequencyHz)}`;
        return `seat ${seat.toUpperCase()}: ${text}`;
      });
      read.textContent = parts.every(Boolean)
        ? `${names[chosen]}. Fitted here, ${parts.join('; ')}.`
        : 'Reading both seats …';
    };
    for (const { study } of seats) {
      study.addEventListener('ringdown-ready', tell);
      study.addEventListener('ringdown-progress', tell);
    }
    const pick = choices(
      'Remedy',
      Object.entries(names).map(([key, name]) => [name, key]),
      (key) => {
        chosen = key;
        for (const { seat, recording } of seats) recording.setAttribute('src', of(seat, key));
        tell();
      },
    );
    tell();
    const own = h(
      'ringdown-study',
      { room: '5.6x3.9x2.7', to: 120, 'no-files': true, 'no-choices': true },
      ...['a', 'b'].map((seat) =>
        h('ringdown-recording', {
          ...{ src: of(seat, 'before'), label: `Seat ${seat.toUpperCase()}`, seat: at[seat] },
          ...{ source: '0.5 0.45 0.3', clock: 'common' },
        }),
      ),
      h('ringdown-remedy'),
      h('ringdown-listen', { heard: 'treated' }),
    );
    return h(
      'div',
      {},
      tasks(...remedies.tasks(facts)),
      pick,
      read,
      h('div', { class: 'two' }, ...seats.map(({ study }) => study)),
      h('h4', {}, 'Filters of your own, at both seats'),
      own,
    );
  },
};
