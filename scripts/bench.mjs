/** `npm run bench -- NAME [arguments]`: builds, then runs tests/bench/NAME.mjs, which prints its figures. */
import { existsSync, readdirSync } from 'node:fs';
import { buildProject } from './build.mjs';
import { Complaint, root, script } from './lib/project.mjs';

await script(async () => {
  const [name, ...args] = process.argv.slice(2);
  const names = readdirSync(`${root}tests/bench`)
    .filter((file) => file.endsWith('.mjs'))
    .map((file) => file.replace(/\.mjs$/, ''));
  if (!name || !existsSync(`${root}tests/bench/${name}.mjs`)) {
    throw new Complaint(`Name a benchmark: npm run bench -- ${names.join(' | ')}`);
  }
  await buildProject();
  const { run } = await import(`${root}tests/bench/${name}.mjs`);
  await run(args);
});
