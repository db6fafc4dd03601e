/* global document, window */
/** The lessons on paper: questions first, the answers on pages of their own. */
import { h } from './dom.js';
import { sayPage, words } from './language.js';
import { lessons } from './lessons.js';

const say = words.frame;
const sheet = document.querySelector('#sheet');
const answers = document.querySelector('#answers');
const letter = (k) => String.fromCharCode(97 + k);

const lines = (count) => Array.from({ length: count }, () => h('div', { class: 'line' }));

function questionsOf(lesson, index, facts) {
  const stage = lesson.tasks(facts);
  return h(
    'section',
    { class: 'lesson', 'aria-labelledby': `sheet-${lesson.id}` },
    h('h2', { id: `sheet-${lesson.id}` }, h('small', {}, say.lesson(index + 1)), lesson.title),
    h('p', { class: 'aim' }, lesson.aim),
    h('h3', {}, say.predict),
    h(
      'ol',
      { class: 'questions' },
      ...lesson.questions.map(({ question, options }) =>
        h(
          'li',
          {},
          h('p', {}, question),
          h(
            'ul',
            { class: options.length > 4 ? 'options many' : 'options' },
            ...options.map((option, k) =>
              h('li', {}, h('span', { class: 'box' }), `${letter(k)}  ${option}`),
            ),
          ),
        ),
      ),
    ),
    h('h3', {}, say.sheet.saw),
    h('ol', { class: 'questions' }, ...stage.map((line) => h('li', {}, h('p', {}, line), ...lines(1)))),
    h('h3', {}, say.sheet.surprised),
    ...lines(2),
  );
}

function answersOf(lesson, index, facts) {
  return h(
    'div',
    { class: 'solved' },
    h('h3', {}, `${index + 1}  ${lesson.title}`),
    h(
      'ol',
      {},
      ...lesson.questions.map((question) => {
        const { right, because } = question.answer(facts);
        return h(
          'li',
          {},
          h('p', {}, h('strong', {}, `${letter(right)}  ${question.options[right]}`), ` ${because}`),
        );
      }),
    ),
  );
}

sayPage();
document.title = say.sheet.title;
try {
  const response = await window.fetch('../recordings/class.json');
  if (!response.ok) throw new Error(String(response.status));
  const facts = await response.json();
  sheet.replaceChildren(...lessons.map((lesson, k) => questionsOf(lesson, k, facts)));
  answers.append(...lessons.map((lesson, k) => answersOf(lesson, k, facts)));
  document.documentElement.dataset.ready = 'true';
} catch {
  sheet.replaceChildren(h('p', {}, say.absent));
}
document.querySelector('#print').addEventListener('click', () => window.print());
document.querySelector('#with-answers').addEventListener('change', ({ target }) => {
  answers.hidden = !target.checked;
});
