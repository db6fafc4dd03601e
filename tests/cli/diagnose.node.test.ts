import { describe, expect, it } from 'vitest';
import { wallCut } from '../../src/diagnosis/index.js';
import { synthesise, createRoom, parseRoomSize } from '../../src/room/index.js';
import { encodeWav, hashOf, Rng } from '../../src/signal/index.js';
import { command, nulls } from '../support/command.js';
import { describeWithRecordings, recordingNames, recordingPath } from '../support/shared-data.js';

interface Candidate {
  order: number[];
  kind: string;
  frequency: number;
  deviation: number;
  weight: number;
  shapeMatch: number | null;
}
interface Noted {
  code: string;
  message: string;
}
interface Resonance {
  frequency: number;
  frequencySd: number;
  decayTime: number | null;
  decayTimeSd: number | null;
  q: number | null;
  level: number;
  levels: number[];
  kind: string;
  fit: { from: number; to: number };
}
interface Ridge {
  resonance: number | null;
  frequency: number;
  decayTime: number | null;
  limit: number | null;
  excess: number | null;
  limitName: string;
  audible: string;
  cause: string;
  seats: number[];
  candidates: Candidate[];
  remedies: { kind: string; message: string }[];
}
interface File {
  file: string;
  hash: string;
  sampleRate: number;
  channels: number;
  channel: number;
  seconds: number;
  onset: number;
  range: { from: number; to: number; decibels: number }[];
  bands: Band[];
  notes: Noted[];
}
interface Band {
  centre: number;
  from: number;
  to: number;
  range: number;
  usable: number;
  shortest: number;
  edt: Reading;
  t20: Reading;
  t30: Reading;
}
interface Reading {
  seconds: number | null;
  refused: 'range' | 'end' | 'filter' | null;
}
interface DiagnosisDocument {
  version: number;
  file?: string;
  error?: Noted;
  files: File[];
  resonances: Resonance[];
  ridges: Ridge[];
  room: { size: number[]; modes: { order: number[]; frequency: number }[] } | null;
}

/** A room of the community radio station's kind, with one slow mode between its ends. */
const room = createRoom({
  size: parseRoomSize('5.2x3.9x2.6'),
  absorption: [0.04, 0.04, 0.3, 0.3, 0.25, 0.25],
});
const responseAt = (x: number, y: number) =>
  synthesise({
    room,
    seat: { x, y, z: 1.2 },
    source: { x: 0.3, y: 0.4, z: 0.4 },
    sampleRate: 8000,
    noiseDb: -70,
  });
const { samples, sampleRate } = responseAt(4.6, 1.4);
const other = encodeWav({ channels: [responseAt(2.9, 1.1).samples], sampleRate, encoding: 'float-32' });
const studio = encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' });
const stereo = encodeWav({
  channels: [new Float64Array(samples.length), samples],
  sampleRate,
  encoding: 'float-32',
});
const files = {
  'studio.wav': studio,
  'stereo.wav': stereo,
  'other.wav': other,
  'empty.wav': new Uint8Array(0),
};

const documents = (out: string): DiagnosisDocument[] =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as DiagnosisDocument);

const fields = {
  document: ['version', 'files', 'resonances', 'ridges', 'room'],
  file: ['file', 'hash', 'sampleRate', 'channels', 'channel', 'seconds', 'onset', 'range', 'bands', 'notes'],
  band: ['centre', 'from', 'to', 'range', 'usable', 'shortest', 'edt', 't20', 't30'],
  resonance: [
    ...['frequency', 'frequencySd', 'decayTime', 'decayTimeSd', 'q', 'level', 'levels', 'kind', 'fit'],
  ],
  ridge: [
    ...['resonance', 'frequency', 'decayTime', 'limit', 'excess', 'limitName', 'audible', 'cause'],
    ...['evidence', 'seats'],
    ...['candidates', 'remedies'],
  ],
  candidate: ['order', 'kind', 'frequency', 'deviation', 'weight', 'shapeMatch'],
  room: ['size', 'volume', 'speedOfSound', 'transitionFrequency', 'modes'],
};

/** Fails on any field that is missing, is not documented, or is outside what it may be. */
function expectWhole(document: DiagnosisDocument): void {
  const { files: list, resonances, ridges, room: prediction } = document;
  expect(document.version).toBe(1);
  for (const file of list) {
    expect(Object.keys(file)).toEqual(fields.file);
    expect(file.hash).toMatch(/^[0-9a-f]{64}$/);
    for (const range of file.range) {
      expect(Object.keys(range)).toEqual(['from', 'to', 'decibels']);
      expect(range.to / range.from).toBeCloseTo(10 ** 0.1, 6); // a third of an octave, IEC 61260-1
    }
    for (const band of file.bands) {
      expect(Object.keys(band)).toEqual(fields.band);
      // BT > 4 (Jacobsen and Rindel, J. Sound Vib. 117:187, 1987; value from memory).
      expect(band.shortest).toBeCloseTo(4 / (band.to - band.from), 6);
      for (const { seconds, refused } of [band.edt, band.t20, band.t30]) {
        if (seconds === null) expect(['range', 'end', 'filter']).toContain(refused);
        else {
          expect(refused).toBeNull();
          expect(seconds).toBeGreaterThanOrEqual(band.shortest);
        }
      }
    }
    for (const { code, message } of file.notes) {
      expect(code).toMatch(/^[a-z-]+$/);
      expect(message).toMatch(/[.!]$/);
      expect(message).not.toMatch(/undefined|NaN|no sentence/);
    }
  }
  for (const resonance of resonances) {
    const early = resonance.kind === 'two-slopes' ? ['decayTimeEarly'] : [];
    expect(Object.keys(resonance).sort()).toEqual([...fields.resonance, ...early].sort());
    expect(['resolved', 'cluster', 'two-slopes', 'hum', 'source']).toContain(resonance.kind);
    expect(Object.keys(resonance.fit)).toEqual(['from', 'to']);
    expect(resonance.levels).toHaveLength(list.length);
    expect(resonance.frequencySd).toBeGreaterThan(0);
    if (resonance.kind !== 'hum') expect(resonance.decayTimeSd).toBeGreaterThan(0);
  }
  for (const ridge of ridges) {
    expect(Object.keys(ridge)).toEqual(fields.ridge);
    expect(['yes', 'possibly', 'unknown']).toContain(ridge.audible);
    if (ridge.resonance !== null) expect(ridge.frequency).toBe(resonances[ridge.resonance].frequency);
    if (ridge.excess !== null) expect(ridge.excess).toBeCloseTo(ridge.decayTime! / ridge.limit!, 9);
    for (const candidate of ridge.candidates) {
      expect(Object.keys(candidate)).toEqual(fields.candidate);
      expect(Math.abs(candidate.deviation)).toBeLessThanOrEqual(wallCut);
      expect(candidate.deviation).toBeCloseTo(ridge.frequency / candidate.frequency - 1, 6);
    }
    expect(ridge.candidates.reduce((sum, { weight }) => sum + weight, 0)).toBeLessThanOrEqual(1 + 1e-9);
    for (const { message } of ridge.remedies) expect(message).not.toMatch(/undefined|NaN|no sentence/);
  }
  if (prediction) expect(Object.keys(prediction)).toEqual(fields.room);
  const mayBeNull =
    /^\.(ridges\[\]\.(resonance|limit|excess|evidence|evidence\.\w+|candidates\[\]\.shapeMatch|remedies\[\]\.\w+)|room|room\.modes\[\]\.decayTime|room\.transitionFrequency|files\[\]\.notes\[\]\.\w+|files\[\]\.bands\[\]\.(edt|t20|t30)\.(seconds|refused)|resonances\[\]\.(decayTime|decayTimeSd|q|decayTimeEarly))$/;
  expect(nulls(document).filter((path) => !mayBeNull.test(path))).toEqual([]);
}

describe('ringdown diagnose', () => {
  it('prints one document with the documented fields and no others', async () => {
    const { status, out, err } = await command(
      ['diagnose', 'studio.wav', '--room', '5.2x3.9x2.6', '--json'],
      files,
    );
    expect(err).toBe('');
    expect(status).toBe(0);
    const [document, ...more] = documents(out);
    expect(more).toEqual([]);
    expect(Object.keys(document)).toEqual(fields.document);
    expectWhole(document);
    expect(document.files[0]).toMatchObject({
      file: 'studio.wav',
      hash: hashOf(studio),
      sampleRate: 8000,
      channels: 1,
      channel: 1,
      seconds: 2,
    });
  });

  it('shows decay times per third-octave with the shortest believable, or the reason that refuses them', async () => {
    const { out } = await command(['diagnose', 'studio.wav', '--json'], files);
    const [{ files: list }] = documents(out);
    const { bands } = list[0];
    expect(bands).toHaveLength(11);
    const text = (await command(['diagnose', 'studio.wav'], files)).out;
    const rows = text.split('\n').filter((line) => /^ *\d+(\.\d)? +\d+ +\S.* \d\.\d\d$/.test(line));
    expect(rows).toHaveLength(11);
    bands.forEach(({ centre, edt, t20, t30, shortest }, k) => {
      expect(Number(rows[k].trim().split(/ +/)[0])).toBeCloseTo(centre, centre < 40 ? 1 : 0);
      expect(rows[k].endsWith(shortest.toFixed(2))).toBe(true);
      for (const { seconds, refused } of [edt, t20, t30])
        expect(rows[k]).toContain(
          seconds !== null
            ? seconds.toFixed(2)
            : { filter: 'too short', range: 'too little range', end: 'file ends' }[refused!],
        );
    });
    // Noise that falls 60 dB in 0.15 s: shorter than a low third-octave can show, and in the noise before T30 is read.
    const rng = new Rng(5);
    const burst = Float64Array.from(
      { length: 16000 },
      (_, i) => rng.gaussian() * (0.2 * Math.exp((-6.9078 * i) / (0.15 * 8000)) + 0.003),
    );
    const dull = encodeWav({ channels: [burst], sampleRate: 8000, encoding: 'float-32' });
    const [{ files: told }] = documents(
      (await command(['diagnose', 'dull.wav', '--json'], { 'dull.wav': dull })).out,
    );
    const states = told[0].bands.flatMap(({ edt, t20, t30 }) => [edt.refused, t20.refused, t30.refused]);
    expect(new Set(states)).toEqual(new Set(['filter', 'range', null]));
  });

  it('flags the slow mode of an invented room, and names it among the candidates', async () => {
    const { out } = await command(['diagnose', 'studio.wav', '--room', '5,2x3,9x2,6', '--json'], files);
    const [{ ridges, room: prediction }] = documents(out);
    const [slow] = prediction!.modes.filter(({ order }) => order.join() === '1,0,0');
    const ridge = ridges.find(({ frequency }) => Math.abs(frequency - slow.frequency) < 0.5);
    expect(ridge).toBeDefined();
    expect(ridge!.candidates[0].order).toEqual([1, 0, 0]);
    expect(ridge!.candidates[0].weight).toBeLessThan(1);
    expect(ridges.map(({ excess }) => excess ?? 0)).toEqual(
      ridges.map(({ excess }) => excess ?? 0).sort((a, b) => b - a),
    );
  });

  it('gives several files a document each, line by line, and a refused one its reason', async () => {
    const { status, out, err } = await command(
      ['diagnose', 'studio.wav', 'empty.wav', 'gone.wav', 'stereo.wav', '--json'],
      files,
    );
    expect(status).toBe(1);
    const [first, empty, gone, last] = documents(out);
    expectWhole(first);
    expect(empty).toEqual({
      version: 1,
      file: 'empty.wav',
      error: { code: 'file-empty', message: 'The file is empty: it has no bytes. Export it again.' },
    });
    expect(gone.error?.code).toBe('file-missing');
    expect(last.files[0]).toMatchObject({ channel: 2, channels: 2 });
    expect(last.files[0].notes.map(({ code }) => code)).toContain('channel-chosen');
    expect(err.trimEnd().split('\n')).toHaveLength(2);
  });

  it('fits files together where they are said to be of one room, or where their places differ', async () => {
    const seats = ['--seat', '4.6,1.4,1.2', '--seat', '2.9,1.1,1.2'];
    for (const how of [['--together'], seats]) {
      const { status, out } = await command(
        ['diagnose', 'studio.wav', 'other.wav', '--room', '5.2x3.9x2.6', ...how, '--json'],
        files,
      );
      expect(status).toBe(0);
      const [document, ...more] = documents(out);
      expect(more).toEqual([]);
      expectWhole(document);
      expect(document.files.map(({ file }) => file)).toEqual(['studio.wav', 'other.wav']);
      for (const { seats: heard } of document.ridges)
        for (const seat of heard) expect([0, 1]).toContain(seat);
    }
  });

  it('says of files taken together which one is refused, and reads the others', async () => {
    const { status, out, err } = await command(
      ['diagnose', 'studio.wav', 'empty.wav', 'other.wav', '--together', '--json'],
      files,
    );
    expect(status).toBe(1);
    const [refused, document, ...more] = documents(out);
    expect(more).toEqual([]);
    expect(refused.file).toBe('empty.wav');
    expect(document.files).toHaveLength(2);
    expect(err).toMatch(/^empty\.wav: /);
  });

  it('says the same for the same file, and nothing of another range', async () => {
    const call = ['diagnose', 'studio.wav', '--from', '30', '--to', '90', '--json'];
    const [one, two] = [await command(call, files), await command(call, files)];
    expect(one.out).toBe(two.out);
    const [{ resonances, ridges }] = documents(one.out);
    for (const { frequency } of [...resonances, ...ridges]) {
      expect(frequency).toBeGreaterThanOrEqual(30);
      expect(frequency).toBeLessThanOrEqual(90);
    }
  });

  it('names the limit of every ridge, whichever is chosen', async () => {
    for (const limit of ['audibility', 'target', 'neighbours']) {
      const { out } = await command(
        ['diagnose', 'studio.wav', '--room', '5.2x3.9x2.6', '--limit', limit, '--json'],
        files,
      );
      const [document] = documents(out);
      expectWhole(document);
      for (const ridge of document.ridges) expect([limit, 'neighbours']).toContain(ridge.limitName);
    }
  });

  it('prints a table for the eye with limits, candidates, remedies and the caution', async () => {
    const { out } = await command(['diagnose', 'studio.wav', '--room', '5.2x3.9x2.6'], files);
    expect(out).toContain('Ridges above the limit “audibility”, worst first');
    expect(out).toMatch(/may be \(1,0,0\) axial/);
    expect(out.replace(/\s+/g, ' ')).toContain('do not replace the judgement of a licensed practitioner');
    expect(out).not.toMatch(/undefined|NaN|no sentence/);
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(110);
  });

  const off: [string, RegExp][] = [
    ['diagnose', /needs a file/],
    ['diagnose studio.wav --limit all', /--limit “all” is none of audibility, target, neighbours/],
    ['diagnose studio.wav --limit target', /--limit target needs --room/],
    ['diagnose studio.wav --seat 1,1,1 --seat 2,2,1', /--seat was given 2 times for 1 file/],
    ['diagnose studio.wav --room 5x4x3 --seat 9,1,1', /outside the room/],
    ['diagnose studio.wav --to 90 --from 90', /must lie below/],
  ];
  for (const [words, sentence] of off) {
    it(`“${words}” ends with status 2 and one sentence`, async () => {
      const { status, out, err } = await command(words.split(' '), files);
      expect(err).toMatch(sentence);
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      expect(out).toBe('');
      expect(status).toBe(2);
    });
  }
});

/** What each recording must show was measured with general-purpose tools; see the README beside the recordings. */
describeWithRecordings('ringdown diagnose on real recordings', () => {
  const diagnose = async (name: string, ...more: string[]) => {
    const { status, out, err } = await command(['diagnose', recordingPath(name), ...more, '--json']);
    const [document] = documents(out);
    expectWhole(document);
    return { status, err, document };
  };
  const within = (list: readonly { frequency: number }[], from: number, to: number): boolean =>
    list.some(({ frequency }) => frequency >= from && frequency <= to);

  it('finds the two resonances of the lab of 9.7 x 5.5 x 2.7 m, and claims nothing below 45 Hz', async () => {
    const { status, document } = await diagnose(recordingNames.corner1, '--room', '9.7x5.5x2.7');
    expect(status).toBe(0);
    expect(within(document.resonances, 54, 57.5)).toBe(true);
    expect(within(document.resonances, 62, 65)).toBe(true);
    expect(within(document.ridges, 0, 45)).toBe(false);
  });

  it('finds the peaks of the example room near 48.0 and 73.1 Hz, and something between 56 and 61 Hz', async () => {
    const { resonances } = (await diagnose(recordingNames.frl)).document;
    expect(within(resonances, 47, 49)).toBe(true);
    expect(within(resonances, 72.1, 74.1)).toBe(true);
    expect(within(resonances, 56, 61)).toBe(true);
  });

  it('refuses the clap for want of range, and says so in its document, on standard error and by its status', async () => {
    const { status, err, document } = await diagnose(recordingNames.clap);
    expect(status).toBe(1);
    expect(document.error?.code).toBe('no-range');
    expect(document.files[0].notes.map(({ code }) => code)).toContain('no-range');
    expect(document.resonances).toEqual([]);
    expect(document.ridges).toEqual([]);
    expect(err).toContain('Not enough range');
  });
});
