import { describe, expect, it } from 'vitest';
import { engineVersion } from '../../src/study/version.js';
import { encodeWav } from '../../src/signal/index.js';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { command } from '../support/command.js';

const click = new Float64Array(4800);
click[480] = 0.5;
const files = { 'a.wav': encodeWav({ channels: [click], sampleRate: 48000, encoding: 'float-32' }) };

describe('the words of a call', () => {
  const off: [string, RegExp][] = [
    ['', /^Say what to do: /],
    ['nothing', /^“nothing” is no command\. /],
    ['--json', /^Say what to do: /],
    ['modes', /needs --room/],
    ['modes --room', /--room needs a value/],
    ['modes --room 5x4', /“5x4” is not a room size/],
    ['modes --room 5x4x300', /height of the room is given as 300 m/],
    ['modes --room 5x4x3 --json=yes', /--json takes no value/],
    ['modes --room 5x4x3 --to warm', /--to “warm” is not a number/],
    ['modes --room 5x4x3 --to 1.234,5', /is not a number/],
    ['modes --room 5x4x3 --to 1e9', /is not a number/],
    ['modes --room 5x4x3 --to 2000', /--to 2000 is outside 5 to 1000/],
    ['modes --room 5x4x3 --temperature -5', /--temperature -5 is outside 0 to 45/],
    ['modes --room 5x4x3 --temperature 20 --speed 343', /--speed and --temperature cannot/],
    ['modes --room 5x4x3 --absorption 0.1,0.2', /six/],
    ['modes --room 5x4x3 --absorption 2', /absorption coefficient of 2 is outside/],
    ['modes --room 5x4x3 --absorption some', /is not a list of numbers/],
    ['modes --room 5x4x3 --room 6x4x3', /--room was given more than once/],
    ['modes --room 60x60x60 --to 1000', /too many to name/],
    ['modes --room 5x4x3 a.wav', /reads no file/],
    ['modes --wall 3', /“--wall” is no option of “ringdown modes”/],
    ['modes -x', /“-x” is no option/],
    ['modes --constructor 3', /is no option/],
    ['grid', /needs a file/],
    ['grid a.wav b.wav', /reads one file, but 2 were given/],
    ['grid a.wav --method fast', /--method “fast” is none of sliding, cumulative/],
    ['grid a.wav --channel 1.5', /--channel 1.5 is not a whole number/],
    ['grid a.wav --from 100 --to 50', /--from 100 must lie below --to 50/],
    ['grid a.wav --csv --json', /--csv and --json cannot/],
    ['modes --room 5x4x3 --lang', /--lang needs a value/],
    ['modes --room 5x4x3 --lang --json', /--lang needs a value/],
    ['modes --room 5x4x3 --lang no_tag_at_all', /--lang “no_tag_at_all” is no language tag/],
    ['modes --room 5x4 --lang=de', /^„5x4“ ist keine Raumgröße/],
    ['--lang de nothing', /^„nothing“ ist kein Befehl/],
    ['synth --room 5x4x3 --seat 1,1,1 --out x.wav', /needs --source/],
    ['synth --room 5x4x3 --seat 1,1,9 --source 1,1,1 --out x.wav', /outside the room: z is 9 m/],
    ['synth --room 5x4x3 --seat here --source 1,1,1 --out x.wav', /“here” is not a place/],
  ];
  for (const [words, sentence] of off) {
    it(`“${words}” ends with status 2 and one sentence`, async () => {
      const { status, out, err } = await command(words ? words.split(' ') : [], files);
      expect(err).toMatch(sentence);
      expect(err).not.toMatch(/undefined|NaN|\bat .*\.[tj]s|has no sentence/);
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      expect(out).toBe('');
      expect(status).toBe(2);
    });
  }

  it('may ask for help, of the whole and of each command, anywhere in the call', async () => {
    for (const call of [
      '--help',
      '-h',
      'help',
      'modes --help',
      'grid a.wav -h',
      'synth --help',
      'diagnose --help',
    ]) {
      const { status, out, err } = await command(call.split(' '), files);
      expect(status, call).toBe(0);
      expect(err, call).toBe('');
      expect(out, call).toMatch(/^Usage: ringdown /);
      for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(110);
    }
  });

  it('explain in the help every option that is read, and no other, in each language', async () => {
    const specs = {
      diagnose: (await import('../../src/cli/diagnose.js')).diagnoseOptions,
      modes: (await import('../../src/cli/modes.js')).modesOptions,
      grid: (await import('../../src/cli/grid.js')).gridOptions,
      synth: (await import('../../src/cli/synth.js')).synthOptions,
      figure: (await import('../../src/cli/figure.js')).figureOptions,
      sweep: (await import('../../src/cli/sweep.js')).sweepOptions,
      response: (await import('../../src/cli/response.js')).responseOptions,
    };
    for (const lang of ['en', 'de'])
      for (const [name, options] of Object.entries(specs)) {
        const { out } = await command([name, '--help', '--lang', lang]);
        const explained = [...out.matchAll(/^ {2}--([a-z-]+)/gm)].map(([, option]) => option);
        expect(explained.sort(), `${name} ${lang}`).toEqual([...Object.keys(options), 'lang'].sort());
        for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(110);
      }
  });

  it('may ask for the version, which is that of the package', async () => {
    const path = fileURLToPath(new URL('../../package.json', import.meta.url));
    const { version } = JSON.parse(readFileSync(path, 'utf8')) as { version: string };
    expect(engineVersion).toBe(version);
    expect((await command(['--version'])).out).toBe(`${version}\n`);
  });
});
