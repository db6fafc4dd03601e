/** @type {import('prettier').Config} */
export default {
  printWidth: 110,
  singleQuote: true,
  overrides: [{ files: '*.md', options: { proseWrap: 'preserve' } }],
};
