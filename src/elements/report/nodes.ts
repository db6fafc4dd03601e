/**
 * Nodes from the markup of the sheet, made one by one and never parsed by the browser: only elements and attributes of the
 * lists below can come of it, whatever stands in the text, and no page's policy is asked for an exception.
 */
const svgSpace = 'http://www.w3.org/2000/svg';

const elements = new Set(
  `article section header h1 h2 p dl div dt dd ul li br small code figure figcaption table caption thead tbody tr th td
  svg title desc metadata rect path g text circle clipPath`.split(/\s+/),
);
const attributes = new Set(
  `class tabindex role scope aria-label id width height viewBox direction font-family font-size font-weight fill
  fill-opacity stroke stroke-width stroke-opacity stroke-dasharray stroke-linejoin paint-order text-anchor d x y cx cy r
  transform clip-path`.split(/\s+/),
);
const signs: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

const plain = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => signs[name]);

/**
 * @param text What `markup` made: every tag closed, every attribute in double quotes.
 * @throws RangeError for an element or attribute that no sheet has
 */
export function nodesOf(text: string, document: Document): DocumentFragment {
  const root = document.createDocumentFragment();
  const open: Node[] = [root];
  const pieces = /<(\/?)([A-Za-z][A-Za-z0-9]*)((?:\s+[\w-]+="[^"]*")*)\s*(\/?)>|[^<]+/g;
  let inSvg = 0;
  for (const [piece, closing, name, given, empty] of text.matchAll(pieces)) {
    const parent = open[open.length - 1];
    if (!name) {
      parent.appendChild(document.createTextNode(plain(piece)));
      continue;
    }
    if (!elements.has(name)) throw new RangeError(`A sheet has no element ${name}.`);
    if (closing) {
      open.pop();
      if (name === 'svg') inSvg -= 1;
      continue;
    }
    if (name === 'svg') inSvg += 1;
    const element = inSvg > 0 ? document.createElementNS(svgSpace, name) : document.createElement(name);
    for (const [, key, value] of given.matchAll(/([\w-]+)="([^"]*)"/g)) {
      if (key === 'xmlns') continue;
      if (!attributes.has(key)) throw new RangeError(`A sheet has no attribute ${key}.`);
      element.setAttribute(key, plain(value));
    }
    parent.appendChild(element);
    if (!empty && name !== 'br') open.push(element);
  }
  return root;
}
