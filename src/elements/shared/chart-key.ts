import { html, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';

/** Signs of the charts, drawn as they stand in the pictures. */
export type Sign =
  | 'text-line'
  | 'text-dash'
  | 'accent-line'
  | 'accent-dash'
  | 'dots'
  | 'faint-line'
  | 'tie'
  | 'above'
  | 'below'
  | 'ring'
  | 'square'
  | 'grey'
  | 'band'
  | 'hatch'
  | 'full'
  | 'hollow'
  | 'bar'
  | 'faint-bar'
  | 'stroke-1'
  | 'stroke-2'
  | 'stroke-3';

const strokes = (count: number): SVGTemplateResult =>
  svg`${Array.from({ length: count }, (_, k) => svg`<path class="text" d="M11 ${0.5 + 4 * k}v3" />`)}`;

const drawings: Readonly<Record<Sign, SVGTemplateResult>> = {
  'text-line': svg`<path class="text" d="M1 6h20" />`,
  'text-dash': svg`<path class="text" stroke-dasharray="6 3" d="M1 6h20" />`,
  'accent-line': svg`<path class="accent" d="M1 6h20" />`,
  'accent-dash': svg`<path class="accent" stroke-dasharray="6 3" d="M1 6h20" />`,
  dots: svg`<path class="faint" stroke-dasharray="2 3" d="M1 6h20" />`,
  'faint-line': svg`<path class="faint" d="M1 6h20" />`,
  above: svg`<rect class="above" width="22" height="12" />`,
  below: svg`<rect class="below" width="22" height="12" />`,
  ring: svg`<circle class="text" cx="11" cy="6" r="4.5" />`,
  square: svg`<rect class="full" x="7" y="2" width="8" height="8" />`,
  tie: svg`<path class="text" d="M4 1l14 10" />`,
  grey: svg`<rect class="grey" width="22" height="12" />`,
  band: svg`<rect class="band" width="22" height="12" /><path class="accent thin" d="M0 .5h22M0 11.5h22" />`,
  hatch: svg`${[-6, 1, 8, 15].map((x) => svg`<path class="faint" d="M${x} 12l12 -12" />`)}`,
  full: svg`<circle class="full" cx="11" cy="6" r="4" />`,
  hollow: svg`<circle class="text" cx="11" cy="6" r="4" />`,
  bar: svg`<path class="text" d="M1 6h20" stroke-width="2.5" />`,
  'faint-bar': svg`<path class="faint" stroke-dasharray="3 3" d="M1 6h20" />`,
  'stroke-1': strokes(1),
  'stroke-2': strokes(2),
  'stroke-3': strokes(3),
};

export interface KeyItem {
  readonly sign: Sign;
  readonly word: string;
}

/** What the signs of a chart mean. */
export function chartKey(items: readonly KeyItem[]): TemplateResult {
  return html`<ul class="key" part="key">
    ${items.map(
      ({ sign, word }) =>
        html`<li>
          <svg viewBox="0 0 22 12" width="22" height="12" aria-hidden="true">${drawings[sign]}</svg> ${word}
        </li>`,
    )}
  </ul>`;
}
