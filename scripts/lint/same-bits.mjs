/**
 * ECMAScript leaves the last bits of these functions, and of `**`, to whoever makes the engine. What computes results takes
 * them from `src/signal/maths.ts`, which gives the same bits everywhere.
 */

const functions = [
  ...[
    'acos',
    'acosh',
    'asin',
    'asinh',
    'atan',
    'atan2',
    'atanh',
    'cbrt',
    'cos',
    'cosh',
    'exp',
    'expm1',
    'hypot',
  ],
  ...['log', 'log10', 'log1p', 'log2', 'pow', 'sin', 'sinh', 'tan', 'tanh'],
];

/** A whole power of two is exact in every engine. @param {any} node */
const isExact = ({ left, right }) => left.value === 2 && Number.isInteger(right.value);

/** @type {import('eslint').Rule.RuleModule} */
const rule = {
  meta: { type: 'problem', schema: [], docs: { description: 'results have the same bits in every engine' } },
  create: (context) => ({
    MemberExpression(node) {
      const { object, property } = node;
      const name = property.type === 'Identifier' ? property.name : '';
      if (object.type === 'Identifier' && object.name === 'Math' && functions.includes(name))
        context.report({
          node,
          message: `Math.${name} differs from engine to engine: take it from maths.ts.`,
        });
    },
    BinaryExpression(node) {
      if (node.operator === '**' && !isExact(node))
        context.report({ node, message: '** differs from engine to engine: take a power from maths.ts.' });
    },
    AssignmentExpression(node) {
      if (node.operator === '**=')
        context.report({ node, message: '**= differs from engine to engine: take a power from maths.ts.' });
    },
  }),
};

const folders = ['signal', 'decay', 'resonance', 'room', 'diagnosis', 'seats', 'study'];

/** @type {import('eslint').Linter.Config[]} */
export const sameBits = [
  {
    name: 'the same bits in every engine',
    files: folders.map((folder) => `src/${folder}/**/*.ts`),
    ignores: ['src/signal/maths.ts', 'src/signal/maths/**', 'src/signal/vendor/**'],
    plugins: { 'same-bits': { rules: { maths: rule } } },
    rules: { 'same-bits/maths': 'error' },
  },
];
