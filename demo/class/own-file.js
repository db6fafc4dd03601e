import { h } from './dom.js';

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
    placeholder: '5.6 x 3.9 x 2.7',
    autocomplete: 'off',
  });
  const extra = h('div', { class: 'own-views' });
  const load = async () => {
    const [chosen] = file.files ?? [];
    if (!chosen) {
      says.textContent = 'Choose a file first.';
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
    says.textContent = failure
      ? study.describe(failure)
      : `“${chosen.name}” is loaded (${recordings.length > 1 ? 'beside the recordings of the lesson' : 'as the only recording'}). The answers below stay those of the lesson’s own room.`;
  };
  return h(
    'details',
    { class: 'own' },
    h('summary', {}, 'Take a recording of your own instead'),
    h('p', { class: 'note' }, 'An impulse response (WAV, FLAC, AES69 or text). It stays in this page.'),
    h(
      'p',
      { class: 'fields' },
      h('label', {}, 'File', file),
      h('label', {}, 'Its room: length x width x height, m', sides),
      h('button', { type: 'button', onclick: load }, 'Load it into this lesson'),
    ),
    says,
    extra,
  );
}
