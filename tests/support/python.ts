import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe } from 'vitest';

/**
 * SciPy as an independent reference. `npm test` names a Python that has it by RINGDOWN_PYTHON; without one these tests
 * are skipped and counted so, and on CI they fail.
 */
const root = fileURLToPath(new URL('../../', import.meta.url));
const python = process.env.RINGDOWN_PYTHON ?? '/usr/bin/python3';

function hasScipy(): boolean {
  if (!existsSync(python)) return false;
  try {
    execFileSync(python, ['-c', 'import scipy.signal, scipy.fft'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

const ready = hasScipy();
if (!ready && process.env.CI) throw new Error(`The comparisons with SciPy need it: ${python} has none.`);

export const describeWithScipy = describe.skipIf(!ready);

/**
 * Runs a script of tests/reference and parses the JSON it prints.
 * @param script file name in tests/reference
 */
export function runPython(script: string, ...args: string[]): unknown {
  const text = execFileSync(python, [`${root}tests/reference/${script}`, ...args], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return JSON.parse(text);
}
