/* global document, location, window, customElements */
/** The lessons' frame: which lesson is shown, its prediction, and what may be seen when. */
import { h } from './dom.js';
import { inLanguage, language, other, sayPage, words } from './language.js';
import { lessons } from './lessons.js';
import { ownFile } from './own-file.js';
import { forget, recall, remember } from './store.js';

const say = words.frame;
const main = document.querySelector('#lesson');
const list = document.querySelector('#lessons');

/** @param {{ question: string, options: string[] }} question */
function questionFields(lesson, question, index, entry, changed) {
  const legend = h('legend', {}, question.question);
  const radios = question.options.map((option, k) => {
    const input = h('input', { type: 'radio', name: `${lesson.id}-${index}`, value: k });
    input.checked = entry.chosen[index] === k;
    input.addEventListener('change', () => {
      entry.chosen[index] = k;
      changed();
    });
    return h('label', {}, input, h('span', {}, option));
  });
  return h(
    'fieldset',
    { class: question.options.length > 4 ? 'question many' : 'question' },
    legend,
    ...radios,
  );
}

function answers(lesson, entry, facts) {
  return h(
    'ol',
    { class: 'answers' },
    ...lesson.questions.map((question, k) => {
      const { right, because } = question.answer(facts);
      const met = entry.chosen[k] === right;
      return h(
        'li',
        { class: met ? 'met' : 'missed' },
        h('p', { class: 'asked' }, question.question),
        h(
          'p',
          {},
          h('strong', {}, question.options[right]),
          ` ${met ? say.met : say.missed(question.options[entry.chosen[k]])}`,
        ),
        h('p', { class: 'because' }, because),
      );
    }),
  );
}

/** One lesson: what can be seen of it follows from its entry in the store. */
function show(lesson, facts) {
  const entry = recall(lesson.id, lesson.questions);
  const index = lessons.indexOf(lesson);
  const says = h('p', { class: 'says', role: 'status' });
  const lock = h('button', { type: 'button', class: 'main-key lock' }, say.lock);
  const reveal = h(
    'button',
    { type: 'button', class: 'main-key to-reveal', 'aria-describedby': 'reveal-note' },
    say.revealAnswers,
  );
  const revealNote = h('p', { id: 'reveal-note', class: 'note' });
  const act = h('div', { class: 'stage' });
  const shown = h('div', { class: 'shown' });
  const fields = lesson.questions.map((question, k) =>
    questionFields(lesson, question, k, entry, () => update(false)),
  );
  const again = h('button', { type: 'button', class: 'again' }, say.again);

  const update = (moved) => {
    remember(lesson.id, entry);
    const left = entry.chosen.filter((one) => one === null).length;
    for (const field of fields) field.disabled = entry.locked;
    lock.disabled = entry.locked || left > 0;
    lock.textContent = entry.locked ? say.locked : say.lock;
    reveal.disabled = !entry.locked || entry.revealed;
    revealNote.textContent = entry.locked ? (entry.revealed ? '' : say.tryFirst) : say.notYet;
    if (entry.locked && !act.hasChildNodes()) {
      const stage = lesson.act(facts);
      act.append(stage, ownFile(stage));
    }
    if (!entry.locked && !act.hasChildNodes()) act.replaceChildren();
    actNote.hidden = entry.locked;
    // The answers are not in the page before they may be seen.
    if (entry.revealed && !shown.hasChildNodes()) shown.append(answers(lesson, entry, facts));
    again.hidden = !entry.locked;
    if (!moved) says.textContent = left > 0 ? say.left(left, fields.length) : entry.locked ? '' : say.ready;
  };
  const actNote = h('p', { class: 'note' }, say.opens);

  lock.addEventListener('click', () => {
    entry.locked = true;
    update(true);
    says.textContent = say.lockedNow;
    document.querySelector('#act-title').focus();
  });
  reveal.addEventListener('click', () => {
    entry.revealed = true;
    update(true);
    document.querySelector('#reveal-title').focus();
  });
  again.addEventListener('click', () => {
    forget(lesson.id);
    show(lesson, facts);
    document.querySelector('#lesson-title').focus();
  });

  const step = (name, title, ...content) =>
    h(
      'section',
      { class: `step ${name}`, 'aria-labelledby': `${name}-title` },
      h('h3', { id: `${name}-title`, tabindex: '-1' }, title),
      ...content,
    );
  const turnTo = (offset, text) => {
    const beside = lessons[index + offset];
    return beside
      ? h('a', { href: `#${beside.id}`, class: offset < 0 ? 'before' : 'after' }, text(beside.title))
      : null;
  };
  main.replaceChildren(
    h('h2', { id: 'lesson-title', tabindex: '-1' }, h('small', {}, say.lesson(index + 1)), lesson.title),
    h('p', { class: 'aim' }, lesson.aim),
    step(
      'predict',
      say.predict,
      lesson.look ? lesson.look(facts) : null,
      ...fields,
      h('p', { class: 'keys' }, lock),
      says,
    ),
    step('act', say.act, actNote, act),
    step('reveal', say.reveal, h('p', { class: 'keys' }, reveal, again), revealNote, shown),
    h('p', { class: 'turn' }, turnTo(-1, say.before), turnTo(1, say.next)),
  );
  for (const link of list.querySelectorAll('a'))
    if (link.hash === `#${lesson.id}`) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  document.title = say.documentTitle(lesson.title);
  update(false);
}

const chosen = () => lessons.find(({ id }) => location.hash === `#${id}`) ?? lessons[0];

sayPage();
document.querySelector('nav').setAttribute('aria-label', say.lessons);
document.querySelector('meta[name=description]').setAttribute('content', say.description);
const turn = document.querySelector('#language');
/** The same lesson in the other language; predictions are kept by lesson and not by language. */
const pointLanguage = () => turn.setAttribute('href', `${inLanguage('./', other)}${location.hash}`);
turn.setAttribute('lang', other);
turn.setAttribute('hreflang', other);
turn.textContent = say.other;
pointLanguage();
window.addEventListener('hashchange', pointLanguage);
list.append(...lessons.map(({ id, title }) => h('li', {}, h('a', { href: `#${id}` }, title))));
try {
  const response = await fetch('../recordings/class.json');
  if (!response.ok) throw new Error(String(response.status));
  const facts = await response.json();
  // The elements' own words of this language; the page's `lang` says which.
  if (language === 'de') await import('../../dist/ringdown-de.js');
  await customElements.whenDefined('ringdown-study');
  show(chosen(), facts);
  window.addEventListener('hashchange', () => {
    show(chosen(), facts);
    document.querySelector('#lesson-title').focus();
  });
  document.querySelector('#forget').addEventListener('click', () => {
    forget();
    show(chosen(), facts);
  });
} catch {
  main.replaceChildren(h('p', { class: 'note' }, say.absent));
}
