import { choices, h, tasks } from './dom.js';
import { n, withAnswers, words as all } from './language.js';

const words = all.windows;

/** (4) The same decay under three windows and three ranges. */
export const windows = {
  ...{ id: 'windows', title: words.title, aim: words.aim },
  questions: withAnswers(words.questions, [1, 0, 2]),
  tasks: (facts) => words.tasks(facts, n),
  act(facts) {
    const names = [0.1, 0.3, 0.8];
    const pictures = names.map((length) =>
      h(
        'ringdown-study',
        { window: length, range: 50, to: 160, 'no-files': true, 'no-choices': true, 'data-own': true },
        h('ringdown-recording', { src: '../recordings/class-decays.wav', label: words.label(length, n) }),
        h('ringdown-spectrogram'),
      ),
    );
    pictures[1].id = 'window-between';
    const fitted = ['ringdown-decay-times', 'ringdown-ridges'].map((name) =>
      h(name, { for: pictures[1].id }),
    );
    const range = choices(
      words.range,
      [50, 40, 30].map((range) => [n.decibels(range), range]),
      (value) => {
        for (const study of pictures) study.setAttribute('range', value);
      },
    );
    return h(
      'div',
      {},
      tasks(...windows.tasks(facts)),
      range,
      h('div', { class: 'three' }, ...pictures),
      ...fitted,
    );
  },
};
