import { beforeAll, describe, expect, it } from 'vitest';
import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { cssString } from '../../src/sheet/report/markup.js';
import { sheetDocument, type SheetInput } from '../../src/sheet/report/report.js';
import { createPool } from '../../src/study/pool.js';
import { createSheetPair } from '../../src/study/sheet-pair.js';
import { withDecision } from '../../src/study/sheet-texts.js';
import { createStudy } from '../../src/study/study.js';
import { createSystem } from '../../src/study/system.js';
import { createSpeaker } from '../../src/words/index.js';

const size = { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 };
const room = createRoom({ size, temperatureCelsius: 20, absorption: 0.1 });
const sources = { A: { x: 0.3, y: 0.3, z: 0.3 }, B: { x: 5.3, y: 3.8, z: 0.3 } };
const seats = { desk: { x: 3.6, y: 1.5, z: 1.2 }, sofa: { x: 4.6, y: 2.5, z: 1.2 } };
type Source = keyof typeof sources;
type Seat = keyof typeof seats;

interface Made {
  readonly points: readonly (readonly [Source, Seat, string])[];
  readonly clock?: 'common' | 'none';
  readonly label?: (text: string) => string;
  readonly hasRoom?: boolean;
}

const pool = createPool({ routes: [], cacheLimit: 300 });

async function made({ points, clock = 'common', label = (text) => text, hasRoom = true }: Made) {
  const study = createStudy({ pool, choices: { toHz: 110 } });
  if (hasRoom) study.setRoom(room);
  for (const [source, seat, stage] of points) {
    const absorption = stage === 'after' ? 0.25 : 0.1;
    const { samples } = synthesise({
      ...{ room: createRoom({ size, absorption }), source: sources[source], seat: seats[seat] },
      ...{ sampleRate: 2000, seconds: 1.4, noiseDb: -60, seed: 7 },
    });
    await study.addRecording(
      encodeWav({ channels: [samples], sampleRate: 2000, encoding: 'float-64' }).buffer,
      {
        label: label(`${source} ${seat} ${stage}`),
        ...{ stage, timeReference: clock, seat: seats[seat], source: sources[source] },
        ...{ seatName: label(seat), sourceName: source },
      },
    );
  }
  await study.settled();
  const system = createSystem(study, { pool });
  const pair = createSheetPair(study, system, { pool });
  const input = async (): Promise<SheetInput> => {
    // What the sums bring is what the pictures wait for, and the other way round.
    for (let turn = 0; turn < 3; turn += 1) {
      await study.settled();
      await system.settled();
      await pair.settled();
    }
    return { study: study.snapshot, system: system.snapshot, pair: pair.snapshot };
  };
  return { study, system, pair, input };
}

const whole = (['before', 'after'] as const).flatMap((stage) =>
  (['A', 'B'] as const).flatMap((source) =>
    (['desk', 'sofa'] as const).map((seat): [Source, Seat, string] => [source, seat, stage]),
  ),
);

const textOf = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>|<metadata>[\s\S]*?<\/metadata>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

/** Labels of an axis of one picture: words that are numbers, with where they stand. */
const axisOf = (svg: string): string[] =>
  [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*>([\d.−-]+)<\/text>/g)].map(
    ([, x, y, text]) => `${text} at ${x} ${y}`,
  );

const svgsOf = (html: string, ...words: string[]): string[] =>
  [...html.matchAll(/<svg[\s\S]*?<\/svg>/g)]
    .map(([svg]) => svg)
    .filter((svg) => words.every((word) => /<title>([^<]*)</.exec(svg)![1].includes(word)));

describe('the sheet of a study before and after', () => {
  const speaker = createSpeaker('en');
  let study: Awaited<ReturnType<typeof made>>['study'];
  let input: () => Promise<SheetInput>;
  let html = '';
  let words = '';

  beforeAll(async () => {
    ({ study, input } = await made({ points: whole }));
    html = sheetDocument(await input(), speaker);
    words = textOf(html);
  }, 120000);

  it('is one document without script, nothing of which is fetched, its pictures drawn and not painted', () => {
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(html).not.toMatch(/<script|<link|<image|<img|javascript:|@import|url\((?!#)|\son[a-z]+=/i);
    // Names of XML are the only addresses in it.
    const addresses = [...html.matchAll(/https?:[^"')\s]+/g)].map(([address]) => address);
    expect(new Set(addresses)).toEqual(new Set(['http://www.w3.org/2000/svg']));
    expect(html.match(/<svg /g)!.length).toBeGreaterThanOrEqual(7);
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('says what was measured, what hangs, what came of it, what was not done, and what made it', () => {
    for (const text of [
      'In plain words',
      'with 2 sources at 2 seats, at 2 stages of the work',
      'What hangs, and what is done about it',
      'Before and after',
      'What was not done, and why',
      'Nothing is decided yet about',
      'Usable decay range, dB, by third-octave',
      'Cautions',
      'licensed practitioner',
      'ringdown 0.1.0 from 8 recordings',
      '5.60',
      'Speed of sound',
    ])
      expect(words).toContain(text);
    for (const { hash, label } of study.snapshot.recordings) {
      expect(words).toContain(hash.slice(0, 12));
      expect(words).toContain(label);
    }
    expect(words).not.toMatch(/NaN|undefined|\[object|Infinity|\bnull\b(?! swallows)/);
  });

  it('tells each ridge with its uncertainty, fit range, Q, candidates, seats and result', async () => {
    const { pair } = await input();
    const { diagnosis } = pair.before!;
    expect(diagnosis!.ridges.length).toBeGreaterThan(2);
    const rows = [...html.matchAll(/<table class="ridges">[\s\S]*?<\/table>/g)][0][0].split('<tr>').slice(2);
    expect(rows.length).toBe(Math.min(12, diagnosis!.ridges.length));
    for (const row of rows) {
      expect(row).toMatch(/±\s[\d.]+\sHz/);
      expect(row).toMatch(/±\s[\d.]+\ss/);
      expect(row).toMatch(/0\.0\d to 1\.\d+\ss/);
      expect(row).toMatch(/at (every|most|some|one) seat/);
      expect(row).toMatch(/\(\d,\d,\d\) \d+\s%|no mode near|unknown/);
      expect(row).toMatch(/shorter|longer|no sure change|no longer found|uncertain/);
    }
  });

  it('draws both stages on the same scales', () => {
    for (const kind of ['Level over frequency and time', 'Decay time', 'Level at every seat']) {
      const [before, after] = ['“before”', '“after”'].map((stage) => svgsOf(html, kind, stage));
      expect(before.length, kind).toBe(1);
      expect(after.length, kind).toBe(1);
      const axes = [before[0], after[0]].map(axisOf);
      expect(axes[0].length, kind).toBeGreaterThan(5);
      // Flags of ridges hold frequencies with their unit and are no part of an axis.
      expect(axes[1], kind).toEqual(axes[0]);
    }
    expect(words).toContain('Both pictures have the same axes');
  });

  it('takes what was typed, and holds no name that was not', async () => {
    for (const word of ['For ', 'By ']) expect(words).not.toContain(`${word}`.concat('Quillmarsh'));
    expect(html).not.toContain('class="typed"');
    const ridge = (await input()).pair.before!.diagnosis!.ridges[0];
    study.setSheet({ title: 'Live room', client: 'Radio Quillmarsh', author: 'N. Nobody', date: 'in May' });
    study.setSheet({ notes: 'First line\nSecond line' });
    study.setSheet(
      withDecision(study.snapshot.sheet, ridge.frequencyHz, { action: 'leave', note: 'masked by the music' }),
    );
    const typed = textOf(sheetDocument(await input(), speaker));
    for (const text of ['Live room', 'For Radio Quillmarsh', 'By N. Nobody', 'in May', 'Second line'])
      expect(typed).toContain(text);
    expect(typed).toMatch(/is left as it is: masked by the music/);
    study.setSheet({ title: '', client: '', author: '', date: '', notes: '', decisions: [] });
  });

  it('writes numbers as the locale does and names the paper', async () => {
    study.setSheet({ paper: 'Letter' });
    const german = sheetDocument(await input(), createSpeaker('de'));
    expect(german).toContain('size: Letter;');
    expect(textOf(german)).toMatch(/\d,\d+\s±\s\d,\d+\sHz/);
    study.setSheet({ paper: 'A4' });
    expect(sheetDocument(await input(), speaker)).toContain('size: A4;');
  });

  it('follows the seat that is asked for', async () => {
    const { pair, input: of } = await made({ points: whole });
    await of();
    for (const key of ['desk', 'sofa']) {
      pair.setSeat(key);
      const shown = await of();
      expect(shown.pair.seat).toBe(key);
      expect(textOf(sheetDocument(shown, speaker))).toContain(
        `“after”, all sources together as measured: ${key}`,
      );
    }
  }, 60000);
});

describe('whatever somebody types or calls a file', () => {
  it('is text on the sheet and nothing else', async () => {
    const evil = (text: string): string =>
      `</title></style><script>alert("${text}")</script><img src=x onerror='a'>&amp;`;
    const { study, input } = await made({ points: [['A', 'desk', '']], label: evil });
    study.setSheet({
      title: `${evil('title')}"} @page { size: 1cm }`,
      ...{ client: evil('client'), author: evil('author'), date: evil('date'), notes: evil('notes') },
    });
    const { diagnosis } = (await input()).pair.before!;
    study.setSheet(
      withDecision(study.snapshot.sheet, diagnosis!.ridges[0].frequencyHz, {
        action: 'cut',
        note: evil('note'),
      }),
    );
    const html = sheetDocument(await input(), createSpeaker('en'));
    expect(html).not.toMatch(/<script|<img/i);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(html.match(/<\/title>/g)!.length).toBe(1 + html.match(/<svg /g)!.length);
    const style = /<style>([\s\S]*)<\/style>/.exec(html)![1];
    expect(style).not.toContain('alert(');
    expect(style).not.toContain('size: 1cm');
    // The text itself is there, as it was typed.
    expect(html).toContain('&lt;script&gt;alert(&quot;note&quot;)&lt;/script&gt;');
    expect(html).toContain('&amp;amp;');
  }, 60000);

  it('keeps within a string of CSS', () => {
    for (const text of ['"', '\\', '</style>', 'a\nb', '}', '\u2028', '😀', '\0'])
      expect(cssString(text)).toMatch(/^"([A-Za-z0-9 ]|\\[0-9a-f]+ )*"$/);
    expect(cssString('Room 5')).toBe('"Room 5"');
  });
});

describe('the sheet of less', () => {
  const speaker = createSpeaker('en');

  it('of one recording says that nothing is proven, and what nobody knows', async () => {
    const { input } = await made({ points: [['A', 'desk', '']], hasRoom: false });
    const words = textOf(sheetDocument(await input(), speaker));
    for (const text of [
      'What was measured',
      'with one source at one seat',
      'not measured since',
      'One seat was measured',
      'No room was given',
      'No recording was made after a change',
      'No calibration was given',
    ])
      expect(words).toContain(text);
    expect(words).not.toContain('Before and after');
    expect(words).not.toMatch(/NaN|undefined|\[object|null/);
  }, 60000);

  it('holds two recordings of one point against each other where no clock lets sources be added up', async () => {
    const { input } = await made({
      points: [
        ['A', 'desk', 'before'],
        ['B', 'desk', 'before'],
        ['A', 'desk', 'after'],
        ['B', 'desk', 'after'],
      ],
      clock: 'none',
    });
    const given = await input();
    expect(given.pair.before?.recording.stage).toBe('before');
    expect(given.pair.after?.recording.stage).toBe('after');
    const words = textOf(sheetDocument(given, speaker));
    expect(words).toContain('“after”, as measured: desk');
    expect(words).toContain('No common clock timed the recordings');
    expect(words).toContain('Both pictures have the same axes');
  }, 60000);

  it('calls a design predicted, and asks for a measurement of it', async () => {
    const { system, input } = await made({ points: whole.filter(([, , stage]) => stage === 'before') });
    await input();
    system.setSource('B', { inverted: true, delaySeconds: 0.004, gainDb: -2 });
    const words = textOf(sheetDocument(await input(), speaker));
    expect(words).toContain('Through the new settings, predicted and not measured');
    expect(words).toContain('Settings of the sources');
    expect(words).toMatch(/B -?2\.0|B −2\.0/);
    expect(words).toContain('4.00 inverted');
    expect(words).toContain('measure again at every seat before relying on them');
  }, 60000);
});
