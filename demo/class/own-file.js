import { h } from './dom.js';
import { words } from './language.js';

const say = words.frame.own;

/**
 * The learner's own recording in a lesson: its file goes to every study of the stage, with the room it was made in. The
 * answers stay those of the lesson's own room.
 * @param {HTMLElement} stage
 */
export function ownFile(stage) {
  const studies = () => [...stage.querySelectorAll('[data-own]')];
  const says = h('p', { class: 'note own-says', role: 'status' });
  const file = h('input', { type: 'file', accept: '.wav,.wave,.flac,.sofa,.txt,.csv,audio/*' });
  const sides = h('input', {
    type: 'text',
    inputmode: 'decimal',
    placeholder: say.example,
    autocomplete: 'off',
  });
  const extra = h('div', { class: 'own-views' });
  const load = async () => {
    const [chosen] = file.files ?? [];
    if (!chosen) {
      says.textContent = say.chooseFirst;
      return;
    }
    const study = studies()[0];
    if (!study) return;
    for (const one of studies()) {
      if (sides.value.trim()) one.setAttribute('room', sides.value);
      await one.addFiles([chosen]);
    }
    if (!extra.hasChildNodes())
      extra.append(
        ...['ringdown-ridges', 'ringdown-modes'].map((name) => h(name, { for: (study.id ||= 'own-study') })),
      );
    const { failures, recordings } = await study.study.settled();
    const [failure] = failures;
    says.textContent = failure ? study.describe(failure) : say.loaded(chosen.name, recordings.length === 1);
  };
  return h(
    'details',
    { class: 'own' },
    h('summary', {}, say.title),
    h('p', { class: 'note' }, say.note),
    h(
      'p',
      { class: 'fields' },
      h('label', {}, say.file, file),
      h('label', {}, say.room, sides),
      h('button', { type: 'button', onclick: load }, say.load),
    ),
    says,
    extra,
  );
}
