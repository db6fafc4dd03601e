/**
 * What no text from outside may reach, and what a strict page forbids: markup parsed from text, code made from text, style
 * and handlers as attributes. A rule of our own, so that no other configuration of `no-restricted-syntax` can undo it.
 */

const parsers = ['innerHTML', 'outerHTML', 'srcdoc'];
const calls = [
  ...['insertAdjacentHTML', 'createContextualFragment', 'parseFromString', 'setHTMLUnsafe', 'setHTML'],
  ...['parseHTMLUnsafe', 'execCommand'],
];
const packages = /^lit(-html)?\/directives\/(unsafe-|style-map)|^lit(-html)?\/static/;
const makers = ['eval', 'Function'];

/** @type {import('eslint').Rule.RuleModule} */
const strictRule = {
  meta: {
    type: 'problem',
    schema: [],
    docs: { description: 'no text becomes markup, code or an inline style' },
  },
  create(context) {
    /** @param {import('estree').Node} node @param {string} message */
    const report = (node, message) => context.report({ node, message });
    /** @param {any} callee */
    const nameOf = (callee) =>
      callee.type === 'Identifier' ? callee.name : (callee.property?.name ?? callee.property?.value);
    return {
      ImportDeclaration(node) {
        if (packages.test(String(node.source.value)))
          report(node, `'${String(node.source.value)}' parses text as markup or writes style attributes.`);
      },
      MemberExpression(node) {
        const name = nameOf(node);
        if (parsers.includes(name)) report(node, `${name} parses text as markup.`);
      },
      CallExpression(node) {
        const name = nameOf(node.callee);
        if (calls.includes(name)) report(node, `${name} parses text as markup.`);
        if (node.callee.type === 'Identifier' && makers.includes(name))
          report(node, `${name} makes code of text.`);
        const [first] = node.arguments;
        const literal = first?.type === 'Literal' ? first.value : undefined;
        if (/^set(Timeout|Interval)$/.test(name) && typeof literal === 'string')
          report(node, `${name} makes code of text.`);
        if (
          /^setAttribute(NS)?$/.test(name) &&
          node.arguments.some(
            (one) => one.type === 'Literal' && /^(style|srcdoc|on\w+)$/i.test(String(one.value)),
          )
        )
          report(
            node,
            'A style or handler is no attribute on a strict page: use styleValues of shared/, or a listener.',
          );
        if (name === 'write' && nameOf(/** @type {any} */ (node.callee).object ?? {}) === 'document')
          report(node, 'document.write parses text as markup.');
      },
      NewExpression(node) {
        if (nameOf(node.callee) === 'Function') report(node, 'Function makes code of text.');
      },
      TemplateElement(node) {
        // Of a template with a value: `style=${…}` ends here, and the value is a directive's.
        const text = node.value.raw;
        if (/\sstyle=["'][^"']/.test(text) || /\sstyle="$/.test(text))
          report(node, 'A style attribute is forbidden by strict pages: use styleValues of shared/.');
        if (/<\w[^>]*\son\w+=/.test(text))
          report(node, 'A handler is no attribute on a strict page: use @event.');
        if (/<script|javascript:/i.test(text)) report(node, 'No script in a template.');
      },
    };
  },
};

/** @type {import('eslint').Linter.Config[]} */
export const strict = [
  {
    name: 'house/strict',
    files: ['src/**/*.ts'],
    plugins: { strict: { rules: { pages: strictRule } } },
    rules: { 'strict/pages': 'error' },
  },
];
