import { hasMore, more, moreName } from '../../study/more.js';
import type { Failure } from '../../study/failure.js';
import type { Speaker } from '../../words/index.js';

const missing = (speaker: Speaker, { code }: Failure): boolean =>
  hasMore() && !Object.hasOwn(speaker.words.errors, code);

/** The sentence of a refusal; where it lies in a file that the page has not fetched, that is said while it is fetched. */
export function saidOf(speaker: Speaker, failure: Failure): string {
  if (!missing(speaker, failure)) return speaker.error(failure);
  // Elements speak anew when the words are there.
  more().catch(() => undefined);
  return speaker.error({ code: 'more-words', params: { code: failure.code, name: moreName() } });
}

/** Calls back once the sentence can be said: at once where it is there, else when its file came or did not come. */
export function onceSaid(speaker: Speaker, failure: Failure, then: () => void): void {
  if (missing(speaker, failure)) more().then(then, then);
  else then();
}
