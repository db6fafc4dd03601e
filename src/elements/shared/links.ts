import { failureOf } from '../../study/failure.js';
import { sameFrequency } from '../../study/same.js';
import type { Study, StudyFailure } from '../../study/types.js';
import { readViewLink, recordingMark, viewLinkText } from '../../study/view-link.js';
import type { LinkedViewName, LinkValue, ViewLink } from '../../study/view-link.js';

/** A view that keeps something of its own in a link. */
export interface LinkState {
  readonly linkName: LinkedViewName | null;
  /** In the order of the view's fields; null where it is as by default. */
  linkValues(): readonly LinkValue[];
  /** Takes them; what is not there becomes what it is by default. */
  takeLink(values: readonly LinkValue[]): void;
}

export type LinkedView = LinkState & Node;

interface Owner {
  readonly study: Study;
  readonly fetching: boolean;
}

/**
 * The link of one study: its choices and what its views keep of their own. What the link names and is not there yet (a
 * recording on its way, a ridge that is still being fitted, a view whose script comes later) is taken as soon as it is.
 */
export class Links {
  readonly #owner: Owner;
  readonly #changed: () => void;
  readonly #views = new Set<LinkedView>();
  #recording: string | null = null;
  #ridgeHz: number | null = null;
  #asked: ViewLink['views'] | null = null;
  failures: readonly StudyFailure[] = [];

  constructor(owner: Owner, changed: () => void) {
    this.#owner = owner;
    this.#changed = changed;
  }

  /** Whether the page reads links out of its address, and those of which id; null where it does not. */
  addressId: string | null = null;

  add(view: LinkedView): () => void {
    this.#views.add(view);
    for (const [name, one] of this.#named()) if (one === view) this.#give(name, view);
    return () => this.#views.delete(view);
  }

  /** Views by their names in the link, in the order of the page. */
  #named(): [string, LinkedView][] {
    const counts = new Map<string, number>();
    const order = (a: Node, b: Node): number =>
      a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1;
    return [...this.#views].sort(order).flatMap((view): [string, LinkedView][] => {
      const kind = view.linkName;
      if (!kind) return [];
      const count = (counts.get(kind) ?? 0) + 1;
      counts.set(kind, count);
      return [[count === 1 ? kind : `${kind}.${count}`, view]];
    });
  }

  #give(name: string, view: LinkedView): void {
    if (this.#asked) view.takeLink(this.#asked.get(name) ?? []);
  }

  get text(): string {
    const named = this.#named();
    return viewLinkText(
      this.#owner.study.snapshot,
      named.map(([name, view]) => [name, view.linkValues()] as const),
    );
  }

  /** @returns whether it was taken; else nothing has changed, and the failure says why */
  apply(text: string): boolean {
    let link: ViewLink;
    try {
      link = readViewLink(text);
    } catch (error) {
      this.#fail({ ...failureOf(error), label: null });
      return false;
    }
    this.failures = [];
    this.#asked = link.views;
    this.#recording = link.recording;
    this.#ridgeHz = link.ridgeHz;
    const { study } = this.#owner;
    study.setChoices(link.choices);
    study.setCursor(link.cursor);
    study.selectMode(link.mode);
    if (!link.recording) study.setActive(0);
    if (link.ridgeHz === null) study.selectResonance(null);
    for (const [name, view] of this.#named()) this.#give(name, view);
    this.follow();
    this.#changed();
    return true;
  }

  #fail(failure: StudyFailure): void {
    this.failures = [failure];
    this.#changed();
  }

  /** Takes what has come since. */
  follow(): void {
    const { study, fetching } = this.#owner;
    if (this.#recording !== null) {
      const { recordings, status } = study.snapshot;
      const index = recordings.findIndex((one) => recordingMark(one) === this.#recording);
      const over = !fetching && status !== 'working' && recordings.length > 0;
      if (index >= 0 || over) this.#recording = null;
      if (index >= 0) study.setActive(index);
      else if (over) this.#fail({ code: 'link-recording', params: {}, label: null });
    }
    // Setting the active recording may already have followed in turn.
    const { status, diagnosis } = study.snapshot;
    if (this.#recording !== null || this.#ridgeHz === null || status !== 'ready' || !diagnosis || fetching)
      return;
    const frequencyHz = this.#ridgeHz;
    this.#ridgeHz = null;
    const at = (list: readonly { readonly frequencyHz: number }[]): number | null =>
      sameFrequency([{ frequencyHz }], 0, list);
    const ridge = at(diagnosis.ridges);
    const resonance = at(diagnosis.resonances);
    if (ridge !== null) study.selectRidge(ridge);
    else if (resonance !== null) study.selectResonance(resonance);
    else this.#fail({ code: 'link-ridge', params: { frequencyHz }, label: null });
  }
}
