import { describe, expect, it } from 'vitest';
import { scaleColour } from '../../src/draw/colours.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav, hashOf } from '../../src/signal/index.js';
import { figureNames } from '../../src/sheet/figures.js';
import { defaultDesign } from '../../src/study/system-design.js';
import { documentText, studyDocument } from '../../src/study/document.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { command } from '../support/command.js';

const room = createRoom({
  size: { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 },
  absorption: 0.1,
});
const place = { seat: { x: 3.6, y: 1.5, z: 1.2 }, source: { x: 0.3, y: 0.3, z: 0.3 } };
const { samples } = synthesise({ room, ...place, seconds: 1.6, noiseDb: -60 });
const wav = encodeWav({ channels: [samples], sampleRate: 48000, encoding: 'float-32' });

async function savedStudy(): Promise<Uint8Array> {
  const study = createStudy({ pool: createPool({ routes: [] }) });
  study.setRoom(room);
  await study.addRecording(wav.slice().buffer, { label: 'Live room, desk' });
  const text = documentText(studyDocument(await study.settled(), defaultDesign, []));
  study.dispose();
  return new TextEncoder().encode(text);
}

const files: Record<string, Uint8Array> = {
  'desk.wav': wav,
  'study.json': await savedStudy(),
  'letter.wav': new TextEncoder().encode('No sound.'),
};
const drawn = async (...words: string[]) => {
  const { status, written, err } = await command(['figure', ...words, '--out', 'out.svg'], files);
  expect(err).toBe('');
  expect(status).toBe(0);
  return new TextDecoder().decode(written.get('out.svg'));
};
const wordsOf = (svg: string): string =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, word]) => word).join(' ');

describe('ringdown figure', () => {
  for (const view of figureNames)
    it(`draws the ${view} of a file with its caption and what made it, and no number that is none`, async () => {
      const svg = await drawn('desk.wav', '--view', view, '--room', '5.6x4.1x2.6');
      expect(svg).toMatch(/^<svg xmlns/);
      expect(svg).not.toMatch(/NaN|Infinity|undefined|currentColor/);
      expect(wordsOf(svg)).toContain(hashOf(wav).slice(0, 12));
      const origin = JSON.parse(
        /<metadata>(.*)<\/metadata>/.exec(svg)![1].replaceAll('&quot;', '"'),
      ) as object;
      expect(origin).toMatchObject({ hash: hashOf(wav), picture: view });
      expect((svg.match(/<path/g) ?? []).length).toBeGreaterThan(20);
    });

  it('draws a saved study without its recording, under the label that was given there', async () => {
    const svg = await drawn('study.json', '--view', 'spectrogram');
    expect(wordsOf(svg)).toContain('Live room, desk: spectrogram');
    expect(wordsOf(svg)).toContain(hashOf(wav).slice(0, 12));
    expect(svg).toContain('data:image/png;base64,');
  });

  it('takes the colours of level that a saved study or the call names, and by default those of its look', async () => {
    const text = new TextDecoder().decode(files['study.json']);
    const chosen = text.replace(/("scale": ?)"auto"/, '$1"clear"');
    expect(chosen).not.toBe(text);
    files['clear.json'] = new TextEncoder().encode(chosen);
    // The key of the surface has 48 steps.
    for (const [scale, ...words] of [
      ['dawn', 'study.json'],
      ['dusk', 'study.json', '--look', 'dark'],
      ['clear', 'clear.json'],
      ['dusk', 'clear.json', '--scale', 'dusk'],
      ['dawn', 'clear.json', '--scale', 'auto'],
    ] as const)
      for (const name of ['dusk', 'dawn', 'clear'] as const)
        expect(
          (await drawn(...words)).includes(scaleColour(name, 47.5, [0, 48])),
          `${words.join(' ')}: ${name}`,
        ).toBe(name === scale);
  });

  it('draws the modes of a room alone', async () => {
    const svg = await drawn('--view', 'modes', '--room', '5.6x4.1x2.6');
    expect(wordsOf(svg)).toContain('(1,0,0)');
    expect(wordsOf(svg)).toContain('Predicted by ringdown');
  });

  it('keeps markup in a label from being markup', async () => {
    const svg = await drawn('desk.wav', '--label', '<script>alert(1)</script>&');
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script&gt;');
  });

  it('writes a PNG of the width that was asked', async () => {
    const { status, written } = await command(
      ['figure', 'desk.wav', '--view', 'response', '--out', 'out.png', '--pixels', '700'],
      files,
    );
    expect(status).toBe(0);
    const png = written.get('out.png')!;
    const header = new DataView(png.buffer, png.byteOffset);
    expect(header.getUint32(0)).toBe(0x89504e47);
    expect(header.getUint32(16)).toBe(700);
  });

  it('follows the numbers of a language', async () => {
    expect(wordsOf(await drawn('desk.wav', '--lang', 'de'))).toMatch(/0,30\ss/);
  });

  it('says in one sentence what it cannot do', async () => {
    const refused = async (words: string[]) => {
      const { status, err, written } = await command(['figure', ...words], files);
      expect(written.size).toBe(0);
      expect(err.trim().split('\n')).toHaveLength(1);
      return { status, err };
    };
    expect(await refused(['desk.wav'])).toMatchObject({ status: 2 });
    expect((await refused(['desk.wav', '--out', 'a.gif'])).err).toContain('.svg or .png');
    expect((await refused(['--out', 'a.svg'])).err).toContain('needs a file');
    expect(await refused(['letter.wav', '--out', 'a.svg'])).toMatchObject({ status: 1 });
    expect((await refused(['desk.wav', '--view', 'modes', '--out', 'a.svg'])).err).toContain(
      'nothing for the view',
    );
  });
});
