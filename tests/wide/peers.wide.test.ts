import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The lower ends of the ranges of package.json; `npm test` has the upper ones installed. */
const lowest = { lit: '3.3.0', three: '0.180.0' };

it('the elements pass their tests with the oldest lit and the oldest three that the package allows', () => {
  const { peerDependencies } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as {
    peerDependencies: Record<string, string>;
  };
  expect(peerDependencies.lit).toBe('^3.3');
  expect(peerDependencies.three).toBe('>=0.180 <0.200');
  mkdirSync(`${root}.cache`, { recursive: true });
  const folder = mkdtempSync(`${root}.cache/peers-`);
  try {
    const files = [
      'src',
      'tests',
      'scripts',
      'dist',
      'package.json',
      'tsconfig.json',
      'web-test-runner.config.mjs',
    ];
    for (const name of files) cpSync(`${root}${name}`, join(folder, name), { recursive: true });
    // Files are linked, not copied: a package is replaced as a folder, so that the project's own stays whole.
    execFileSync('cp', ['-al', `${root}node_modules`, join(folder, 'node_modules')]);
    const put = (name: string, version: string): void => {
      const place = join(folder, 'node_modules', name);
      const options = { cwd: folder, encoding: 'utf8' } as const;
      const packed = execFileSync('npm', ['pack', `${name}@${version}`, '--silent'], options).trim();
      rmSync(place, { recursive: true, force: true });
      mkdirSync(place, { recursive: true });
      execFileSync('tar', ['xzf', packed, '--strip-components=1', '-C', place], options);
      const about = JSON.parse(readFileSync(join(place, 'package.json'), 'utf8')) as {
        version: string;
        dependencies?: Record<string, string>;
      };
      expect(about.version).toBe(version);
      // The parts of lit are packages of their own; each at the oldest that this one allows.
      for (const [part, range] of Object.entries(about.dependencies ?? {}))
        if (/^@?lit/.test(part) && !part.includes('ssr')) put(part, range.replace(/^\^/, ''));
    };
    for (const [name, version] of Object.entries(lowest)) put(name, version);
    const text = execFileSync(
      process.execPath,
      [
        '--input-type=module',
        '-e',
        "const { browserSuite } = await import('./scripts/lib/browser-suite.mjs'); console.log('SUITE ' + JSON.stringify(await browserSuite('elements', process.cwd() + '/summary.json', ['tests/elements', 'tests/draw'])));",
      ],
      { cwd: folder, encoding: 'utf8', maxBuffer: 1e8 },
    );
    const suite = JSON.parse(/^SUITE (.*)$/m.exec(text)![1]) as { passed: number; failed: number };
    expect(suite.failed, text.slice(-4000)).toBe(0);
    expect(suite.passed).toBeGreaterThan(100);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
