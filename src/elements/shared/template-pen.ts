import { svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { LineStyle, Strokes } from '../../draw/pen.js';

const pathOf = (points: ArrayLike<number>): string => {
  let path = '';
  for (let k = 0; k + 1 < points.length; k += 2)
    path += `${k === 0 ? 'M' : 'L'}${points[k]} ${points[k + 1]}`;
  return path;
};

/** A pen whose strokes are elements of a template, so that no text is ever parsed as markup. For signs without images. */
export function templatePen(): Strokes & { content(): readonly TemplateResult[] } {
  const parts: TemplateResult[] = [];
  const dashOf = ({ dash }: LineStyle): string => dash?.join(' ') ?? 'none';
  return {
    line: (points, style) =>
      parts.push(
        svg`<path d=${pathOf(points)} fill="none" stroke-linejoin="round" stroke=${style.colour} stroke-width=${style.width} stroke-opacity=${style.opacity ?? 1} stroke-dasharray=${dashOf(style)} />`,
      ),
    area: (points, fill, opacity = 1) =>
      parts.push(svg`<path d=${`${pathOf(points)}Z`} fill=${fill} fill-opacity=${opacity} />`),
    circle: (x, y, radius, fill, edge) =>
      parts.push(
        svg`<circle cx=${x} cy=${y} r=${radius} fill=${fill ?? 'none'} stroke=${edge?.colour ?? 'none'} stroke-width=${edge?.width ?? 0} />`,
      ),
    content: () => parts,
  };
}
