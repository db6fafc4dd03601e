import { expect, fixture, html } from '@open-wc/testing';
import { emulateMedia, sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { addFiles, brokenFile, drawn, ready, room, roomAddress, shadow, waitUntil } from './support.js';

const whole = (style = ''): Promise<RingdownStudy> =>
  fixture<RingdownStudy>(
    html`<div style=${style}>
      <ringdown-study room=${room} src=${roomAddress()} label="Studio">
        <ringdown-waterfall></ringdown-waterfall>
        <ringdown-spectrogram></ringdown-spectrogram>
        <ringdown-ridges></ringdown-ridges>
      </ringdown-study>
    </div>`,
  ).then((page) => page.querySelector('ringdown-study')!);

describe('for everyone', () => {
  after(() => emulateMedia({ forcedColors: 'none', reducedMotion: 'no-preference', media: 'screen' }));

  const looks = { light: '', dark: 'background: #15191c; color: #dde2e1; padding: 1rem' };
  for (const [look, style] of Object.entries(looks))
    it(`axe finds nothing in the whole study, ${look}`, async function () {
      // Axe walks every cell of the table: many seconds on two busy cores.
      this.timeout(120000);
      const study = await whole(style);
      await ready(study);
      for (const name of ['waterfall', 'spectrogram']) await drawn(study.querySelector(`ringdown-${name}`)!);
      const ridges = study.querySelector('ringdown-ridges')!;
      for (const details of ridges.shadowRoot!.querySelectorAll('details')) details.open = true;
      expect(ridges.matches(':state(dark)')).to.equal(look === 'dark');
      await expect(study).to.be.accessible();
    });

  it('axe finds nothing while empty and after a refusal', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study><ringdown-ridges></ringdown-ridges></ringdown-study>`,
    );
    await expect(study).to.be.accessible();
    await addFiles(study, brokenFile());
    await study.updateComplete;
    await expect(study).to.be.accessible();
  });

  it('names a picture once and for all; what changes is said beside it', async () => {
    const study = await whole();
    await ready(study);
    const spectrogram = study.querySelector('ringdown-spectrogram')!;
    const canvas = await drawn(spectrogram);
    const name = canvas.getAttribute('aria-label');
    expect(name).to.contain('Studio');
    expect(canvas.getAttribute('role')).to.equal('img');
    const help = canvas.getAttribute('aria-describedby')!;
    expect(spectrogram.shadowRoot!.getElementById(help)!.textContent.length).to.be.greaterThan(20);
    study.study.setCursor({ frequencyHz: 50, timeSeconds: 0.2 });
    await spectrogram.updateComplete;
    expect(canvas.getAttribute('aria-label')).to.equal(name);
  });

  it('reaches everything with the Tab key, with no positive tabindex and no application role', async () => {
    const study = await whole();
    await ready(study);
    await drawn(study.querySelector('ringdown-waterfall')!);
    const reached = new Set<string>();
    shadow<HTMLButtonElement>(study, 'button').focus();
    for (let n = 0; n < 40; n += 1) {
      let active: Element | null = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      if (active)
        reached.add(`${active.localName} ${active.getAttribute('part') ?? active.textContent.trim()}`);
      await sendKeys({ press: 'Tab' });
    }
    for (const part of ['button file-button', 'button Plan', 'input frequency-slider', 'input time-slider'])
      expect([...reached], part).to.include(part);
    expect(
      [...reached].some((name) => /^button 4\d\.\d/.test(name)),
      'a row of the table',
    ).to.equal(true);
    const roots = [study, ...study.children].map(({ shadowRoot }) => shadowRoot!);
    for (const root of roots) {
      expect(root.querySelector('[role=application]')).to.equal(null);
      expect(
        [...root.querySelectorAll('[tabindex]')].every((node) => Number(node.getAttribute('tabindex')) <= 0),
      ).to.be.true;
    }
  });

  it('follows forced colours', async () => {
    const study = await whole();
    await ready(study);
    const spectrogram = study.querySelector('ringdown-spectrogram')!;
    const canvas = await drawn(spectrogram);
    await emulateMedia({ forcedColors: 'active' });
    expect(matchMedia('(forced-colors: active)').matches, 'the browser can force colours').to.equal(true);
    const expected = document.createElement('canvas').getContext('2d')!;
    expected.fillStyle = 'Canvas';
    expected.fillRect(0, 0, 1, 1);
    const ground = expected.getImageData(0, 0, 1, 1).data.join();
    await waitUntil(
      () =>
        canvas
          .getContext('2d')!
          .getImageData(1, canvas.height - 2, 1, 1)
          .data.join() === ground,
      'the ground of the system',
      { timeout: 5000 },
    );
    await emulateMedia({ forcedColors: 'none' });
  });

  it('prints black on white although the page is dark', async () => {
    const study = await whole('background: #15191c; color: #dde2e1');
    await ready(study);
    const spectrogram = study.querySelector('ringdown-spectrogram')!;
    const canvas = await drawn(spectrogram);
    const ground = (): string =>
      canvas
        .getContext('2d')!
        .getImageData(1, canvas.height - 2, 1, 1)
        .data.join();
    const dark = ground();
    window.dispatchEvent(new Event('beforeprint'));
    expect(ground()).to.equal('255,255,255,255');
    window.dispatchEvent(new Event('afterprint'));
    await waitUntil(() => ground() === dark, 'back on the screen');
  });

  it('fits a page 320 pixels wide', async () => {
    const study = await whole('inline-size: 320px');
    await ready(study);
    await drawn(study.querySelector('ringdown-spectrogram')!, 50);
    for (const element of [study, ...study.children]) {
      const inner = element.shadowRoot!.firstElementChild!;
      expect(inner.scrollWidth, element.localName).to.be.at.most(320);
    }
  });
});
