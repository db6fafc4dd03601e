import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { strict } from '../../scripts/lint/strict.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: true,
  overrideConfig: [{ files: ['**/*.ts'], languageOptions: { parser: tseslint.parser } }, ...strict],
});

async function complaints(text: string): Promise<number> {
  const [result] = await eslint.lintText(text, { filePath: `${root}src/elements/virtual.ts` });
  return result.messages.filter(({ ruleId }) => ruleId === 'strict/pages').length;
}

describe('text from outside', () => {
  it.each([
    'a.innerHTML = b;',
    "a['innerHTML'] = b;",
    'a.outerHTML = b;',
    'frame.srcdoc = b;',
    "a.insertAdjacentHTML('beforeend', b);",
    'range.createContextualFragment(b);',
    "new DOMParser().parseFromString(b, 'text/html');",
    'document.write(b);',
    'eval(b);',
    "new Function('return 1');",
    "setTimeout('x()', 1);",
    "a.setAttribute('style', b);",
    "a.setAttribute('onclick', b);",
    "import { unsafeHTML } from 'lit/directives/unsafe-html.js';",
    "import { unsafeSVG } from 'lit/directives/unsafe-svg.js';",
    "import { styleMap } from 'lit/directives/style-map.js';",
    "import { html } from 'lit/static-html.js';",
    'html`<p style="color: red">a</p>`;',
    'html`<p style="${b}">a</p>`;',
    'html`<p onclick="x()">a</p>`;',
    'html`<a href="javascript:x()">a</a>`;',
  ])('becomes neither markup nor code nor style: %s', async (text) => {
    expect(await complaints(text)).toBeGreaterThan(0);
  });

  it.each([
    'a.textContent = b;',
    'html`<p style=${styleValues({ a: 1 })} @click=${() => 1}>${b}</p>`;',
    "a.setAttribute('aria-label', b);",
    "setTimeout(() => b(), 1); a.style.setProperty('--x', b);",
  ])('may stand as text: %s', async (text) => {
    expect(await complaints(text)).toBe(0);
  });

  it.each([
    'src/elements/room/virtual.ts',
    'src/sheet/virtual.ts',
    'src/draw/virtual.ts',
    'src/cli/virtual.ts',
  ])('is held so by npm run lint in %s', async (file) => {
    const config = (await new ESLint({ cwd: root }).calculateConfigForFile(root + file)) as {
      rules: Record<string, [number]>;
    };
    expect(config.rules['strict/pages'][0]).toBe(2);
  });

  it('is not parsed by any package that is bundled: the sources of what ships name no such maker of code', () => {
    // The one of each package that is imported; lit itself parses its templates, which are ours, and nothing else.
    for (const file of [
      'jsfive/dist/esm/index.mjs',
      'fft.js/lib/fft.js',
      'delaunator/index.js',
      '@kninnug/constrainautor/lib/Constrainautor.mjs',
      'fflate/esm/browser.js',
    ]) {
      const text = readFileSync(`${root}node_modules/${file}`, 'utf8');
      expect(text, file).not.toMatch(/\beval\s*\(|new Function\s*\(|\.innerHTML/);
    }
  });
});
