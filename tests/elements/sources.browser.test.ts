import { expect, fixture } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownSources } from '../../src/elements/sources/sources.js';
import { drawn, heard, shadow, shadowText, waitUntil } from './support.js';
import { systemPage, type SystemPage } from './system-support.js';

async function made(page: SystemPage = {}): Promise<RingdownSources> {
  const study = await systemPage('ringdown-sources', page);
  const view = study.querySelector<RingdownSources>('ringdown-sources')!;
  await waitUntil(() => view.system?.snapshot.matrix, 'the sums', { timeout: 20000 });
  await view.updateComplete;
  return view;
}

const settings = (view: RingdownSources) => {
  const { arrangement, design } = view.system!.snapshot;
  return arrangement.sources.map(({ key }) => design.settings[key]);
};

async function type(view: RingdownSources, label: string, text: string): Promise<void> {
  const field = shadow<HTMLInputElement>(view, `[aria-label="${label}"]`);
  field.focus();
  field.select();
  await sendKeys({ type: text });
  await sendKeys({ press: 'Tab' });
  await view.updateComplete;
}

const named = (view: RingdownSources): string[] =>
  [...view.shadowRoot!.querySelectorAll('[part=settings] tbody th')].map(({ textContent }) =>
    textContent.trim(),
  );

/** "In phase now" of one source, %. */
function phaseNow(view: RingdownSources, source: number): number {
  const rows = view.shadowRoot!.querySelectorAll('[part=settings] tbody tr:not(.filters)');
  return Number.parseInt(rows[source].children[6].textContent.trim().replace('−', '-'), 10);
}

describe('ringdown-sources', function () {
  this.timeout(90000);

  it('draws each source, the sum and the phase at a seat, and tells what is shared', async () => {
    const view = await made();
    const canvas = await drawn(view, 20);
    expect(shadowText(view, '.title')).to.contain('2 sources at 3 seats');
    expect(shadowText(view, 'figcaption')).to.contain('the peak of an impulse says nothing of it');
    const first = canvas.toDataURL();
    const seat = shadow<HTMLSelectElement>(view, '[part=seat]');
    seat.selectedIndex = 1;
    seat.dispatchEvent(new Event('change'));
    await waitUntil(() => canvas.toDataURL() !== first, 'another seat');
    const table = shadow(view, '.twin table');
    expect(table.querySelectorAll('tbody tr').length).to.be.greaterThan(12);
    expect(table.textContent).to.match(/\d°/);
    expect(table.textContent).not.to.match(/NaN|Infinity|undefined|null/);
    const slider = shadow<HTMLInputElement>(view, '[part=frequency-slider]');
    slider.focus();
    await sendKeys({ press: 'PageUp' });
    await view.updateComplete;
    expect(shadowText(view, '.readout')).to.match(/Hz: sum -?\d/);
  });

  it('turns gain, delay and polarity live, and tells the page', async () => {
    const view = await made();
    const canvas = await drawn(view, 20);
    const [, second] = named(view);
    const before = canvas.toDataURL();
    const events = await heard(view, 'ringdown-study-change', () =>
      type(view, `Gain of ${second}, dB`, '-6'),
    );
    expect(events.length).to.equal(1);
    await type(view, `Delay of ${second}, ms`, '4.5');
    shadow<HTMLInputElement>(view, `[aria-label="Invert ${second}"]`).click();
    await view.updateComplete;
    expect(settings(view)[1]).to.deep.include({ gainDb: -6, delaySeconds: 0.0045, inverted: true });
    await waitUntil(() => canvas.toDataURL() !== before, 'another picture');
    await type(view, `Delay of ${second}, ms`, '-3');
    expect(settings(view)[1].delaySeconds, 'no source hears the future').to.equal(0);
    shadow<HTMLButtonElement>(view, '[part=reset]').click();
    expect(Object.keys(view.system!.snapshot.design.settings)).to.deep.equal([]);
  });

  it('adds filters, and refuses one that no processor has', async () => {
    const view = await made();
    shadow<HTMLDetailsElement>(view, '.filters details').open = true;
    shadow<HTMLButtonElement>(view, '[part=add-filter]').click();
    await view.updateComplete;
    expect(settings(view)[0].bands).to.deep.equal([{ kind: 'all-pass', frequencyHz: 60, gainDb: 0, q: 0.7 }]);
    const kind = shadow<HTMLSelectElement>(view, '.band select');
    kind.selectedIndex = 0;
    kind.dispatchEvent(new Event('change'));
    await view.updateComplete;
    await type(view, 'Hz', '45');
    expect(settings(view)[0].bands[0]).to.deep.include({ kind: 'peaking', frequencyHz: 45 });
    await type(view, 'Hz', '5000');
    expect(settings(view)[0].bands[0].frequencyHz, 'the nearest that is allowed').to.equal(1000);
    await expect(view).to.be.accessible();
    shadow<HTMLButtonElement>(view, '.band button').click();
    await view.updateComplete;
    expect(settings(view)[0].bands).to.deep.equal([]);
  });

  it('brings the sources into phase over all seats, with no delay below 0', async () => {
    const view = await made();
    const overSeats = async (): Promise<number> => {
      let sum = 0;
      for (const seat of [0, 1, 2]) {
        const select = shadow<HTMLSelectElement>(view, '[part=seat]');
        select.selectedIndex = seat;
        select.dispatchEvent(new Event('change'));
        await view.updateComplete;
        sum += phaseNow(view, 1);
      }
      return sum;
    };
    const before = await overSeats();
    shadow<HTMLButtonElement>(view, '[part=align]').click();
    await view.updateComplete;
    expect(await overSeats()).to.be.greaterThan(before);
    for (const { delaySeconds } of settings(view)) expect(delaySeconds).to.be.at.least(0);
    expect(Math.min(...settings(view).map(({ delaySeconds }) => delaySeconds))).to.equal(0);
  });

  it('looks for better settings, says what they rest on, and takes one', async () => {
    const view = await made();
    await waitUntil(() => view.system!.snapshot.before, 'the ridges', { timeout: 60000 });
    shadow<HTMLButtonElement>(view, '[part=propose]').click();
    await waitUntil(() => view.shadowRoot!.querySelector('[part=cancel]'), 'it looks');
    await waitUntil(() => view.system!.snapshot.proposal, 'a proposal', { timeout: 60000 });
    await view.updateComplete;
    expect(shadowText(view, '.proposal')).to.contain('No point was measured twice');
    expect(shadowText(view, '.proposal')).to.contain('measure again at every seat');
    const rows = [...view.shadowRoot!.querySelectorAll('[part=trade-off] tbody tr')];
    const variance = (row: Element): number => Number.parseFloat(row.children[1].textContent.trim());
    expect(variance(rows[1])).to.be.lessThan(variance(rows[0]));
    for (const one of view.shadowRoot!.querySelectorAll('details')) one.open = true;
    await expect(view).to.be.accessible();
    rows[1].querySelector('button')!.click();
    const { trims } = view.system!.snapshot.proposal!;
    for (const [k, { gainDb, delaySeconds, inverted }] of settings(view).entries())
      expect({ gainDb, delaySeconds, inverted }).to.deep.equal({ ...trims[k] });
  });

  it('says why there is nothing', async () => {
    const empty = await fixture(`<ringdown-sources></ringdown-sources>`);
    expect(shadowText(empty, '.veil')).to.equal('No recording yet.');
    const study = await systemPage('ringdown-sources', { clock: 'none' });
    const view = study.querySelector('ringdown-sources')!;
    await waitUntil(() => shadowText(view, '.veil').includes('share its time zero'), 'the reason', {
      timeout: 20000,
    });
    await expect(view).to.be.accessible();
  });

  for (const [look, style] of Object.entries({
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}; moved, it is still there, and prints black on white`, async () => {
      const view = await made({ style, lang: 'de' });
      await drawn(view, 20);
      await expect(view).to.be.accessible();
      if (look === 'narrow') expect(view.scrollWidth).to.be.at.most(320);
      const home = document.createElement('section');
      view.closest('ringdown-study')!.append(home);
      home.append(view);
      await drawn(view, 20);
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
