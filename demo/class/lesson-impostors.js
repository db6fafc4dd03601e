import { choices, h, tasks } from './dom.js';
import { n, withAnswers, words as all } from './language.js';

const words = all.impostors;
const names = ['A', 'B', 'C', 'D', 'E', 'F'];
const fileOf = (name) => `../recordings/class-${name.toLowerCase()}.wav`;
const labelOf = (name) => `${words.recording} ${name}`;

/** One recording at a time in some views, and the buttons that choose it. */
function shown(...views) {
  const recording = h('ringdown-recording', { src: fileOf(names[0]), label: labelOf(names[0]) });
  const study = h(
    'ringdown-study',
    { range: 60, to: 160, 'no-files': true, 'no-choices': true },
    recording,
    ...views.map((view) => h(view)),
  );
  const pick = choices(
    words.recording,
    names.map((name) => [name, name]),
    (name) => {
      recording.setAttribute('label', labelOf(name));
      recording.setAttribute('src', fileOf(name));
    },
  );
  return { study, pick };
}

/** (5) A gallery of impostors. */
export const impostors = {
  ...{ id: 'impostors', title: words.title, aim: words.aim },
  questions: withAnswers(words.questions, [1, 0, 2, 3, 4, 5]),
  /** The responses alone: the other views name what they find. */
  look() {
    const { study, pick } = shown('ringdown-response');
    return h('div', { class: 'look' }, h('p', {}, words.look), pick, study);
  },
  tasks: (facts) => words.tasks(facts, n),
  act(facts) {
    const { study, pick } = shown(
      ...['ringdown-spectrogram', 'ringdown-response', 'ringdown-recordings', 'ringdown-ridges'],
    );
    study.dataset.own = 'true';
    return h('div', {}, tasks(...impostors.tasks(facts)), pick, study);
  },
};
