/** `npm run test:wide`: the suites of tests/wide, which take longer than a commit should wait. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { script } from './lib/project.mjs';
import { provideScipyPython } from './lib/python.mjs';
import { close } from './lib/tally.mjs';
import { vitestSuite } from './lib/vitest-suite.mjs';
import { setup } from './setup.mjs';

await script(async () => {
  await setup();
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-wide-'));
  try {
    const filters = process.argv.slice(2);
    const suite = await vitestSuite(
      'wide',
      'vitest.wide.config.ts',
      join(folder, 'wide.json'),
      filters,
      provideScipyPython(),
    );
    return close('npm run test:wide', [suite]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
