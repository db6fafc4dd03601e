/* global sessionStorage */
/** Predictions of this tab: kept across a reload where the browser lets a page keep something, else in memory. */
const name = 'ringdown-class';
let state = {};
try {
  state = JSON.parse(sessionStorage.getItem(name) ?? '{}') ?? {};
} catch {
  // Storage is refused, or holds something else: the lessons begin anew.
}

function keep() {
  try {
    sessionStorage.setItem(name, JSON.stringify(state));
  } catch {
    // They last as long as the page then.
  }
}

/** @returns {{ chosen: (number | null)[], locked: boolean, revealed: boolean }} */
export function recall(id, questions) {
  const { chosen, locked, revealed } = state[id] ?? {};
  const fits =
    Array.isArray(chosen) &&
    chosen.length === questions.length &&
    chosen.every(
      (one, k) => one === null || (Number.isInteger(one) && questions[k].options[one] !== undefined),
    );
  if (!fits) return { chosen: questions.map(() => null), locked: false, revealed: false };
  const whole = locked === true && chosen.every((one) => one !== null);
  return { chosen: [...chosen], locked: whole, revealed: whole && revealed === true };
}

export function remember(id, entry) {
  state[id] = entry;
  keep();
}

export function forget(id) {
  if (id === undefined) state = {};
  else delete state[id];
  keep();
}
