import { ContextEvent } from '@lit/context';
import { isServer } from 'lit';
import type { ReactiveController } from 'lit';
import { createStudy } from '../../study/study.js';
import { workerWay } from '../../study/pool.js';
import type { SystemPart } from '../../study/system-types.js';
import type { Part, StudyFailure, StudySnapshot } from '../../study/types.js';
import { emit } from '../events.js';
import { afterGrace, Scope } from '../scope.js';
import type { Dispose } from '../scope.js';
import { linkInFragment } from '../../study/view-link.js';
import { feedContext } from './context.js';
import { Feed } from './feed.js';
import type { LinkedView, LinkState } from './links.js';
import { decodeInPage } from './page-audio.js';
import type { PageSource } from './page-files.js';
import type { RingdownElement } from './element.js';
import type { Settings } from './settings.js';

/** What an element says of itself, to find or make its study. */
export interface SourceHost extends RingdownElement, Partial<LinkState> {
  readonly htmlFor: string | null;
  /** What it shows beside what every study computes. */
  readonly needs: readonly Part[];
  /** The same of sources and seats. */
  readonly systemNeeds?: readonly SystemPart[];
  /** Whether it holds a study by itself also without a recording: it names a room that it shows. */
  readonly ownsRoom?: boolean;
  /** Whether the page's address may say what is shown. */
  readonly linked: boolean;
  ownSource(): PageSource | null;
  ownSettings(): Settings;
  describe(failure: StudyFailure): string;
  /** Calls back once that sentence is there. */
  whenSaid(failure: StudyFailure, then: () => void): void;
}

/** Owns a feed for an element: lends it to the page's life, and tells the page what the engine did. */
export class OwnFeed {
  readonly feed: Feed;
  readonly #host: SourceHost;
  #callOff: Dispose | null = null;
  #scope = new Scope();
  #told: { status: string; progress: unknown; failures: readonly StudyFailure[] };

  constructor(host: SourceHost) {
    this.#host = host;
    this.feed = new Feed(() => createStudy({ decoder: decodeInPage }));
    this.#told = { status: this.feed.snapshot.status, progress: null, failures: [] };
    this.feed.subscribe(() => this.#tell());
  }

  connect(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.feed.resume();
    this.#scope = new Scope();
    this.#scope.listen(window, 'hashchange', () => this.#readAddress());
  }

  /** To be called whenever attributes have been read: what the address says comes after them. */
  useAddress(): void {
    const { linked, id } = this.#host;
    const { links } = this.feed;
    const wanted = linked ? id : null;
    if (links.addressId === wanted) return;
    links.addressId = wanted;
    this.#readAddress();
  }

  #readAddress(): void {
    const { links } = this.feed;
    if (links.addressId === null) return;
    const text = linkInFragment(location.hash, links.addressId);
    if (text !== null) links.apply(text);
  }

  /** A moved element is back before the grace is over; its study goes on as if nothing had been. */
  disconnect(): void {
    this.#scope.dispose();
    this.#callOff = afterGrace(() => this.feed.suspend());
  }

  #tell(): void {
    const { feed } = this;
    const { status, progress } = feed.snapshot;
    const before = this.#told;
    const { failures } = feed;
    this.#told = { status, progress, failures };
    const key = (failure: StudyFailure): string => JSON.stringify(failure);
    const known = new Set(before.failures.map(key));
    for (const failure of failures)
      if (!known.has(key(failure)))
        this.#host.whenSaid(failure, () =>
          emit(this.#host, 'ringdown-error', { failure, message: this.#host.describe(failure) }),
        );
    if (progress && progress !== before.progress)
      emit(this.#host, 'ringdown-progress', { stage: progress.stage, fraction: progress.fraction });
    if (status === 'ready' && before.status !== 'ready')
      emit(this.#host, 'ringdown-ready', { snapshot: feed.snapshot, way: workerWay() });
  }
}

/**
 * Finds the study of an element: its own where it has a source, else the one named by `for`, else the one it is in.
 * `src` first, because an element that names a file means that file.
 */
export class StudySource implements ReactiveController {
  readonly #host: SourceHost;
  readonly #changed: (progressOnly: boolean) => void;
  #own: OwnFeed | null = null;
  #feed: Feed | null = null;
  #scope = new Scope();
  #missing: StudyFailure | null = null;

  /** @param changed is told whether only the progress is different */
  constructor(host: SourceHost, changed: (progressOnly: boolean) => void) {
    this.#host = host;
    this.#changed = changed;
    host.addController(this);
  }

  get feed(): Feed | null {
    return this.#feed;
  }

  get snapshot(): StudySnapshot | null {
    return this.#feed?.snapshot ?? null;
  }

  /** Whether the study belongs to the element itself, which then has to say what the study would have said. */
  get isOwn(): boolean {
    return this.#own !== null && this.#feed === this.#own.feed;
  }

  get failures(): readonly StudyFailure[] {
    return this.#missing ? [this.#missing] : (this.#feed?.failures ?? []);
  }

  hostConnected(): void {
    if (isServer) return;
    this.#scope = new Scope();
    this.#own?.connect();
    this.resolve();
  }

  hostDisconnected(): void {
    this.#scope.dispose();
    this.#feed = null;
    this.#own?.disconnect();
  }

  /** Reads the element's attributes again and goes to the study they name. */
  resolve(): void {
    if (isServer || !this.#host.isConnected) return;
    const source = this.#host.ownSource();
    this.#missing = null;
    if (source || (this.#host.ownsRoom && !this.#host.htmlFor)) {
      this.#own ??= new OwnFeed(this.#host);
      this.#own.feed.configure(this.#host.ownSettings());
      this.#own.feed.setSources(source ? [source] : [], new Map());
      this.#own.useAddress();
      this.#use(this.#own.feed);
      return;
    }
    this.#own?.feed.setSources([], new Map());
    const id = this.#host.htmlFor;
    if (id) this.#useNamed(id);
    else {
      this.#use(this.#requested());
      if (!this.#feed) this.#waitForStudies();
    }
  }

  #use(feed: Feed | null): void {
    if (feed !== this.#feed) {
      this.#scope.dispose();
      this.#scope = new Scope();
      this.#feed = feed;
      if (feed) {
        if (this.#host.linkName) this.#scope.add(feed.links.add(this.#host as LinkedView));
        this.#scope.add(feed.subscribe(this.#changed));
        for (const part of this.#host.needs) this.#scope.add(feed.need(part));
        for (const part of this.#host.systemNeeds ?? []) this.#scope.add(feed.needSystem(part));
      }
    }
    this.#changed(false);
  }

  /** Asks anew at every turn: the element may have been moved to another study, or out of all. */
  #requested(): Feed | null {
    let answer: Feed | null = null;
    this.#host.dispatchEvent(
      new ContextEvent(feedContext, this.#host, (feed) => {
        answer = feed;
      }),
    );
    return answer;
  }

  #useNamed(id: string): void {
    const root = this.#host.getRootNode() as Document | ShadowRoot;
    const find = (): Feed | null => {
      const found = root.getElementById(id) ?? this.#host.ownerDocument.getElementById(id);
      return found && 'feed' in found ? ((found.feed as Feed | undefined) ?? null) : null;
    };
    const feed = find();
    this.#use(feed);
    if (feed) return;
    this.#waitForStudies();
    // The study may come later, with the rest of the page; only then is it missing.
    const look = (): void => {
      if (find()) this.resolve();
    };
    this.#scope.observeMutations(root, { childList: true, subtree: true, attributeFilter: ['id'] }, look);
    this.#scope.timeout(() => {
      this.#missing = { code: 'study-missing', params: { id }, label: null };
      this.#changed(false);
    }, 2000);
  }

  /** The study's element may be defined after this one. */
  #waitForStudies(): void {
    if (customElements.get('ringdown-study')) return;
    const scope = this.#scope;
    void customElements.whenDefined('ringdown-study').then(() => {
      if (scope.disposed || this.#feed) return;
      this.resolve();
    });
  }
}
