/**
 * `npm run release`: the next version from the entries in .changeset, everything tested, the package packed and looked at.
 * Publishes nothing: the last line is the command that does. `--check` says what would be released, and changes nothing.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { Complaint, root, run, runTool, script } from './lib/project.mjs';

const entries = () =>
  readdirSync(`${root}.changeset`).filter((name) => name.endsWith('.md') && name !== 'README.md');
const version = () => JSON.parse(readFileSync(`${root}package.json`, 'utf8')).version;

/**
 * @param {string} what
 * @param {Promise<number>} code
 */
async function must(what, code) {
  if ((await code) !== 0) throw new Complaint(`No release: ${what}.`);
}

await script(async () => {
  const waiting = entries();
  if (waiting.length === 0)
    throw new Complaint('No release: .changeset holds no entry that says what has changed.');
  if (process.argv.includes('--check')) {
    console.log(`${version()} and ${waiting.length} ${waiting.length === 1 ? 'entry' : 'entries'}:`);
    for (const name of waiting)
      console.log(
        readFileSync(`${root}.changeset/${name}`, 'utf8')
          .replace(/^---[\s\S]*?---\s*/, '')
          .trim(),
      );
    return;
  }
  const changed = execFileSync('git', ['status', '--porcelain'], { cwd: root, encoding: 'utf8' });
  if (changed !== '') throw new Complaint('No release: the checkout holds changes that are not committed.');
  await must('the version could not be raised', runTool('@changesets/cli/bin.js', ['version']));
  await must('npm test failed', run('npm', ['test']));
  await must('npm run test:wide failed', run('npm', ['run', 'test:wide']));
  await must('the package could not be made', run('npm', ['pack']));
  console.log(
    `ringdown-${version()}.tgz is ready. Commit package.json, CHANGELOG.md and .changeset, then: npm publish ringdown-${version()}.tgz --access public`,
  );
});
