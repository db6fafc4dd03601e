import { describe, expect, it } from 'vitest';
import { commandLanguages } from '../../src/words/command.js';
import { command } from '../support/command.js';
import { roomWav } from '../support/packed.js';
import { everyWay, figuresOf } from '../support/saying.js';

const { en, de } = commandLanguages;
const files = { 'a.wav': roomWav() };
/** Words of English that German does not have. */
const english = /\b(the|of|and|with|is|are|at|decay|ridge|room|limit|seat|channel|seconds|may)\b/i;

async function said(call: string): Promise<string> {
  const { out, err, status } = await command(call.split(' '), files);
  expect(err, call).toBe('');
  expect(status, call).toBe(0);
  return out;
}

describe('the command in German', () => {
  it('has the same sentences as in English, which tell the same', () => {
    expect(Object.keys(de.sentences)).toEqual(Object.keys(en.sentences));
    for (const [code, sentence] of Object.entries(en.sentences)) {
      const [one, other] = [everyWay(sentence), everyWay(de.sentences[code])];
      expect(other.read, code).toEqual(one.read);
      expect(other.said.map(({ told }) => told).join('\n'), code).toBe(
        one.said.map(({ told }) => told).join('\n'),
      );
      expect(other.said.map(({ text }) => figuresOf(text)).join('\n'), code).toBe(
        one.said.map(({ text }) => figuresOf(text)).join('\n'),
      );
    }
  });

  it('has the same help: every command, every option in its order, every default', () => {
    expect(Object.keys(de.help)).toEqual(Object.keys(en.help));
    for (const [name, { options }] of Object.entries(en.help)) {
      const names = (list: typeof options) => list.map(([option]) => option.split(' ')[0]).sort();
      expect(names(de.help[name].options), name).toEqual(names(options));
      for (const [option, does] of options) {
        const other = de.help[name].options.find(([one]) => one.split(' ')[0] === option.split(' ')[0])!;
        const figures = (text: string) => figuresOf(text.replace(/\(unknown.*|\(ein unbek.*/, ''));
        expect(figures(other[1]), `${name} ${option}`).toBe(figures(does));
      }
    }
  });

  it('says a diagnosis, with a comma in every number', async () => {
    const out = await said('diagnose a.wav --room 5.6x3.9x2.7 --lang de');
    expect(out).toMatch(/^a\.wav\n {2}\d+ Hz, Kanal 1 von 1, \d,\d\d s, Einsatz bei /);
    expect(out).toMatch(/Grate über der Grenze „Hörbarkeit“, der schlimmste zuerst/);
    expect(out).toMatch(/Abklingzeit, s/);
    expect(out).toMatch(/\d,\d Hz kann sein: \(\d,\d,\d\) axial bei \d+,\d Hz: \d+ %/);
    expect(out).toMatch(/Raum von 5,6 x 3,9 x 2,7 m bei 34\d,\d m\/s, Moden in Hz: /);
    expect(out).not.toMatch(/\d\.\d/);
    expect(out).not.toMatch(english);
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(110);
  });

  it('says modes, a grid, and what it writes', async () => {
    const modes = await said('modes --room 5.6x3.9x2.7 --seat 3.2,2,1.2 --walls concrete --lang de');
    expect(modes).toMatch(/^Raum von 5,6 x 3,9 x 2,7 m, 59,0 m3, Schallgeschwindigkeit 34\d,\d m\/s\./);
    const grid = await said('grid a.wav --lang de');
    expect(grid).toMatch(/Gleitendes Hann-Fenster von 0,30 s/);
    const synth = await said(
      'synth --room 5.6x3.9x2.7 --seat 3.2,2,1.2 --source 0.4,0.5,0.4 --out b.wav --lang de',
    );
    const sweep = await said('sweep --seconds 1 --out s.wav --lang de');
    for (const out of [modes, grid, synth, sweep])
      expect(out.replaceAll(/[ab]\.wav|RECORDING/g, '')).not.toMatch(english);
  });

  it('keeps the fields of JSON and CSV as they are, and says the messages within in German', async () => {
    const read = async (lang: string) =>
      JSON.parse(await said(`diagnose a.wav --room 5.6x3.9x2.7 --json --lang ${lang}`)) as {
        ridges: { frequency: number; remedies: { kind: string; message: string }[] }[];
      };
    const [one, other] = [await read('en'), await read('de')];
    expect(other.ridges.map(({ frequency }) => frequency)).toEqual(
      one.ridges.map(({ frequency }) => frequency),
    );
    const messages = other.ridges.flatMap(({ remedies }) => remedies.map(({ message }) => message));
    expect(messages.length).toBeGreaterThan(0);
    for (const message of messages) expect(message).not.toMatch(english);
    expect(await said('grid a.wav --csv --lang de')).toBe(await said('grid a.wav --csv'));
  });

  it('speaks English with the numbers of a language that it does not have, and never asks the system', async () => {
    const french = await said('modes --room 5.6x3.9x2.7 --lang fr');
    expect(french).toMatch(/^Room of 5,6 x 3,9 x 2,7 m/);
    const before = process.env.LANG;
    process.env.LANG = 'de_DE.UTF-8';
    try {
      expect(await said('modes --room 5.6x3.9x2.7')).toMatch(/^Room of 5\.6 x/);
    } finally {
      if (before === undefined) delete process.env.LANG;
      else process.env.LANG = before;
    }
  });
});
