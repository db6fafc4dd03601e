import { openStudyText } from '../../study/document.js';
import type { OpenedStudy } from '../../study/document.js';
import type { StudyFailure } from '../../study/types.js';

/** How long hands must rest before a study is kept, ms. */
export const keepAfterMs = 900;

const keyOf = (name: string): string => `ringdown:${name}`;

const failureBy = (code: string): StudyFailure => ({ code, params: {}, label: null });

/** What the browser says when a page may not keep anything, or no more. */
const fullNames = new Set(['QuotaExceededError', 'NS_ERROR_DOM_QUOTA_REACHED']);

function attempt<T>(action: (storage: Storage) => T): { value: T } | { failure: StudyFailure } {
  try {
    return { value: action(window.localStorage) };
  } catch (thrown) {
    const full = thrown instanceof DOMException && fullNames.has(thrown.name);
    return { failure: failureBy(full ? 'autosave-full' : 'autosave-refused') };
  }
}

export interface Kept {
  readonly study: OpenedStudy | null;
  readonly failure: StudyFailure | null;
}

/** What this browser kept under a name. What cannot be read is set aside, so that nothing is lost. */
export function keptStudy(name: string): Kept {
  const found = attempt((storage) => storage.getItem(keyOf(name)));
  if ('failure' in found) return { study: null, failure: found.failure };
  const text = found.value;
  if (text === null) return { study: null, failure: null };
  try {
    return { study: openStudyText(text), failure: null };
  } catch {
    attempt((storage) => storage.setItem(`${keyOf(name)}:unread`, text));
    return { study: null, failure: failureBy('autosave-unread') };
  }
}

/** Keeps a study under a name; the reason where the browser does not. */
export function keepStudy(name: string, text: string): StudyFailure | null {
  const done = attempt((storage) => storage.setItem(keyOf(name), text));
  return 'failure' in done ? done.failure : null;
}

export function forgetStudy(name: string): StudyFailure | null {
  const done = attempt((storage) => storage.removeItem(keyOf(name)));
  return 'failure' in done ? done.failure : null;
}
