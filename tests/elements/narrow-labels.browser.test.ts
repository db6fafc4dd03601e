import { expect, fixture } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { systemPage } from './system-support.js';
import { roomAddress, waitUntil } from './support.js';

interface Written {
  readonly text: string;
  readonly left: number;
  readonly right: number;
}

/** What is written on canvases, with where it begins and ends in CSS pixels of the picture. */
const written = new Map<HTMLCanvasElement, Written[]>();
const prototype = CanvasRenderingContext2D.prototype;
const kept = Object.getOwnPropertyDescriptors(prototype);
const fillText = kept.fillText.value!;
const fillRect = kept.fillRect.value!;

function spy(): void {
  Object.assign(prototype, {
    fillText(this: CanvasRenderingContext2D, text: string, x: number, y: number) {
      const width = this.measureText(text).width;
      const left = this.textAlign === 'center' ? x - width / 2 : this.textAlign === 'right' ? x - width : x;
      const { a, e } = this.getTransform();
      const on = (value: number): number => (a * value + e) / a;
      const list = written.get(this.canvas) ?? [];
      list.push({ text, left: on(left), right: on(left + width) });
      written.set(this.canvas, list);
      fillText.call(this, text, x, y);
    },
    // A picture begins with its ground.
    fillRect(this: CanvasRenderingContext2D, x: number, y: number, width: number, height: number) {
      if (x === 0 && y === 0) written.delete(this.canvas);
      fillRect.call(this, x, y, width, height);
    },
  });
}

async function wrote(view: Element, text = /./): Promise<void> {
  view.scrollIntoView({ block: 'center' });
  await waitUntil(
    () => {
      const canvas = view.shadowRoot?.querySelector('canvas');
      return canvas && written.get(canvas)?.some((one) => text.test(one.text));
    },
    `${view.localName} stays blank`,
    { timeout: 15000 },
  );
}

function expectWithin(view: Element, words: readonly RegExp[]): void {
  const canvas = view.shadowRoot!.querySelector('canvas')!;
  const labels = written.get(canvas)!;
  const width = canvas.getBoundingClientRect().width;
  expect(width).to.be.within(286, 288);
  const said = labels.map(({ text }) => text).join(' ');
  for (const word of words) expect(said).to.match(word);
  for (const { text, left, right } of labels) {
    expect(left, `${text} begins`).to.be.at.least(-0.5);
    expect(right, `${text} ends`).to.be.at.most(width + 0.5);
  }
}

/** What a page of 320 px leaves between its margins. */
const narrow = 'width: 288px';

describe('labels of a picture on a page of 320 px', () => {
  before(spy);
  after(() => {
    Object.assign(prototype, { fillText, fillRect });
  });
  beforeEach(() => written.clear());

  for (const lang of ['en', 'de'])
    for (const [name, words] of Object.entries({
      seats: [/[34]\.60|[34],60/, /1\.20 m|1,20 m/],
      sources: [/0\.30|0,30/, /Phase/],
      remedy: [/filter/i],
    }))
      it(`do not leave it where places have no names: ringdown-${name}, ${lang}`, async () => {
        const study = await systemPage(`ringdown-${name}`, { style: narrow, lang });
        const view = study.querySelector(`ringdown-${name}`)!;
        await wrote(view);
        expectWithin(view, words);
      });

  it('do not leave it where recordings have long names: ringdown-response', async () => {
    const page = await fixture(
      `<div style="${narrow}"><ringdown-study no-files>
        <ringdown-recording src="${roomAddress(1.3)}" label="Console of the control room, left ear, second visit"></ringdown-recording>
        <ringdown-recording src="${roomAddress(0.4)}" label="Zuschauertribünenhinterwandplatz"></ringdown-recording>
        <ringdown-response></ringdown-response></ringdown-study></div>`,
    );
    const study = page.querySelector<RingdownStudy>('ringdown-study')!;
    await waitUntil(
      () => study.snapshot.recordings.length === 2 && study.snapshot.status === 'ready',
      'both',
      {
        timeout: 20000,
      },
    );
    const view = page.querySelector('ringdown-response')!;
    await wrote(view, /…$/);
    expectWithin(view, [/Console/, /second/, /Zuschauer\S*…/]);
  });
});
