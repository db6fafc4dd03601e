/**
 * `node scripts/make-editor.mjs`: what editors and type checkers read, from custom-elements.json into dist/editor: custom
 * data of VS Code, web-types of the JetBrains editors, and the elements as JSX types.
 */
import { readFileSync } from 'node:fs';
import { generateJsxTypes } from '@wc-toolkit/jsx-types';
import { generateJetBrainsWebTypes } from 'custom-element-jet-brains-integration';
import { generateVsCodeCustomElementData } from 'custom-element-vs-code-integration';
import { root, script } from './lib/project.mjs';

await script(async () => {
  const manifest = () => JSON.parse(readFileSync(`${root}custom-elements.json`, 'utf8'));
  const outdir = `${root}dist/editor`;
  const shared = { outdir, hideLogs: true };
  generateVsCodeCustomElementData(manifest(), {
    ...shared,
    htmlFileName: 'vscode-html.json',
    cssFileName: 'vscode-css.json',
  });
  generateJetBrainsWebTypes(manifest(), {
    ...shared,
    webTypesFileName: 'web-types.json',
    packageJson: false,
    modulePathTemplate: (_, path) => `../${path.replace(/^dist\//, '')}`,
  });
  generateJsxTypes(manifest(), {
    outdir,
    fileName: 'jsx.d.ts',
    globalTypePath: '../index.js',
    stronglyTypedEvents: true,
    allowUnknownProps: false,
  });
  console.log('Wrote dist/editor: VS Code, JetBrains, JSX.');
});
