import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { drawSign, SIGN_HEIGHT, SIGN_WIDTH } from '../../draw/legend.js';
import type { Inks, LegendItem } from '../../draw/legend.js';
import { templatePen } from './template-pen.js';

const drawn = new Map<string, readonly TemplateResult[]>();

/** Of the page: the list's own colour is that of its signs. */
const inks: Inks = {
  text: 'currentColor',
  accent: 'var(--_accent)',
  faint: 'var(--_faint)',
  above: 'var(--_above)',
  below: 'var(--_below)',
};

/** Our own drawing, in the colour of the text around it. */
function signOf(sign: LegendItem['sign']): readonly TemplateResult[] {
  let content = drawn.get(sign);
  if (content === undefined) {
    const pen = templatePen();
    drawSign(pen, inks, sign, 0, 0);
    drawn.set(sign, (content = pen.content()));
  }
  return content;
}

/** The signs of a picture with their words. */
export const legendList = (items: readonly LegendItem[]): TemplateResult =>
  html`<ul class="key" part="key">
    ${items.map(
      ({ sign, text }) =>
        html`<li>
          <svg
            viewBox="0 0 ${SIGN_WIDTH} ${SIGN_HEIGHT}"
            width=${SIGN_WIDTH}
            height=${SIGN_HEIGHT}
            aria-hidden="true"
          >
            ${signOf(sign)}
          </svg>
          ${text}
        </li>`,
    )}
  </ul>`;
