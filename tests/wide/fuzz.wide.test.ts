import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

it('answers 20,000 made and damaged inputs with a result or with one sentence each', () => {
  const call = ['scripts/fuzz.mjs', '--inputs', '20000', '--seed', '2'];
  const { status, stdout, stderr } = spawnSync(process.execPath, call, { cwd: root, encoding: 'utf8' });
  console.log(stdout, stderr);
  const last = stdout.trim().split('\n').at(-1)!;
  const [, inputs, readers, all, found] = /^fuzz: (\d+) inputs to (\d+) of (\d+) readers, .*, (\d+) found$/
    .exec(last)!
    .map(Number);
  expect([found, readers, status]).toEqual([0, all, 0]);
  expect(inputs).toBeGreaterThanOrEqual(20_000);
});
