import { html, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import type { FieldView } from '../../draw/types.js';
import type { Speaker } from '../../words/index.js';

const box = (content: SVGTemplateResult): TemplateResult =>
  html`<svg viewBox="0 0 22 12" width="22" height="12" aria-hidden="true">${content}</svg>`;

/** Strokes from the upper left to the lower right, as the surface has them. */
const hatch = (step: number): SVGTemplateResult[] =>
  Array.from({ length: Math.ceil(34 / step) }, (_, k) => {
    const x = k * step - 10;
    return svg`<path d="M${x} 0l12 12" />`;
  });

const frame = svg`<rect class="edge" x="0.5" y="0.5" width="21" height="11" />`;
const strokes = (count: number): TemplateResult =>
  box(svg`${Array.from({ length: count }, (_, k) => svg`<path class="stroke" d="M11 ${0.5 + 4 * k}v3" />`)}`);

/** What is in the picture beside the surface itself, each sign with its word; only what this picture has. */
export function waterfallKey(view: FieldView, speaker: Speaker): TemplateResult {
  const { field, curtain, flags, marks, rowRange } = view;
  const pastEnd = field.rowEnd < rowRange[1];
  const fast = field.aboveWindow?.some((above) => above <= 0) === true;
  const items: [boolean, TemplateResult, string][] = [
    [
      flags.some(({ sinks }) => sinks === true),
      box(svg`<path class="ridge" d="M1 6h15" /><circle cx="17.5" cy="6" r="2.5" />`),
      'key-ridge',
    ],
    [field.columnFloor !== null, box(svg`<rect class="noise" width="22" height="12" />`), 'key-noise'],
    [fast, box(svg`${hatch(4)}${frame}`), 'key-fast'],
    [pastEnd, box(svg`${hatch(7)}${frame}`), 'key-past-end'],
    [
      Boolean(curtain),
      box(svg`<rect class="sheet" width="22" height="10" /><path class="ridge" d="M0 10.5h22" />`),
      'key-curtain',
    ],
    [marks.length > 0, strokes(1), 'key-axial'],
    [marks.length > 0, strokes(2), 'key-tangential'],
    [marks.length > 0, strokes(3), 'key-oblique'],
  ];
  return html`<ul class="key" part="key">
    ${items.map(([shown, sign, word]) =>
      shown ? html`<li>${sign} ${speaker.view(word, { limit: curtain?.label })}</li>` : null,
    )}
  </ul>`;
}
