import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { root } from './project.mjs';

/**
 * One hash over the names and contents of files and folders, in a fixed order.
 * @param {string[]} paths relative to the project
 */
export function treeHash(paths) {
  const hash = createHash('sha256');
  for (const path of paths.flatMap(filesBelow).sort()) {
    const content = readFileSync(root + path);
    hash.update(`${path}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

/**
 * @param {string} path a file or folder relative to the project
 * @returns {string[]} the files below it
 */
function filesBelow(path) {
  if (!statSync(root + path).isDirectory()) return [path];
  return readdirSync(root + path, { withFileTypes: true }).flatMap((entry) =>
    filesBelow(`${path}/${entry.name}`),
  );
}
