import { noChange } from 'lit';
import { Directive, directive, PartType, type AttributePart, type PartInfo } from 'lit/directive.js';

type Values = Readonly<Record<string, string | number>>;

/**
 * Properties of an element's style through its object model, never as an attribute's text: a page under a strict
 * Content Security Policy forbids that, and lit's own directive writes text at first.
 */
class StyleValues extends Directive {
  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ATTRIBUTE || part.name !== 'style')
      throw new Error('styleValues belongs in a style attribute.');
  }

  /** On a server there is no object model, and the page's policy is not in force yet. */
  render(values: Values): unknown {
    return Object.entries(values)
      .map(([name, value]) => `${name}:${value}`)
      .join(';');
  }

  override update(part: AttributePart, [values]: [Values]): unknown {
    const { style } = part.element as HTMLElement | SVGElement;
    for (const [name, value] of Object.entries(values)) style.setProperty(name, String(value));
    return noChange;
  }
}

export const styleValues = directive(StyleValues);
