import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { fragmentWith } from '../../study/view-link.js';
import type { Speaker } from '../../words/index.js';
import type { Links } from './links.js';

/** What came of copying: nothing yet, done, or the address itself, to be copied by hand. */
export type Copied = 'no' | 'done' | { readonly address: string };

/** The page's address with what is shown in it. */
export function addressOf(links: Links): string {
  const { origin, pathname, search, hash, protocol } = location;
  const page = protocol.startsWith('http') ? origin + pathname + search : location.href.split('#')[0];
  return `${page}#${fragmentWith(hash, links.addressId ?? '', links.text)}`;
}

/** Pages in frames and pages without https have no clipboard: the address then stands there to be taken. */
export async function copyText(text: string): Promise<Copied> {
  try {
    await navigator.clipboard.writeText(text);
    return 'done';
  } catch {
    return { address: text };
  }
}

export function linkControl(speaker: Speaker, copied: Copied, copy: () => void): TemplateResult {
  return html`<div class="link screen-only" part="link">
    <button type="button" @click=${copy}>${speaker.view('copy-link')}</button>
    <span role="status"
      >${copied === 'no' ? nothing : speaker.view(copied === 'done' ? 'link-copied' : 'link-by-hand')}</span
    >
    ${
      typeof copied === 'string'
        ? nothing
        : html`<input
            type="text"
            readonly
            aria-label=${speaker.view('link-address')}
            .value=${copied.address}
            @focus=${(event: Event) => (event.target as HTMLInputElement).select()}
          />`
    }
  </div>`;
}
