import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

interface Item {
  readonly name?: string;
  readonly description?: string;
  readonly summary?: string;
  readonly type?: { readonly text: string };
}
interface Declaration extends Item {
  readonly tagName?: string;
  readonly attributes?: readonly Item[];
  readonly members?: readonly Item[];
  readonly events?: readonly Item[];
  readonly slots?: readonly Item[];
  readonly cssParts?: readonly Item[];
  readonly cssProperties?: readonly Item[];
  readonly cssStates?: readonly Item[];
}
interface Manifest {
  readonly modules: readonly { readonly path: string; readonly declarations?: readonly Declaration[] }[];
}

const sourcesOf = (folder: string): string =>
  readdirSync(join(root, 'src/elements', folder))
    .map((file) => readFileSync(join(root, 'src/elements', folder, file), 'utf8'))
    .join('\n');
const names = (items: readonly Item[] = []): string[] => items.map(({ name }) => name ?? '');

/** The manifest is the documentation: what it leaves out, nobody knows of. */
describe('the manifest of the elements', () => {
  let elements: (Declaration & { readonly folder: string })[] = [];

  beforeAll(async () => {
    const tool = '@custom-elements-manifest/analyzer/cli.js';
    const { cli } = (await import(tool)) as { cli: (options: object) => Promise<Manifest> };
    const manifest = await cli({
      argv: ['analyze', '--config', 'custom-elements-manifest.config.mjs', '--quiet'],
      cwd: root,
      noWrite: true,
    });
    elements = manifest.modules.flatMap(({ path, declarations = [] }) =>
      declarations
        .filter(({ tagName }) => tagName)
        .map((declaration) => ({ ...declaration, folder: path.split('/')[2] })),
    );
  }, 60_000);

  it('knows every element that is registered', () => {
    const entries = readdirSync(join(root, 'src/define'))
      .filter(
        (file) =>
          !['index.ts', 'define-element.ts', 'pressure-map-flat.ts', 'waterfall-flat.ts'].includes(file),
      )
      .map((file) => `ringdown-${file.replace(/\.ts$/, '')}`);
    expect(elements.map(({ tagName }) => tagName).sort()).toEqual(entries.sort());
  });

  it('says of each element, attribute, property, method, event, slot, part, property of CSS and state what it is', () => {
    const silent = elements.flatMap((element) => [
      ...(element.summary ? [] : [`${element.tagName} has no summary`]),
      ...(
        ['attributes', 'members', 'events', 'slots', 'cssParts', 'cssProperties', 'cssStates'] as const
      ).flatMap((kind) =>
        (element[kind] ?? [])
          .filter(({ description, summary }) => !description && !summary)
          .map(({ name }) => `${element.tagName}, ${kind}: ${name}`),
      ),
    ]);
    expect(silent).toEqual([]);
  });

  it('gives each event the type of its detail', () => {
    const untyped = elements.flatMap(({ tagName, events = [] }) =>
      events
        .filter(({ type }) => !/^CustomEvent<\w+Detail>$/.test(type?.text ?? ''))
        .map(({ name }) => `${tagName}: ${name}`),
    );
    expect(untyped).toEqual([]);
  });

  it('names every event that an element fires', () => {
    const unnamed = elements.flatMap(({ tagName, folder, events }) =>
      [...sourcesOf(folder).matchAll(/emit\(\s*this(?:\.\w+)?,\s*'([\w-]+)'/g)]
        .filter(([, name]) => !names(events).includes(name))
        .map(([, name]) => `${tagName}: ${name}`),
    );
    expect(unnamed).toEqual([]);
  });

  it('names every part and every custom property of an element', () => {
    const unnamed = elements.flatMap(({ tagName, folder, cssParts, cssProperties }) => {
      const text = sourcesOf(folder);
      const parts = [...text.matchAll(/\bpart="([^"$]+)"/g)].flatMap(([, list]) => list.split(/\s+/));
      const properties = [...text.matchAll(/var\(\s*(--ringdown-[\w-]+)/g)].map(([, name]) => name);
      return [
        ...parts.filter((name) => !names(cssParts).includes(name)),
        ...properties.filter((name) => !names(cssProperties).includes(name)),
      ].map((name) => `${tagName}: ${name}`);
    });
    expect([...new Set(unnamed)]).toEqual([]);
  });
});
