/** Makes a finished file smaller than esbuild alone does, with the map of its sources. */
import { readFile, writeFile } from 'node:fs/promises';
import remapping from '@jridgewell/remapping';
import { minify } from 'vite';
import { Complaint } from './project.mjs';

/**
 * @param {string} text of a module
 * @param {string} name for messages
 * @param {boolean} [withMap]
 */
export async function shrunkText(text, name, withMap = false) {
  const { code, map, errors } = await minify(name, text, {
    module: true,
    compress: { target: 'es2022' },
    mangle: { toplevel: true },
    sourcemap: withMap,
  });
  if (errors.length > 0)
    throw new Complaint(`The build stopped: ${name} could not be shrunk. ${errors[0].message}`);
  return { code, map };
}

/** @param {string} file whose map lies beside it, named in its last line */
export async function shrink(file) {
  const text = await readFile(file, 'utf8');
  const name = file.slice(file.lastIndexOf('/') + 1);
  const { code, map } = await shrunkText(text, name, true);
  const before = JSON.parse(await readFile(`${file}.map`, 'utf8'));
  const whole = remapping([/** @type {any} */ (map), before], () => null);
  await writeFile(`${file}.map`, `${JSON.stringify({ ...whole, file: name, sourcesContent: undefined })}\n`);
  await writeFile(file, `${code.trimEnd()}\n//# sourceMappingURL=${name}.map\n`);
}
