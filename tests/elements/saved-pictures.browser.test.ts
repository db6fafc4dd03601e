import { expect, fixture } from '@open-wc/testing';
import '../../src/define/index.js';
import { textsOfPng } from '../../src/draw/png.js';
import type { StudySnapshot } from '../../src/study/types.js';
import { systemPage } from './system-support.js';
import { drawn, ready, room, roomAddress, waitUntil } from './support.js';

type View = HTMLElement & {
  snapshot: StudySnapshot | null;
  updateComplete: Promise<unknown>;
  toSvg(size?: object): string | null;
  toPng(widthPixels?: number): Promise<Blob | null>;
};

/** Every picture that is saved, with a word that its document must hold. */
const pictures: Record<string, RegExp> = {
  spectrogram: /Sliding Hann window/,
  fit: /this decay, fitted/,
  'decay-times': /above its limit/i,
  response: /Not smoothed/,
  modes: /axial/,
  'pressure-map': /Plan at a height/,
};

for (const [name, word] of Object.entries(pictures))
  describe(`a saved picture of ringdown-${name}`, () => {
    const made = async (): Promise<View> => {
      const page = await fixture(
        `<div><ringdown-${name} src="${roomAddress()}" room="${room}" label="Studio & booth"></ringdown-${name}></div>`,
      );
      const view = page.querySelector<View>(`ringdown-${name}`)!;
      await ready(view);
      await view.updateComplete;
      await drawn(view);
      return view;
    };

    it('is a vector document with title, signs, caption and what made it', async () => {
      const view = await made();
      const text = view.toSvg({ cssWidth: 820, cssHeight: 400 })!;
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
      expect(parsed.querySelector('parsererror')).to.equal(null);
      expect(parsed.documentElement.getAttribute('width')).to.equal('820');
      // What a mode looks like is predicted from the room alone: no file had a part in it.
      const { hash } = name === 'pressure-map' ? { hash: null } : view.snapshot!.recordings[0];
      const origin = JSON.parse(parsed.querySelector('metadata')!.textContent) as object;
      expect(origin).to.include({ hash, picture: name });
      const words = [...parsed.querySelectorAll('text')].map(({ textContent }) => textContent).join(' ');
      if (hash) expect(words).to.contain('Studio & booth').and.contain(hash.slice(0, 12));
      else expect(words).to.contain('Predicted by ringdown').and.contain('5.4');
      expect(words).to.match(word);
      // The letters of a picture in it may spell anything.
      const drawing = text.replace(/base64,[^"]+/g, '');
      expect(drawing.match(/NaN|Infinity|undefined|currentColor|var\(/)).to.equal(null);
    });

    it('is a PNG of the width asked for, and the page keeps its own', async () => {
      const view = await made();
      const canvas = view.shadowRoot!.querySelector('canvas')!;
      const width = canvas.width;
      const file = (await view.toPng(1300))!;
      const bitmap = await createImageBitmap(file);
      expect(bitmap.width).to.equal(1300);
      const texts = textsOfPng(new Uint8Array(await file.arrayBuffer()));
      expect(texts.Title).to.contain(name === 'pressure-map' ? '5.4' : 'Studio & booth');
      expect(canvas.width).to.equal(width);
    });

    it('is offered to the user below the picture', async () => {
      const view = await made();
      await waitUntil(() => view.shadowRoot!.querySelector('.save') !== null, 'no way to save');
    });
  });

describe('a saved picture of sources and seats', () => {
  for (const name of ['seats', 'sources'])
    it(`names every file it was made of: ${name}`, async () => {
      const study = await systemPage(`ringdown-${name}`);
      const view = study.querySelector<View>(`ringdown-${name}`)!;
      await drawn(view, 20);
      const parsed = new DOMParser().parseFromString(view.toSvg({ cssWidth: 820 })!, 'image/svg+xml');
      expect(parsed.querySelector('parsererror')).to.equal(null);
      const origin = JSON.parse(parsed.querySelector('metadata')!.textContent) as {
        picture: string;
        files: { hash: string }[];
        design: object;
      };
      expect(origin.picture).to.equal(name);
      expect(origin.files.map(({ hash }) => hash)).to.deep.equal(
        study.snapshot.recordings.map(({ hash }) => hash),
      );
      expect(origin.design).to.have.property('settings');
      const words = [...parsed.querySelectorAll('text')].map(({ textContent }) => textContent).join(' ');
      expect(words).to.contain('From 6 recordings').and.contain('2 sources');
      const bitmap = await createImageBitmap((await view.toPng(1300))!);
      expect(bitmap.width).to.equal(1300);
    });
});

describe('a saved picture of what is no chart', () => {
  const documentOf = (view: View): Document => {
    const parsed = new DOMParser().parseFromString(view.toSvg({ cssWidth: 820 })!, 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).to.equal(null);
    expect(parsed.documentElement.getAttribute('width')).to.equal('820');
    return parsed;
  };
  const wordsOf = (parsed: Document): string =>
    [...parsed.querySelectorAll('text')].map(({ textContent }) => textContent).join(' ');

  it('is the floor plan of ringdown-room, with signs, size and what made it', async () => {
    const page = await fixture(
      `<div><ringdown-study room="${room}" no-files><ringdown-place kind="seat" name="Console & desk" at="3.7 1.4 1.2"></ringdown-place><ringdown-room></ringdown-room></ringdown-study></div>`,
    );
    const view = page.querySelector<View>('ringdown-room')!;
    await waitUntil(
      () => view.snapshot?.places.length === 1 && view.shadowRoot!.querySelector('.save'),
      'the plan',
    );
    const parsed = documentOf(view);
    expect(wordsOf(parsed))
      .to.match(/floor plan/)
      .and.contain('Console & desk')
      .and.contain('Predicted by');
    const origin = JSON.parse(parsed.querySelector('metadata')!.textContent) as object;
    expect(origin).to.include({ hash: null, picture: 'plan' });
    const bitmap = await createImageBitmap((await view.toPng(1300))!);
    expect(bitmap.width).to.equal(1300);
  });

  it('is the levels of ringdown-listen once they are worked out, and nothing before', async () => {
    const page = await fixture(
      `<div><ringdown-listen src="${roomAddress()}" room="${room}" label="Studio & booth"></ringdown-listen></div>`,
    );
    const view = page.querySelector<View & { play(): Promise<void>; stop(): void }>('ringdown-listen')!;
    await ready(view);
    expect(view.toSvg()).to.equal(null);
    expect(await view.toPng()).to.equal(null);
    await view.play();
    view.stop();
    await waitUntil(() => view.shadowRoot!.querySelector('[part=save-picture]'), 'the levels', {
      timeout: 15000,
    });
    const parsed = documentOf(view);
    expect(wordsOf(parsed))
      .to.contain('Studio & booth')
      .and.contain('through the room')
      .and.contain('Time, s');
    const origin = JSON.parse(parsed.querySelector('metadata')!.textContent) as object;
    expect(origin).to.include({ hash: view.snapshot!.recordings[0].hash, picture: 'listen' });
    const texts = textsOfPng(new Uint8Array(await (await view.toPng(1300))!.arrayBuffer()));
    expect(texts.Title).to.contain('Studio & booth');
  });
});
