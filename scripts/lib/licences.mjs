/** The licences of what is bundled: their texts in one file, a list at the end of each file that stands alone. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { Complaint, root } from './project.mjs';

/** Licences that code of others may have here: all let it be used, changed and passed on with their notice. */
export const allowedLicences = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Zlib',
  'Unlicense',
  'Apache-2.0',
];
/** By name, where package.json only points at a file that was read. */
export const readLicences = { jsfive: 'public domain, after pyfive (BSD-3-Clause)' };

/** @typedef {{ name: string, version: string, licence: string, text: string }} Licence */

/**
 * The packages whose code is in bundles.
 * @param {{ inputs: Record<string, unknown> }[]} metafiles
 * @returns {string[]}
 */
export function packagesIn(metafiles) {
  const names = metafiles.flatMap(({ inputs }) =>
    Object.keys(inputs).flatMap(
      (path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules)/.exec(path)?.[1] ?? [],
    ),
  );
  // What jsfive has taken in whole.
  if (names.includes('jsfive')) names.push('pako');
  return [...new Set(names)].sort();
}

/**
 * @param {string} name
 * @returns {Licence}
 */
export function licenceOf(name) {
  const folder = `${root}node_modules/${name}`;
  const about = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find((one) => /^licen[cs]e/i.test(one));
  let text = file ? readFileSync(`${folder}/${file}`, 'utf8') : '';
  // Some have it at the end of their first page.
  if (!text && existsSync(`${folder}/README.md`))
    text = readFileSync(`${folder}/README.md`, 'utf8').split(/^#+ *LICEN[CS]E *$/im)[1] ?? '';
  if (!text.trim()) throw new Complaint(`The licence of ${name} was not found in its package.`);
  const licence = /** @type {Record<string, string>} */ (readLicences)[name] ?? String(about.license);
  return { name, version: about.version, licence, text: text.trim() };
}

/** @param {string} licence an SPDX expression of `AND` and `OR` at most */
export const isAllowed = (licence) =>
  Object.values(readLicences).includes(licence) ||
  licence
    .replace(/[()]/g, '')
    .split(/ AND /)
    .every((part) => part.split(/ OR /).some((one) => allowedLicences.includes(one.trim())));

/** @param {Licence[]} licences */
export const licencesText = (licences) =>
  [
    'The files of this folder that stand alone hold code of these packages, under these licences.',
    ...licences.map(
      ({ name, version, licence, text }) => `${'-'.repeat(78)}\n${name} ${version} (${licence})\n\n${text}`,
    ),
  ].join('\n\n') + '\n';

/** For the end of a file: names, versions, licences and who holds the rights. @param {Licence[]} licences */
export const noticesComment = (licences) =>
  `/*! Holds code of others; the texts of their licences are in LICENSES.txt beside this file.\n${licences
    .map(({ name, version, licence, text }) => {
      const rights = text.split('\n').find((line) => /^\W*copyright\b/i.test(line)) ?? '';
      return ` * ${name} ${version} (${licence}) ${rights.replace(/\*\//g, '').trim()}`.trimEnd();
    })
    .join('\n')}\n */\n`;
