/** esbuild for the files of dist: what is told of its own plugins here holds for every one of them. */
import { readFile } from 'node:fs/promises';
import { build as bundle } from 'esbuild';
import { Complaint } from './project.mjs';

const given = 'module.exports = FFT;';

/** fft.js as a module: as CommonJS it would bring 0.3 kB gzipped of esbuild's helpers into every file. @type {import('esbuild').Plugin} */
const fftAsModule = {
  name: 'fft-as-module',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]fft\.js[\\/]lib[\\/]fft\.js$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      if (!text.includes(given)) throw new Complaint(`The build stopped: fft.js says nowhere “${given}”.`);
      return { contents: text.replace(given, 'export default FFT;'), loader: 'js' };
    });
  },
};

/**
 * @template {import('esbuild').BuildOptions} T
 * @param {import('esbuild').SameShape<import('esbuild').BuildOptions, T>} options
 * @returns {Promise<import('esbuild').BuildResult<T>>}
 */
export const build = (options) =>
  bundle(/** @type {typeof options} */ ({ ...options, plugins: [fftAsModule, ...(options.plugins ?? [])] }));
