import { existsSync, readdirSync } from 'node:fs';

const page = (text, link) => ({ text, link });
const folder = new URL('../elements/', import.meta.url);
const elements = existsSync(folder)
  ? readdirSync(folder)
      .filter((file) => file.endsWith('.md') && file !== 'index.md')
      .map((file) => file.replace(/\.md$/, ''))
      .sort()
  : [];
const optional = (text, name) =>
  existsSync(new URL(`../${name}.md`, import.meta.url)) ? [page(text, `/${name}`)] : [];

export default {
  title: 'ringdown',
  description: 'How the bass of a room rings down: web components, an engine and a command.',
  base: process.env.RINGDOWN_DOCS_BASE ?? '/',
  // The project's own pages, beside the ones that are generated.
  srcExclude: ['README.md'],
  vue: { template: { compilerOptions: { isCustomElement: (tag) => tag.startsWith('ringdown-') } } },
  head: [['link', { rel: 'icon', href: 'data:,' }]],
  // The usual pair of themes is too pale for some of its words.
  markdown: { theme: { light: 'github-light-high-contrast', dark: 'github-dark-high-contrast' } },
  themeConfig: {
    search: { provider: 'local' },
    outline: 'deep',
    sidebar: [
      {
        text: 'In a page',
        items: [
          page('Start', '/start'),
          page('Recipes', '/recipes'),
          page('Theming', '/theming'),
          page('Languages', '/languages'),
          page('Accessibility', '/accessibility'),
          page('Browsers', '/browsers'),
          page('The engine in Node', '/engine-in-node'),
        ],
      },
      {
        text: 'Elements',
        items: [
          page('All elements', '/elements/'),
          ...elements.map((name) => page(name.replace('ringdown-', ''), `/elements/${name}`)),
        ],
      },
      {
        text: 'What it rests on',
        items: [
          ...optional('How resonances are found', 'resonances'),
          ...optional('Reliability', 'reliability'),
          page('What it does not do', '/what-it-does-not'),
          page('What stays, and what may change', '/stability'),
        ],
      },
      { text: 'Engine', items: [page('Functions and types', '/engine/')] },
    ],
  },
};
