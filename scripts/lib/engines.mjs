/** The browsers beside Chromium in which the elements are tried: Firefox and WebKit as Debian has them, and a screen for both. */
import { existsSync, readdirSync } from 'node:fs';
import { findProgram, installDebianPackages } from './debian.mjs';
import { Complaint } from './project.mjs';

/** WebKitGTK's own small browser; its folder is named by the machine's architecture and the library's version. */
function findMiniBrowser() {
  for (const base of ['/usr/lib', '/usr/libexec'].filter((folder) => existsSync(folder)))
    for (const inner of ['', ...readdirSync(base)])
      for (const version of ['6.0', '4.1', '4.0']) {
        const folder = version === '6.0' ? 'webkitgtk-6.0' : `webkit2gtk-${version}`;
        const path = [base, inner, folder, 'MiniBrowser'].filter(Boolean).join('/');
        if (existsSync(path)) return path;
      }
  return undefined;
}

const find = {
  firefox() {
    const named = process.env.RINGDOWN_FIREFOX;
    if (named && !existsSync(named))
      throw new Complaint(`RINGDOWN_FIREFOX names ${named}, but there is no such file.`);
    const browser = named ?? findProgram(['firefox-esr', 'firefox']);
    const screen = findProgram(['Xvfb']);
    return browser && screen ? { browser, driver: browser, screen } : undefined;
  },
  webkit() {
    const driver = findProgram(['WebKitWebDriver']);
    const browser = findMiniBrowser();
    const screen = findProgram(['Xvfb']);
    return browser && driver && screen ? { browser, driver, screen } : undefined;
  },
};

const packages = {
  firefox: ['firefox-esr', 'xvfb', 'fonts-dejavu-core'],
  webkit: ['webkit2gtk-driver', 'xvfb', 'fonts-dejavu-core'],
};

const complaints = {
  firefox:
    'The tests in three engines need Firefox and Xvfb and did not find both: install firefox-esr and xvfb, or name a Firefox by the environment variable RINGDOWN_FIREFOX=/path/to/firefox.',
  webkit:
    'The tests in three engines need WebKitWebDriver with its MiniBrowser and Xvfb and did not find them: install webkit2gtk-driver and xvfb.',
};

/**
 * @param {'firefox' | 'webkit'} engine
 * @returns {{ browser: string, driver: string, screen: string }} paths; installs Debian's where one is missing
 */
export function requireEngine(engine) {
  const found = find[engine]() ?? (installDebianPackages(packages[engine]) ? find[engine]() : undefined);
  if (!found) throw new Complaint(complaints[engine]);
  return found;
}
