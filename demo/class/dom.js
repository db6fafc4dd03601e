/* global document */
/**
 * An element with attributes and children: `on…` are listeners, true is an attribute without value, false none.
 * @param {string} name
 */
export function h(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith('on')) element.addEventListener(key.slice(2), value);
    else if (value === true) element.setAttribute(key, '');
    else if (value !== false && value !== null && value !== undefined)
      element.setAttribute(key, String(value));
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return element;
}

/** Numbers of a language with their units, and a space that does not break. */
export function formats(language) {
  const number = (value, digits = 1) =>
    new Intl.NumberFormat(language, { minimumFractionDigits: digits, maximumFractionDigits: digits })
      .format(value)
      .replace('-', '−')
      .replace(/^−(0([.,]0+)?)$/, '$1');
  const united =
    (unit, standard) =>
    (value, digits = standard) =>
      `${number(value, digits)}\u00a0${unit}`;
  return { number, hz: united('Hz', 1), seconds: united('s', 2), decibels: united('dB', 0) };
}

/** A line of buttons of which one is pressed. */
export function choices(label, entries, take) {
  const buttons = entries.map(([name], index) =>
    h('button', { type: 'button', 'aria-pressed': String(index === 0), onclick: () => press(index) }, name),
  );
  const press = (index) => {
    buttons.forEach((button, k) => button.setAttribute('aria-pressed', String(k === index)));
    take(entries[index][1]);
  };
  return h('div', { class: 'choices', role: 'group', 'aria-label': label }, h('span', {}, label), ...buttons);
}

/** A slider that says its value. */
export function slider(label, { min, max, step, value, text }, take) {
  const output = h('output', {}, text(value));
  const input = h('input', { type: 'range', min, max, step, value, 'aria-valuetext': text(value) });
  input.addEventListener('input', () => {
    const now = text(input.valueAsNumber);
    output.textContent = now;
    input.setAttribute('aria-valuetext', now);
    take(input.valueAsNumber);
  });
  return h('label', { class: 'slider' }, h('span', {}, label), input, output);
}

export const tasks = (...lines) => h('ol', { class: 'tasks' }, ...lines.map((line) => h('li', {}, line)));
