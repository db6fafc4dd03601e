import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Beyond this a mirror does not answer, ms. */
const longestMs = 300_000;

/**
 * Installs Debian packages where that is possible without asking: as root, on a Debian system.
 * @param {string[]} packages
 * @returns {boolean} whether it was done
 */
export function installDebianPackages(packages) {
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0) return false;
  console.log(`Installing ${packages.join(', ')} from Debian …`);
  const options = {
    stdio: /** @type {const} */ ('inherit'),
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    timeout: longestMs,
  };
  try {
    execFileSync('apt-get', ['update', '-qq'], options);
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], options);
    return true;
  } catch {
    return false;
  }
}

/**
 * The first of several programs that exists: absolute paths as they are, names looked up on PATH.
 * @param {string[]} programs
 * @returns {string | undefined} absolute path
 */
export function findProgram(programs) {
  const folders = (process.env.PATH ?? '').split(':').filter(Boolean);
  return programs
    .flatMap((program) =>
      program.startsWith('/') ? [program] : folders.map((folder) => `${folder}/${program}`),
    )
    .find((path) => existsSync(path));
}
