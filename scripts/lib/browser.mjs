import { existsSync } from 'node:fs';
import { findProgram, installDebianPackages } from './debian.mjs';
import { Complaint } from './project.mjs';

const names = ['/usr/bin/chromium', 'chromium', 'chromium-browser'];

/**
 * WebGL in software, so that a machine without a graphics card draws the same surface; no sandbox, because the tests
 * also run as root in containers, where Chromium's sandbox cannot start. Only pages of this project are opened.
 */
export const browserArguments = ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];

/** @returns {string | undefined} the Chromium named by RINGDOWN_CHROMIUM, else the system's */
export function findBrowser() {
  const named = process.env.RINGDOWN_CHROMIUM;
  if (!named) return findProgram(names);
  if (!existsSync(named)) throw new Complaint(`RINGDOWN_CHROMIUM names ${named}, but there is no such file.`);
  return named;
}

/** @returns {string} the browser's path; installs Debian's Chromium where there is none */
export function requireBrowser() {
  const found =
    findBrowser() ?? (installDebianPackages(['chromium', 'fonts-dejavu-core']) ? findBrowser() : undefined);
  if (!found) {
    throw new Complaint(
      'The tests need Chromium and found none: install it, or name one by the environment variable RINGDOWN_CHROMIUM=/path/to/chromium.',
    );
  }
  return found;
}
