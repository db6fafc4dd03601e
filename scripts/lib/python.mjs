import { execFileSync } from 'node:child_process';
import { findProgram, installDebianPackages } from './debian.mjs';

/** @returns {string | undefined} a Python that can import SciPy: RINGDOWN_PYTHON, else the system's */
export function findScipyPython() {
  const python = process.env.RINGDOWN_PYTHON ?? findProgram(['/usr/bin/python3', 'python3']);
  if (!python) return undefined;
  try {
    execFileSync(python, ['-c', 'import scipy.signal, scipy.fft'], { stdio: 'ignore' });
    return python;
  } catch {
    return undefined;
  }
}

/**
 * SciPy is an independent reference for numbers: on CI it must be there, elsewhere its comparisons are skipped and said so.
 * @returns {string | undefined}
 */
export function provideScipyPython() {
  const found = findScipyPython();
  if (found || !process.env.CI) return found;
  return installDebianPackages(['python3', 'python3-scipy']) ? findScipyPython() : undefined;
}
