import { markup, type Markup } from './markup.js';

/** A picture with its caption, kept together on one page. */
export const figureOf = (picture: Markup, caption: string): Markup =>
  markup`<figure><div class="wide" tabindex="0" role="group" aria-label="${caption}">${picture}</div><figcaption>${caption}</figcaption></figure>\n`;
