import { choices, h, tasks } from './dom.js';
import { n, withAnswers, words as all } from './language.js';

const words = all.remedies;

/** (6) Cut, move or absorb, at seat A and at seat B. */
export const remedies = {
  ...{ id: 'remedies', title: words.title, aim: words.aim },
  questions: withAnswers(words.questions, [1, 0, 2, 2]),
  tasks: (facts) => words.tasks(facts, n),
  act(facts) {
    const {
      remedies: { frequencyHz },
    } = facts;
    const of = (seat, what) => `../recordings/class-${what}-${seat}.wav`;
    const at = { a: '3.7 3.0 1.2', b: '4.6 2.05 1.1' };
    const seats = ['a', 'b'].map((seat) => {
      const recording = h('ringdown-recording', {
        src: of(seat, 'before'),
        label: words.seat(seat.toUpperCase()),
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
          ? words.found(
              n.seconds(near.decayTimeSeconds),
              n.seconds(near.decayTimeSdSeconds),
              n.hz(near.frequencyHz),
            )
          : words.notFound(n.hz(frequencyHz));
        return words.ofSeat(seat.toUpperCase(), text);
      });
      read.textContent = parts.every(Boolean)
        ? words.fitted(words.names[chosen], parts.join('; '))
        : words.reading;
    };
    for (const { study } of seats) {
      study.addEventListener('ringdown-ready', tell);
      study.addEventListener('ringdown-progress', tell);
    }
    const pick = choices(
      words.remedy,
      Object.entries(words.names).map(([key, name]) => [name, key]),
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
          ...{ src: of(seat, 'before'), label: words.seat(seat.toUpperCase()), seat: at[seat] },
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
      h('h4', {}, words.own),
      own,
    );
  },
};
