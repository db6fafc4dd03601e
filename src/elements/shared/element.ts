import { adoptStyles, isServer, LitElement } from 'lit';
import { createSpeaker, onWordsChange, wordsRevision } from '../../words/index.js';
import type { Speaker } from '../../words/index.js';
import { Scope } from '../scope.js';
import { localeOf, onPageLanguage } from './locale.js';
import { wantLanguage } from './languages.js';

const speakers = new Map<string, Speaker>();
let revision = 0;

/** The speaker of a locale; made once for the page, and anew when its words have changed. */
function speakerOf(locale: string): Speaker {
  if (revision !== wordsRevision()) speakers.clear();
  revision = wordsRevision();
  let speaker = speakers.get(locale);
  if (!speaker) speakers.set(locale, (speaker = createSpeaker(locale)));
  return speaker;
}

/**
 * What all elements of ringdown share: a scope between connect and disconnect, a speaker, custom states.
 *
 * @cssprop --ringdown-faint - Lesser text; between text and ground where not given.
 * @cssprop --ringdown-line - Rules and frames; between text and ground where not given.
 * @cssprop --ringdown-alert - What is above its limit, and refusals.
 * @cssprop [--ringdown-radius=3px] - Corners of buttons and fields.
 */
export abstract class RingdownElement extends LitElement {
  readonly #internals = this.attachInternals();
  #scope: Scope | null = null;

  /** In the page's language, with its numbers. */
  protected get speaker(): Speaker {
    return speakerOf(isServer ? 'en' : localeOf(this));
  }

  /**
   * What a server rendered stands there until now. It is replaced, not adopted: in a page the first state already differs
   * (the page's language, a file on its way), which hydration would call a mismatch.
   */
  protected override createRenderRoot(): HTMLElement | DocumentFragment {
    const declared = isServer ? null : this.shadowRoot;
    if (!declared) return super.createRenderRoot();
    declared.replaceChildren();
    adoptStyles(declared, (this.constructor as typeof LitElement).elementStyles);
    return declared;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (isServer) return;
    this.#scope = new Scope();
    this.#scope.add(onWordsChange(() => this.wordsChanged()));
    this.#scope.add(
      onPageLanguage(() => {
        wantLanguage(localeOf(this));
        this.wordsChanged();
      }),
    );
    wantLanguage(localeOf(this));
    this.connected(this.#scope);
  }

  /**
   * In another document its style sheets are not those of that document any more, which takes them away: each is made
   * anew there.
   * @internal
   */
  adoptedCallback(): void {
    const view = this.ownerDocument.defaultView;
    const { shadowRoot } = this;
    if (!view || !shadowRoot) return;
    const { elementStyles } = this.constructor as typeof LitElement;
    shadowRoot.adoptedStyleSheets = elementStyles.map((style) => {
      const sheet = new view.CSSStyleSheet();
      sheet.replaceSync(
        'cssText' in style ? style.cssText : [...style.cssRules].map(({ cssText }) => cssText).join('\n'),
      );
      return sheet;
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#scope?.dispose();
    this.#scope = null;
    this.disconnected();
  }

  /** Takes what is needed while in a page; the scope gives it back. */
  protected connected(_scope: Scope): void {}

  protected disconnected(): void {}

  /** Another language is spoken from now on, or the same with other words. */
  protected wordsChanged(): void {
    this.requestUpdate();
  }

  protected get scope(): Scope | null {
    return this.#scope;
  }

  /**
   * Sets or clears a custom state, seen by pages as `:state(name)`.
   * @internal
   */
  setState(name: string, on: boolean): void {
    const states = this.#internals.states as CustomStateSet | undefined;
    if (on) states?.add(name);
    else states?.delete(name);
  }
}
