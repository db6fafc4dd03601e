import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import { textsOfPng } from '../../src/draw/png.js';
import { drawCounters } from '../../src/draw/schedule.js';
import type { RingdownWaterfall } from '../../src/elements/waterfall/waterfall.js';
import { aTimeout, drawn, ready, room, roomAddress, shadow, shadowText, waitUntil } from './support.js';

const waterfall = async (): Promise<RingdownWaterfall> => {
  const element = await fixture<RingdownWaterfall>(
    html`<ringdown-waterfall src=${roomAddress()} room=${room} label="Studio"></ringdown-waterfall>`,
  );
  await ready(element);
  await drawn(element, 1000);
  return element;
};

const sizeOf = async (file: Blob): Promise<{ width: number; height: number; colours: number }> => {
  const bitmap = await createImageBitmap(file);
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d')!;
  context.drawImage(bitmap, 0, 0);
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  return { width: canvas.width, height: canvas.height, colours: new Set(new Uint32Array(data.buffer)).size };
};

describe('a waterfall', () => {
  it('is saved as a PNG of the width that was asked, with what made it', async () => {
    const element = await waterfall();
    const { hash } = element.snapshot!.recordings[0];
    const { contexts, pictures } = drawCounters;
    for (const width of [600, 1500]) {
      const file = (await element.toPng(width))!;
      const size = await sizeOf(file);
      expect(size.width).to.equal(width);
      expect(size.colours).to.be.greaterThan(1000);
      const texts = textsOfPng(new Uint8Array(await file.arrayBuffer()));
      expect(texts.Title).to.equal('Studio: waterfall');
      const origin = JSON.parse(texts.Origin) as { hash: string; version: string; parameters: object };
      expect(origin.hash).to.equal(hash);
      expect(origin.version).to.match(/^\d+\.\d+\.\d+/);
      expect(origin.parameters).to.deep.equal(element.snapshot!.choices);
    }
    expect(drawCounters.contexts).to.equal(contexts);
    expect(drawCounters.pictures).to.equal(pictures);
  });

  it('is saved as a vector document with axes, ridges, caption and what made it', async () => {
    const element = await waterfall();
    const text = element.toSvg({ cssWidth: 800, cssHeight: 480 })!;
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).to.equal(null);
    expect(parsed.documentElement.getAttribute('width')).to.equal('800');
    const { hash } = element.snapshot!.recordings[0];
    expect(JSON.parse(parsed.querySelector('metadata')!.textContent)).to.include({ hash });
    const words = [...parsed.querySelectorAll('text')].map(({ textContent }) => textContent);
    expect(words).to.include('Frequency, Hz');
    expect(words.join(' ')).to.contain('Sliding Hann window').and.contain(hash.slice(0, 12));
    expect(words.some((word) => /^41\.\d\sHz$/.test(word))).to.equal(true);
  });

  it('hands the file to the user under a name that says what it is', async () => {
    const element = await waterfall();
    const clicked: HTMLAnchorElement[] = [];
    // The test's browser must not be asked to keep files.
    const note = (event: Event): void => {
      event.preventDefault();
      clicked.push(event.currentTarget as HTMLAnchorElement);
    };
    const createElement = document.createElement.bind(document);
    document.createElement = (name: string) => {
      const made = createElement(name);
      if (name === 'a') made.addEventListener('click', note);
      return made;
    };
    try {
      shadow<HTMLDetailsElement>(element, '.save').open = true;
      for (const button of element.shadowRoot!.querySelectorAll<HTMLButtonElement>('.save button'))
        button.click();
      await waitUntil(() => clicked.length === 2, 'two files', { timeout: 15000 });
    } finally {
      delete (document as { createElement?: unknown }).createElement;
    }
    expect(clicked.map(({ download }) => download).sort()).to.deep.equal([
      'studio-waterfall.png',
      'studio-waterfall.svg',
    ]);
  });

  it('says what its signs mean, and only those it has', async () => {
    const element = await waterfall();
    await element.updateComplete;
    const key = shadowText(element, '.key li');
    for (const word of ['in the noise', 'no slower than the window', 'audibility limit', 'oblique'])
      expect(key).to.contain(word);
    expect(key).not.to.contain('past the end');
    element.setAttribute('span', '3');
    await waitUntil(() => shadowText(element, '.key li').includes('past the end'), 'the end of the file', {
      timeout: 15000,
    });
  });

  it('rests once it is drawn with care: no frame drawn, none asked for', async () => {
    await waterfall();
    await aTimeout(1500);
    const { frames, requests } = drawCounters;
    await aTimeout(1000);
    expect(drawCounters.frames).to.equal(frames);
    expect(drawCounters.requests).to.equal(requests);
  });
});
