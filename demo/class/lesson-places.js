import { h, tasks } from './dom.js';
import { n, withAnswers, words as all } from './language.js';

const words = all.places;

/** (3) Source and seat: where a mode is not heard, and what a second source does to it. */
export const places = {
  ...{ id: 'places', title: words.title, aim: words.aim },
  questions: withAnswers(words.questions, [2, 1, 0]),
  tasks: (facts) => words.tasks(facts, n),
  act(facts) {
    const { room } = facts;
    const plan = h(
      'ringdown-study',
      { room, to: 130, 'no-files': true, 'no-choices': true, 'data-own': true },
      h('ringdown-place', { kind: 'seat', name: words.seat, at: '3.7 3.5 1.2' }),
      h('ringdown-place', { kind: 'source', name: words.source, at: '0.5 0.3 0.3' }),
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
          label: words.sides[side],
          seat: words.desk,
          source: words.sides[side],
          clock: 'common',
        }),
      ),
      h('ringdown-place', { kind: 'seat', name: words.desk, at: '3.7 3.5 1.2' }),
      h('ringdown-place', { kind: 'source', name: words.sides.left, at: '0.5 0.3 0.3' }),
      h('ringdown-place', { kind: 'source', name: words.sides.right, at: '0.5 3.6 0.3' }),
      h('ringdown-sources'),
    );
    return h(
      'div',
      {},
      tasks(...places.tasks(facts)),
      h('h4', {}, words.one),
      plan,
      h('h4', {}, words.two),
      pair,
    );
  },
};
