import { choices, h, tasks } from './dom.js';
import { n, withAnswers, words as all } from './language.js';

const words = all.kinds;
const order = (numbers) => `(${numbers.join(',')})`;

/** (2) Axial, tangential and oblique modes, and why they do not decay alike. */
export const kinds = {
  ...{ id: 'kinds', title: words.title, aim: words.aim },
  questions: withAnswers(words.questions, [0, 1, 0]),
  tasks: (facts) => words.tasks(facts, n),
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
      h('ringdown-place', { kind: 'seat', name: words.seat, at: '4.9 3.9 2.9' }),
      h('ringdown-place', { kind: 'source', name: words.source, at: '0.1 0.1 0.1' }),
      h('ringdown-pressure-map'),
      h('ringdown-listen', { response: 'predicted', heard: 'mode', material: 'burst' }),
      h('ringdown-modes'),
    );
    const pick = choices(
      words.mode,
      decays.map(({ order: numbers, frequencyHz }) => [`${order(numbers)} ${n.hz(frequencyHz)}`, numbers]),
      (numbers) => study.study.selectMode(numbers),
    );
    return h('div', {}, tasks(...kinds.tasks(facts)), pick, study);
  },
};
