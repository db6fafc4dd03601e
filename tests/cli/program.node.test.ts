import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { engineVersion } from '../../src/study/version.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'ringdown-cli-'));
const at = (name: string): string => join(folder, name);
/** As installed where the project is built; where it is not, the same sources in one file. */
let program = join(root, 'dist/cli/main.js');

beforeAll(async () => {
  if (existsSync(program)) return;
  program = at('main.mjs');
  const entryPoints = [join(root, 'src/cli/main.ts')];
  await build({ entryPoints, bundle: true, platform: 'node', format: 'esm', outfile: program });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ringdown = (...words: string[]) =>
  spawnSync(process.execPath, [program, ...words], { encoding: 'utf8', maxBuffer: 2 ** 28 });

describe('the program ringdown', () => {
  it('makes a response, and reads its grid', () => {
    const file = at('made.wav');
    const made = ringdown(
      ...['synth', '--room', '5x4x3', '--seat', '1,1,1', '--source', '4,3,1', '--out', file],
    );
    expect(made.stderr).toBe('');
    expect(made.status).toBe(0);
    const { status, stdout, stderr } = ringdown('grid', file, '--json');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    // More than a pipe holds at once: all of it arrives.
    expect(stdout.length).toBeGreaterThan(100_000);
    expect((JSON.parse(stdout) as { levels: number[][] }).levels).toHaveLength(101);
  });

  it('ends quietly when its reader has seen enough', async () => {
    const file = at('made.wav');
    const child = spawn(process.execPath, [
      program,
      'grid',
      file,
      '--csv',
      '--span',
      '20',
      '--step',
      '0.002',
    ]);
    let errors = '';
    child.stderr.on('data', (text) => (errors += String(text)));
    child.stdout.once('data', () => child.stdout.destroy());
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect(errors).toBe('');
    expect(status).toBe(0);
  });

  it('tells with its status and one sentence what is wrong with a path', () => {
    const locked = at('locked');
    writeFileSync(locked, '');
    chmodSync(locked, 0);
    const cases: [string, RegExp][] = [
      [at('none.wav'), /There is no such file/],
      [folder, /This is a folder, not a file/],
      [join(at('made.wav'), 'inside.wav'), /There is no such file/],
      // The superuser may read what nobody else may: then it is an empty file.
      [locked, /permission is denied|The file is empty/],
    ];
    for (const [path, sentence] of cases) {
      const { status, stderr, stdout } = ringdown('grid', path);
      expect(stderr).toMatch(sentence);
      expect(stderr.trimEnd().split('\n')).toHaveLength(1);
      expect(stdout).toBe('');
      expect(status).toBe(1);
    }
    const unwritable = ringdown(
      ...[
        'synth',
        '--room',
        '5x4x3',
        '--seat',
        '1,1,1',
        '--source',
        '4,3,1',
        '--out',
        at('no/such/folder.wav'),
      ],
    );
    expect(unwritable.stderr).toMatch(/could not be written \(ENOENT\)/);
    expect(unwritable.status).toBe(1);
  });

  it('is off with status 2, and knows its version', () => {
    expect(ringdown('nothing').status).toBe(2);
    expect(ringdown('--version').stdout).toBe(`${engineVersion}\n`);
  });
});
