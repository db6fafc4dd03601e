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

/** Sees to it that the letters of pictures that are compared are those of DejaVu, also beside another browser. */
export function requireFont() {
  const file = '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf';
  if (existsSync(file) || (installDebianPackages(['fonts-dejavu-core']) && existsSync(file))) return;
  throw new Complaint('Pictures are compared in DejaVu Sans, which is not there: install fonts-dejavu-core.');
}
