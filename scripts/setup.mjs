/** Installs what package-lock.json says where node_modules is missing or differs. Plain Node: runs on a fresh clone. */
import { existsSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { Complaint, root, run, script } from './lib/project.mjs';

/** Whether the installed packages are those of the lock; optional ones of other platforms may be missing. */
function isInstalled() {
  const installedLock = `${root}node_modules/.package-lock.json`;
  if (!existsSync(installedLock)) return false;
  const wanted = JSON.parse(readFileSync(`${root}package-lock.json`, 'utf8')).packages;
  const present = JSON.parse(readFileSync(installedLock, 'utf8')).packages;
  return Object.keys(wanted).every(
    (path) =>
      path === '' ||
      wanted[path].version === present[path]?.version ||
      (wanted[path].optional && !present[path]),
  );
}

export async function setup() {
  if (isInstalled()) return;
  console.log('Installing the packages of package-lock.json (once, about a minute) …');
  const code = await run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  if (code !== 0) throw new Complaint('The packages could not be installed; npm said why above.');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await script(setup);
