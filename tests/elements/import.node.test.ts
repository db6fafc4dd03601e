import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const source = fileURLToPath(new URL('../../src/', import.meta.url));
/** A worker talks to its own global scope, and the command reads the words it was called with, at once. */
const programs = new Set(['study/worker.ts', 'study/sofa-worker.ts', 'cli/main.ts']);
const modules = readdirSync(source, { recursive: true })
  .map((name) => String(name).replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts') && !programs.has(name));

describe('in Node, without a page', () => {
  it('there are modules to import', () => {
    expect(modules.length).toBeGreaterThan(60);
    expect(modules).toContain('elements/waterfall/waterfall.ts');
  });

  it.each(modules)('%s can be imported', async (name) => {
    await expect(import(`${source}${name}`)).resolves.toBeTypeOf('object');
  });

  it('an element can be made on a server', async () => {
    const { RingdownWaterfall } = await import('../../src/elements/waterfall/waterfall.js');
    expect(RingdownWaterfall.observedAttributes).toContain('src');
  });
});
