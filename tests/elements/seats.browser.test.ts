import { expect, fixture } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownSeats } from '../../src/elements/seats/seats.js';
import { drawn, heard, shadow, shadowText, waitUntil } from './support.js';
import { systemPage, type SystemPage } from './system-support.js';

async function made(page: SystemPage = {}): Promise<RingdownSeats> {
  const study = await systemPage('ringdown-seats', page);
  const seats = study.querySelector<RingdownSeats>('ringdown-seats')!;
  await waitUntil(() => seats.system?.snapshot.matrix, 'the sums', { timeout: 20000 });
  await seats.updateComplete;
  return seats;
}

const cells = (view: RingdownSeats, part: string): string[][] =>
  [...view.shadowRoot!.querySelectorAll(`[part=${part}] tbody tr`)].map((row) =>
    [...row.children].map((cell) => (cell.querySelector('input')?.value ?? cell.textContent).trim()),
  );

describe('ringdown-seats', function () {
  this.timeout(90000);

  it('shows every seat with the mean, the figures of the spread and ridges by seat', async () => {
    const view = await made();
    await drawn(view, 20);
    expect(shadowText(view, '.title')).to.contain('2 sources at 3 seats');
    expect(shadowText(view, 'figcaption')).to.contain('Mean spatial variance: the variance');
    expect(shadowText(view, 'figure .plain')).to.match(/\d dB²/);
    await waitUntil(() => cells(view, 'ridges').length > 2, 'ridges', { timeout: 60000 });
    for (const row of cells(view, 'ridges')) {
      expect(row).to.have.length(6);
      expect(row[2]).to.match(/^at (every|most|some|one)/);
    }
    expect(cells(view, 'grid')).to.have.length(2);
    expect(shadowText(view, '.twin table')).not.to.match(/NaN|Infinity|undefined|null/);
    const details = shadow<HTMLDetailsElement>(view, '.twin');
    details.open = true;
    expect(view.shadowRoot!.querySelectorAll('.twin tbody tr').length).to.equal(16);
    for (const one of view.shadowRoot!.querySelectorAll('details')) one.open = true;
    await expect(view).to.be.accessible();
  });

  it('weighs the seats, and tells the page', async () => {
    const view = await made();
    const before = shadowText(view, 'figure .plain');
    const field = shadow<HTMLInputElement>(view, '[part=weights] input');
    field.focus();
    field.select();
    const events = await heard(view, 'ringdown-study-change', async () => {
      await sendKeys({ type: '0' });
      await sendKeys({ press: 'Tab' });
    });
    expect(events.map(({ detail }) => (detail as { what: string }).what)).to.deep.equal(['design']);
    await view.updateComplete;
    expect(shadowText(view, 'figure .plain')).not.to.equal(before);
  });

  it('shows the design and a later stage on the same scale', async () => {
    const view = await made({ stages: ['before', 'after'] });
    const { system } = view;
    const key = system!.snapshot.arrangement.sources[1].key;
    system!.setSource(key, { inverted: true, delaySeconds: 0.006 });
    await waitUntil(() => system!.snapshot.afterMatrix, 'the later stage', { timeout: 30000 });
    await view.updateComplete;
    const select = shadow<HTMLSelectElement>(view, '[part=stage]');
    expect([...select.options].map(({ text }) => text.trim())).to.deep.equal([
      '“before” as measured, all sources alike',
      'through the design',
      '“after” as measured, all sources alike',
    ]);
    const figures = view.shadowRoot!.querySelector('figure .plain')!;
    expect(figures.querySelectorAll('tbody tr').length).to.equal(3);
    const canvas = await drawn(view, 20);
    const designed = canvas.toDataURL();
    select.selectedIndex = 2;
    select.dispatchEvent(new Event('change'));
    await waitUntil(() => canvas.toDataURL() !== designed, 'another picture');
  });

  it('says what is missing: points, a common clock, all', async () => {
    const gap = await made({ missing: ['B sofa'] });
    expect(shadowText(gap, '[part=grid] .missing')).to.equal('missing');
    expect(shadowText(gap, 'figcaption')).to.contain('1 seat lacks a source and is left out');
    const study = await systemPage('ringdown-seats', { clock: 'none' });
    const view = study.querySelector<RingdownSeats>('ringdown-seats')!;
    await waitUntil(() => shadowText(view, '.veil').includes('share its time zero'), 'the reason', {
      timeout: 20000,
    });
    const clock = shadow<HTMLInputElement>(view, '[part=clock]');
    shadow<HTMLDetailsElement>(view, '[part=points]').open = true;
    await expect(view).to.be.accessible();
    clock.click();
    await waitUntil(() => view.system!.snapshot.matrix, 'sums after all', { timeout: 20000 });
    const empty = await fixture(`<ringdown-seats></ringdown-seats>`);
    expect(shadowText(empty, '.veil')).to.equal('No recording yet.');
  });

  it('reads source, seat and stage from the names, to be corrected', async () => {
    const study = await systemPage('ringdown-seats', { named: false });
    const view = study.querySelector<RingdownSeats>('ringdown-seats')!;
    await waitUntil(() => view.shadowRoot!.querySelector('[part=guess]'), 'the table');
    shadow<HTMLButtonElement>(view, '[part=guess]').click();
    await waitUntil(() => view.system!.snapshot.arrangement.sources.length === 2, 'sources');
    expect(view.system!.snapshot.arrangement.seats.length).to.equal(3);
    expect(study.snapshot.recordings.map(({ stage }) => stage)).to.deep.equal(Array(6).fill('before'));
    await view.updateComplete;
    const field = shadow<HTMLInputElement>(view, '.points input');
    field.value = 'left';
    field.dispatchEvent(new Event('change'));
    expect(study.snapshot.recordings[0].sourceName).to.equal('left');
  });

  for (const [look, style] of Object.entries({
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}; moved, it is still there`, async () => {
      const view = await made({ style, lang: 'de' });
      await drawn(view, 20);
      await expect(view).to.be.accessible();
      expect(shadowText(view, 'figure .plain')).to.match(/\d,\d dB²/);
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
