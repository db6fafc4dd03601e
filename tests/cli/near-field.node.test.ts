import { describe, expect, it } from 'vitest';
import { encodeWav, type Recording } from '../../src/signal/index.js';
import { command } from '../support/command.js';
import { nearFieldScene } from '../support/near-field.js';

const bytesOf = ({ samples, sampleRate }: Recording): Uint8Array =>
  encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' });

const tail = { frequencyHz: 47, decayTimeSeconds: 0.9, peakDb: 6 };
const { room, source, seats, near } = nearFieldScene(3, 0.03, tail, { seatCount: 2 });
const files = { 'a.wav': bytesOf(seats[0]), 'b.wav': bytesOf(seats[1]), 'near.wav': bytesOf(near) };
const { lengthMetres, widthMetres, heightMetres } = room.size;
const size = [lengthMetres, widthMetres, heightMetres].map((side) => side.toFixed(3)).join('x');
const place = [source.x, source.y, source.z].map((value) => value.toFixed(3)).join(',');
const diagnose = (...more: string[]) => command(['diagnose', 'a.wav', '--room', size, ...more], files);

interface Document {
  files: { file: string }[];
  ridges: { frequency: number; cause: string; evidence: { kind: string; message: string } | null }[];
  nearFields?: { file: string; distance: number; source: number[] | null; resonances: unknown[] }[];
}

describe('ringdown diagnose with a recording close to the source', () => {
  it('names the source that rings, in text and as JSON, and counts the recording among no seats', async () => {
    const call = ['--near-field', 'near.wav', '--near-distance', '0.03', '--near-source', place];
    const { status, out } = await diagnose('--json', ...call);
    expect(status).toBe(0);
    const found = JSON.parse(out) as Document;
    expect(found.files.map(({ file }) => file)).toEqual(['a.wav']);
    expect(found.nearFields).toMatchObject([{ file: 'near.wav', distance: 0.03 }]);
    const own = found.ridges.filter(({ cause }) => cause === 'source');
    expect(own).toHaveLength(1);
    expect(Math.abs(own[0].frequency - 47)).toBeLessThan(0.5);
    expect(own[0].evidence?.kind).toBe('near-field');
    const text = await diagnose(...call);
    expect(text.out.replace(/\s+/g, ' ')).toMatch(
      /A recording 0.03 m from the source rings at the same frequency/,
    );
    const german = await diagnose('--lang', 'de', ...call);
    expect(german.out.replace(/\s+/g, ' ')).toMatch(
      /Eine Aufnahme 0,03 m vor der Quelle klingt bei derselben/,
    );
  });

  it('stays out of the joint fit of several seats', async () => {
    const call = ['diagnose', 'a.wav', 'b.wav', '--together', '--room', size, '--json'];
    const { out } = await command([...call, '--near-field', 'near.wav'], files);
    const { files: read, nearFields } = JSON.parse(out) as Document;
    expect(read.map(({ file }) => file)).toEqual(['a.wav', 'b.wav']);
    expect(nearFields).toMatchObject([{ distance: 0.05, source: null }]);
  });

  it('is refused in one sentence where it cannot be read, and the files are still done', async () => {
    const { status, out, err } = await diagnose('--near-field', 'absent.wav', '--json');
    expect(status).toBe(1);
    expect(err).toMatch(/^absent\.wav: .*\.\n$/);
    expect(out.split('\n')[1]).toContain('"files"');
  });

  it('is told off for a distance that is not near, or without a recording', async () => {
    expect(await diagnose('--near-field', 'near.wav', '--near-distance', '1.5')).toMatchObject({ status: 2 });
    expect(await diagnose('--near-distance', '0.03')).toMatchObject({ status: 2 });
  });
});
