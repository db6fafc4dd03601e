import { aTimeout, expect, fixture, html } from '@open-wc/testing';
import { emulateMedia, sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownReport } from '../../src/elements/report/report.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { heard, ready, room, roomAddress, shadow, shadowText, waitUntil } from './support.js';

interface Page {
  readonly style?: string;
  readonly lang?: string;
}

async function made({ style = '', lang = 'en' }: Page = {}): Promise<RingdownReport> {
  const place = ['3.6 1.5 1.2', '0.3 0.3 0.3'];
  const page = await fixture(
    html`<div style=${style} lang=${lang}>
      <ringdown-study room=${room} to="120" no-files>
        <ringdown-recording
          src=${roomAddress(1.3)}
          label="before"
          stage="before"
          seat=${place[0]}
          source=${place[1]}
        ></ringdown-recording>
        <ringdown-recording
          src=${roomAddress(0.4)}
          label="after"
          stage="after"
          seat=${place[0]}
          source=${place[1]}
        ></ringdown-recording>
        <ringdown-report></ringdown-report>
      </ringdown-study>
    </div>`,
  );
  const study = page.querySelector<RingdownStudy>('ringdown-study')!;
  const report = page.querySelector('ringdown-report')!;
  await waitUntil(() => study.snapshot.recordings.length === 2, 'the recordings', { timeout: 20000 });
  await ready(study);
  await waitUntil(
    () =>
      (report.shadowRoot?.querySelectorAll('[part=sheet] svg').length ?? 0) >= 5 &&
      !report.input?.pair.progress,
    'the sheet',
    { timeout: 40000 },
  );
  await aTimeout(400);
  return report;
}

/** What has the focus, through shadow roots. */
function focused(): Element | null {
  let active: Element | null = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
}

describe('ringdown-report', function () {
  this.timeout(120000);

  it('sets the sheet of what was measured, and again when something is typed', async () => {
    const report = await made();
    expect(shadowText(report, '[part=sheet] h2')).to.contain('Before and after');
    expect(shadowText(report, '[part=sheet] .ridges')).to.match(/41\.\d+ ± /);
    expect(shadowText(report, '[part=sheet]')).not.to.contain('Quillmarsh');
    const title = shadow<HTMLInputElement>(report, '.form input');
    title.focus();
    const events = await heard(report, 'ringdown-study-change', () => sendKeys({ type: 'Live <b>room</b>' }));
    expect(events.length).to.equal('Live <b>room</b>'.length);
    expect((events[0].detail as { what: string }).what).to.equal('sheet');
    await waitUntil(() => shadowText(report, '[part=sheet] h1') === 'Live <b>room</b>', 'the title');
    expect(shadow(report, '[part=sheet] h1').children.length).to.equal(0);
    expect(report.closest('ringdown-study')!.snapshot.sheet.title).to.equal('Live <b>room</b>');
  });

  it('takes a decision on a ridge by keys alone', async () => {
    const report = await made();
    shadow(report, '[part=decisions] summary').focus();
    await sendKeys({ press: 'Enter' });
    await sendKeys({ press: 'Tab' });
    expect(focused()!.localName).to.equal('select');
    for (let n = 0; n < 5; n += 1) await sendKeys({ press: 'ArrowDown' });
    await sendKeys({ press: 'Tab' });
    await sendKeys({ type: 'six panels' });
    await sendKeys({ press: 'Tab' });
    await waitUntil(() => shadowText(report, '[part=sheet] .ridges').includes('six panels'), 'the decision');
    const [decision] = report.snapshot!.sheet.decisions;
    expect([decision.action, decision.note]).to.deep.equal(['cut', 'six panels']);
  });

  it('saves one HTML file and prints the sheet alone', async () => {
    const report = await made();
    const text = report.toHtml()!;
    expect(text).to.match(/^<!doctype html>/);
    expect(text).not.to.match(/<script|<link/);
    let printed = 0;
    const button = shadow<HTMLButtonElement>(report, '[part=print]');
    const print = window.print.bind(window);
    try {
      window.print = () => expect.fail('the page around was printed');
      // The frame's own print dialog is looked at as soon as there is a frame.
      const own = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow')!;
      Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
        ...own,
        get(this: HTMLIFrameElement): Window | null {
          const window = own.get!.call(this) as Window | null;
          if (window) window.print = () => void (printed += 1);
          return window;
        },
      });
      button.focus();
      await sendKeys({ press: 'Enter' });
      await waitUntil(() => printed === 1, 'the print dialog', { timeout: 10000 });
      const view = shadow<HTMLIFrameElement>(report, 'iframe').contentWindow!;
      expect(view.document.querySelectorAll('svg').length).to.equal((text.match(/<svg /g) ?? []).length);
      expect(view.document.querySelector('form, button, input')).to.equal(null);
      expect(getComputedStyle(view.document.querySelector('.sheet h2')!).color).to.equal('rgb(0, 92, 115)');
      Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', own);
    } finally {
      window.print = print;
    }
    expect(printed).to.equal(1);
    report.remove();
    expect(report.shadowRoot!.querySelector('iframe')).to.equal(null);
  });

  it('prints, with the page, nothing of its form', async () => {
    const report = await made({ style: 'background: #15191c; color: #dde2e1' });
    try {
      await emulateMedia({ media: 'print' });
      expect(shadow(report, '.form').getBoundingClientRect().height).to.equal(0);
      const sheet = shadow(report, '.sheet');
      expect(getComputedStyle(sheet).color).to.equal('rgb(22, 25, 27)');
      expect(sheet.getBoundingClientRect().height).to.be.greaterThan(800);
    } finally {
      await emulateMedia({ media: 'screen' });
    }
  });

  for (const [look, style] of Object.entries({
    light: '',
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}`, async () => {
      const report = await made({ style, lang: 'de' });
      for (const details of report.shadowRoot!.querySelectorAll('details')) details.open = true;
      await expect(report).to.be.accessible();
      expect(shadowText(report, '[part=sheet] .ridges')).to.match(/41,\d+ ± /);
      if (look === 'narrow') expect(report.scrollWidth).to.be.at.most(320);
    });

  it('says that there is nothing yet, and survives being moved', async () => {
    const empty = await fixture<RingdownReport>(html`<ringdown-report></ringdown-report>`);
    expect(shadowText(empty, '[part=message]')).to.equal('No recording yet.');
    const report = await made();
    const study = report.closest('ringdown-study')!;
    const home = document.createElement('section');
    study.append(home);
    home.append(report);
    await waitUntil(
      () => report.shadowRoot!.querySelectorAll('[part=sheet] svg').length >= 5,
      'the sheet again',
      { timeout: 20000 },
    );
  });
});
