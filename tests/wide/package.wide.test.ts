import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packPackage, Project } from '../support/packed.js';

/** The package as a stranger gets it: packed, and installed in an empty folder. */
describe('the packed package', () => {
  let project: Project;
  const run = (program: string, ...args: string[]) => project.run(program, ...args);

  beforeAll(() => {
    const packed = packPackage();
    project = new Project({ 'package.json': '{"name":"page","private":true,"type":"module"}' });
    project.install(packed.tarball);
    packed.remove();
  });
  afterAll(() => project?.remove());

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
