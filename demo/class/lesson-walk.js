import { h, slider, tasks } from './dom.js';
import { n, withAnswers, words as all } from './language.js';

const words = all.walk;

/** (1) One dimension: walk the pressure from wall to wall. */
export const walk = {
  ...{ id: 'walk', title: words.title, aim: words.aim },
  questions: withAnswers(words.questions, [1, 0, 3]),
  tasks: (facts) => words.tasks(facts, n),
  act(facts) {
    const {
      room,
      walk: { firstHz },
    } = facts;
    const study = h(
      'ringdown-study',
      { room, temperature: 20, to: 130, 'no-files': true, 'no-choices': true, 'data-own': true },
      h('ringdown-place', { kind: 'seat', name: words.listener, at: '1.4 1.2 1.2' }),
      h('ringdown-place', { kind: 'source', name: words.source, at: '0.4 0.4 0.3' }),
      h('ringdown-pressure-map'),
      h('details', {}, h('summary', {}, words.drag), h('ringdown-room')),
    );
    const air = slider(
      words.air,
      {
        min: 10,
        max: 35,
        step: 1,
        value: 20,
        text: (value) => words.airText(value, firstHz * Math.sqrt((273.15 + value) / 293.15), n),
      },
      (value) => study.setAttribute('temperature', value),
    );
    return h('div', {}, tasks(...walk.tasks(facts)), air, study);
  },
};
