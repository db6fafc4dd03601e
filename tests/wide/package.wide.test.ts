import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The package as a stranger gets it: packed, and installed in an empty folder. */
describe('the packed package', () => {
  let folder = '';
  const run = (program: string, ...args: string[]) =>
    execFileSync(program, args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'ringdown-package-'));
    execFileSync('npm', ['pack', '--pack-destination', folder, '--loglevel=error'], {
      cwd: root,
      stdio: 'ignore',
    });
    const tarball = readdirSync(folder).find((name) => name.endsWith('.tgz'));
    writeFileSync(join(folder, 'package.json'), '{"name":"page","private":true,"type":"module"}');
    run('npm', 'install', '--no-audit', '--no-fund', '--loglevel=error', `./${tarball}`);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('gives the engine to Node', () => {
    const code =
      "const e = await import('ringdown/engine'); console.log(e.boxModes(e.parseRoomSize('5x4x3'), 343, 35).length)";
    expect(run('node', '--input-type=module', '-e', code).trim()).toBe('1');
  });

  it('imports its classes and its define entries in Node without throwing', () => {
    const code = "await import('ringdown'); await import('ringdown/define'); console.log('fine')";
    expect(run('node', '--input-type=module', '-e', code).trim()).toBe('fine');
  });

  it('brings the command', () => {
    const out = JSON.parse(
      run('npx', 'ringdown', 'modes', '--room', '5x4x3', '--speed', '343', '--json'),
    ) as {
      version: number;
      room: { modes: { frequency: number }[] };
    };
    expect(out.version).toBe(1);
    expect(out.room.modes[0].frequency).toBeCloseTo(34.3, 6);
  });
});
