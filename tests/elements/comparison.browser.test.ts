import { expect, fixture } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownComparison } from '../../src/elements/comparison/comparison.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { encodeWav } from '../../src/signal/wav-write.js';
import { Rng } from '../../src/signal/random.js';
import { textsOfPng } from '../../src/draw/png.js';
import { drawn, room, roomAddress, shadow, shadowText, waitUntil } from './support.js';

interface Page {
  readonly style?: string;
  readonly lang?: string;
  readonly stages?: boolean;
  readonly attributes?: string;
}

/** One seat before (1.3 s) and after (0.5 s), and the view. */
async function made({
  style = '',
  lang = 'en',
  stages = true,
  attributes = '',
}: Page = {}): Promise<RingdownComparison> {
  const stage = (word: string): string => (stages ? `stage="${word}"` : '');
  const box = await fixture(
    `<div style="${style}" lang="${lang}"><ringdown-study room="${room}" no-files>
      <ringdown-recording src="${roomAddress(1.3)}" label="desk 1" seat="3.7 1.4 1.2" ${stage('before')}></ringdown-recording>
      <ringdown-recording src="${roomAddress(0.5)}" label="desk 2" seat="${stages ? '3.7 1.4 1.2' : '2 1.4 1.2'}" ${stage('after')}></ringdown-recording>
      <ringdown-comparison ${attributes}></ringdown-comparison></ringdown-study></div>`,
  );
  const view = box.querySelector<RingdownComparison>('ringdown-comparison')!;
  await waitUntil(() => view.shadowRoot!.querySelector('[part=ridges] tbody tr'), 'the ridges', {
    timeout: 40000,
  });
  await view.updateComplete;
  return view;
}

const rows = (view: RingdownComparison): string[] =>
  [...view.shadowRoot!.querySelectorAll('[part=ridges] tbody tr')].map(({ textContent }) =>
    textContent.replace(/\s+/g, ' ').trim(),
  );

describe('ringdown-comparison', function () {
  this.timeout(90000);

  it('sets before beside after on one scale, with the difference and each ridge in both', async () => {
    const view = await made();
    const canvas = await drawn(view, 200);
    expect(shadowText(view, '.title')).to.contain('before, point 3.70, 1.40, 1.20 m and after');
    const slow = rows(view).find((text) => text.startsWith('41.9 Hz'))!;
    expect(slow)
      .to.match(/1\.30.* s/)
      .and.match(/0\.50.* s/)
      .and.contain('yes, shorter');
    expect(shadowText(view, '[part=summary]')).to.match(/Of \d+ ridges? in the first, [1-9]/);
    expect(shadowText(view, '[part=levels]')).to.contain('compare decays only');
    expect(shadowText(view, 'figcaption')).to.contain('Sliding Hann window').and.contain('20 dB either way');
    const twin = shadow(view, '.twin table');
    expect(twin.querySelectorAll('tbody tr').length).to.be.greaterThan(12);
    expect(twin.textContent)
      .to.match(/-\d+\.\d\sdB/)
      .and.contain('–');
    expect(twin.textContent).not.to.match(/NaN|Infinity|undefined|null/);
    const whole = canvas.toDataURL();
    shadow<HTMLInputElement>(view, '[part=difference]').click();
    await waitUntil(() => canvas.toDataURL() !== whole, 'without the difference');
    const form = shadow<HTMLSelectElement>(view, '[part=form]');
    const maps = canvas.toDataURL();
    form.selectedIndex = 1;
    form.dispatchEvent(new Event('change'));
    await waitUntil(() => canvas.toDataURL() !== maps, 'surfaces');
  });

  it('reads both and their difference under a cursor moved by key', async () => {
    const view = await made();
    await drawn(view, 200);
    view.study!.setCursor({ frequencyHz: 41.9, timeSeconds: 0.4 });
    shadow<HTMLInputElement>(view, '[part=time-slider]').focus();
    await sendKeys({ press: 'ArrowRight' });
    await view.updateComplete;
    expect(shadowText(view, '.readout')).to.match(/Hz at 0\.41 s: -?\d+\.\d dB, -\d+\.\d dB; -\d+\.\d dB/);
  });

  it('compares two recordings that name no stage, and those that the page or the user names', async () => {
    const view = await made({ stages: false });
    expect(shadowText(view, '.title')).to.contain('desk 1 and desk 2');
    const second = shadow<HTMLSelectElement>(view, '[part=second]');
    expect([...second.options].map(({ text }) => text)).to.include.members(['desk 1', 'desk 2']);
    second.selectedIndex = [...second.options].findIndex(({ text }) => text === 'desk 1');
    second.dispatchEvent(new Event('change'));
    await waitUntil(() => shadowText(view, '.title').includes('desk 1 and desk 1'), 'the same twice');
    await waitUntil(
      () => rows(view).length > 0 && rows(view).every((text) => / no$/.test(text)),
      'nothing changed',
      {
        timeout: 20000,
      },
    );
    const named = await made({ attributes: 'first="desk 2" second="before"' });
    await waitUntil(() => shadowText(named, '.title').startsWith('desk 2 and before'), 'the named');
  });

  it('is saved as a vector document and as PNG with both files as its origin', async () => {
    const view = await made();
    await drawn(view, 200);
    const text = view.toSvg({ cssWidth: 1100, cssHeight: 420 })!;
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).to.equal(null);
    const origin = JSON.parse(parsed.querySelector('metadata')!.textContent) as { files: { hash: string }[] };
    const hashes = view.snapshot!.recordings.map(({ hash }) => hash);
    expect(origin.files.map(({ hash }) => hash)).to.deep.equal(hashes);
    expect(text.replace(/base64,[^"]+/g, '')).not.to.match(/NaN|Infinity|undefined|currentColor|var\(/);
    const file = (await view.toPng(1600))!;
    expect((await createImageBitmap(file)).width).to.equal(1600);
    expect(textsOfPng(new Uint8Array(await file.arrayBuffer())).Title).to.contain('before');
  });

  it('does not take for gone what was not read: a recording all noise says so in place of the table', async () => {
    const random = new Rng(9);
    const noise = Float64Array.from({ length: 12000 }, () => 0.1 * (2 * random.uniform() - 1));
    const bytes = encodeWav({ channels: [noise], sampleRate: 8000, encoding: 'float-32' });
    const address = URL.createObjectURL(new Blob([bytes.slice().buffer], { type: 'audio/wav' }));
    const box = await fixture(
      `<div><ringdown-study room="${room}" no-files>
        <ringdown-recording src="${roomAddress(1.3)}" label="desk" seat="3.7 1.4 1.2" stage="before"></ringdown-recording>
        <ringdown-recording src="${address}" label="noise" seat="3.7 1.4 1.2" stage="after"></ringdown-recording>
        <ringdown-comparison></ringdown-comparison></ringdown-study></div>`,
    );
    const view = box.querySelector('ringdown-comparison')!;
    await waitUntil(() => view.shadowRoot!.querySelector('[part=unread]'), 'what was not read', {
      timeout: 40000,
    });
    expect(shadowText(view, '[part=unread]')).to.match(/after.*nothing was read.*\.$/);
    expect(view.shadowRoot!.querySelector('[part=summary]')).to.equal(null);
  });

  it('says why there is nothing to compare', async () => {
    const box = await fixture(
      `<div><ringdown-comparison src="${roomAddress()}" label="alone"></ringdown-comparison></div>`,
    );
    const view = box.querySelector('ringdown-comparison')!;
    await waitUntil(() => shadowText(view, '.veil').includes('One recording alone'), 'the reason', {
      timeout: 30000,
    });
    await expect(view).to.be.accessible();
    const empty = await fixture(`<ringdown-comparison></ringdown-comparison>`);
    expect(shadowText(empty, '.veil')).to.equal('No recording yet.');
  });

  for (const [look, style] of Object.entries({
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}; moved, it is still there, and prints black on white`, async () => {
      const view = await made({ style, lang: 'de' });
      await drawn(view, 100);
      for (const one of view.shadowRoot!.querySelectorAll('details')) one.open = true;
      await expect(view).to.be.accessible();
      if (look === 'narrow') expect(view.scrollWidth).to.be.at.most(320);
      const home = document.createElement('section');
      view.closest<RingdownStudy>('ringdown-study')!.append(home);
      home.append(view);
      await waitUntil(() => view.shadowRoot!.querySelector('canvas'), 'the picture again', {
        timeout: 20000,
      });
      await drawn(view, 100);
      const canvas = shadow<HTMLCanvasElement>(view, 'canvas');
      window.dispatchEvent(new Event('beforeprint'));
      const ground = canvas
        .getContext('2d')!
        .getImageData(1, canvas.height - 2, 1, 1)
        .data.join();
      expect(ground).to.equal('255,255,255,255');
      window.dispatchEvent(new Event('afterprint'));
    });
});
