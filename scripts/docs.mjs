/**
 * `npm run docs` serves the documentation, `npm run docs:build` builds it into docs/.vitepress/dist: the pages of docs/, one
 * page per element from custom-elements.json, and the functions of the engine from their comments.
 */
import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { buildProject } from './build.mjs';
import { elementPages } from './lib/element-pages.mjs';
import { Complaint, root, run, runTool, script } from './lib/project.mjs';

const recordings = ['live-room-desk.wav', 'live-room-sofa.wav', 'talk-studio.wav'];

/** @param {string} what @param {Promise<number>} code */
async function must(what, code) {
  if ((await code) !== 0) throw new Complaint(`The documentation stopped: ${what}.`);
}

await script(async () => {
  await buildProject();
  await must('the manifest could not be made', run('npm', ['run', '--silent', 'manifest']));
  await must('the recordings could not be made', run(process.execPath, ['scripts/make-demo.mjs']));
  for (const folder of ['elements', 'engine', 'public'])
    rmSync(`${root}docs/${folder}`, { recursive: true, force: true });
  elementPages(`${root}docs/elements`);
  await must(
    'the engine could not be documented',
    runTool('typedoc/bin/typedoc', ['--options', 'docs/typedoc.json']),
  );
  mkdirSync(`${root}docs/public/recordings`, { recursive: true });
  for (const name of recordings)
    cpSync(`${root}demo/recordings/${name}`, `${root}docs/public/recordings/${name}`);
  const serve = process.argv.includes('--serve');
  return runTool('vitepress/bin/vitepress.js', [serve ? 'dev' : 'build', 'docs']);
});
