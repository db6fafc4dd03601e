/**
 * `node scripts/make-react.mjs`: typed React wrappers, dist/react.js and dist/react.d.ts, from custom-elements.json. React
 * and @lit/react are the page's own; nobody else needs them.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { root, script } from './lib/project.mjs';

/** @typedef {{ name: string, type?: { text: string } }} Event */
/** @typedef {{ name: string, tagName?: string, customElement?: boolean, summary?: string, events?: Event[] }} Declaration */

/** @param {string} name of an event, as `ringdown-ready` */
const propertyOf = (name) => `on${name.replace(/(^|-)(\w)/g, (_, __, letter) => letter.toUpperCase())}`;

await script(async () => {
  const manifest = JSON.parse(readFileSync(`${root}custom-elements.json`, 'utf8'));
  /** @type {Declaration[]} */
  const elements = manifest.modules
    .flatMap((/** @type {{ declarations?: Declaration[] }} */ { declarations = [] }) => declarations)
    .filter((/** @type {Declaration} */ { tagName }) => tagName);
  const short = (/** @type {string} */ name) => name.replace(/^Ringdown/, '');
  const code = elements.map(({ name, tagName, events = [] }) => {
    const map = events.map((event) => `    ${propertyOf(event.name)}: '${event.name}',`).join('\n');
    return `export const ${short(name)} = createComponent({\n  react: React,\n  tagName: '${tagName}',\n  elementClass: ${name},\n  events: {\n${map}\n  },\n});`;
  });
  const types = elements.map(({ name, summary = '', events = [] }) => {
    const map = events
      .map((event) => `  ${propertyOf(event.name)}: EventName<${event.type?.text ?? 'Event'}>;`)
      .join('\n');
    return `/** ${summary} */\nexport declare const ${short(name)}: ReactWebComponent<${name}, {\n${map}\n}>;`;
  });
  const names = elements.map(({ name }) => name);
  const details = [
    ...new Set(
      elements.flatMap(({ events = [] }) =>
        events.flatMap(({ type }) => type?.text.match(/CustomEvent<(\w+)>/)?.[1] ?? []),
      ),
    ),
  ];
  const head = `import './define/index.js';\nimport { createComponent } from '@lit/react';\nimport React from 'react';\nimport { ${names.join(', ')} } from './index.js';\n`;
  const typeHead = `import type { EventName, ReactWebComponent } from '@lit/react';\nimport type { ${[...names, ...details].join(', ')} } from './index.js';\n`;
  writeFileSync(`${root}dist/react.js`, `${head}\n${code.join('\n\n')}\n`);
  writeFileSync(`${root}dist/react.d.ts`, `${typeHead}\n${types.join('\n\n')}\n`);
  console.log(`Wrote dist/react.js with ${elements.length} components.`);
});
