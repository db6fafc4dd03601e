/**
 * `npm run audit`: known weaknesses of what ships, by the registry. Where the registry cannot be asked it says so and fails
 * nothing; where it answers, anything found is a failure.
 */
import { spawnSync } from 'node:child_process';
import { root, script } from './lib/project.mjs';

/**
 * @param {string} output of `npm audit --json`
 * @returns {{ asked: boolean, total: number, names: string[] }}
 */
export function readAudit(output) {
  try {
    const { metadata, vulnerabilities } = JSON.parse(output);
    const total = metadata?.vulnerabilities?.total;
    if (typeof total === 'number') return { asked: true, total, names: Object.keys(vulnerabilities ?? {}) };
  } catch {
    // No answer is no JSON, or JSON of an error.
  }
  return { asked: false, total: 0, names: [] };
}

if (process.argv[1]?.endsWith('audit.mjs'))
  await script(async () => {
    const call = ['audit', '--omit=dev', '--json'];
    const { stdout } = spawnSync('npm', call, { cwd: root, encoding: 'utf8', timeout: 120_000 });
    const { asked, total, names } = readAudit(stdout ?? '');
    if (!asked) console.log('audit: not checked, the registry gives no answer here');
    else
      console.log(
        `audit: ${total} known weaknesses in what ships${total > 0 ? `: ${names.join(', ')}` : ''}`,
      );
    return total === 0 ? 0 : 1;
  });
