import { expect, fixture, html } from '@open-wc/testing';
import { sendKeys, sendMouse } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownRidges } from '../../src/elements/ridges/ridges.js';
import type { RingdownSpectrogram } from '../../src/elements/spectrogram/spectrogram.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import type { RingdownWaterfall } from '../../src/elements/waterfall/waterfall.js';
import type { StudySnapshot } from '../../src/study/types.js';
import {
  aTimeout,
  drawn,
  heard,
  ready,
  room,
  roomAddress,
  shadow,
  shadowText,
  slowHz,
  slowRidge,
  waitUntil,
} from './support.js';

const linked = async (): Promise<{
  study: RingdownStudy;
  waterfall: RingdownWaterfall;
  spectrogram: RingdownSpectrogram;
  ridges: RingdownRidges;
}> => {
  const study = await fixture<RingdownStudy>(
    html`<ringdown-study room=${room} src=${roomAddress()} label="Studio">
      <ringdown-waterfall></ringdown-waterfall>
      <ringdown-spectrogram></ringdown-spectrogram>
      <ringdown-ridges></ringdown-ridges>
    </ringdown-study>`,
  );
  await ready(study);
  return {
    study,
    waterfall: study.querySelector('ringdown-waterfall')!,
    spectrogram: study.querySelector('ringdown-spectrogram')!,
    ridges: study.querySelector('ringdown-ridges')!,
  };
};

const centre = (element: Element): [number, number] => {
  const box = element.getBoundingClientRect();
  return [Math.round(box.left + box.width / 2), Math.round(box.top + box.height / 2)];
};

describe('the views', () => {
  afterEach(() => sendMouse({ type: 'move', position: [0, 0] }));

  for (const name of ['waterfall', 'spectrogram', 'ridges'])
    it(`ringdown-${name} works alone with src and room`, async () => {
      const element = await fixture<HTMLElement & { snapshot: StudySnapshot | null }>(
        `<ringdown-${name} src="${roomAddress()}" room="${room}" label="Studio"></ringdown-${name}>`,
      );
      const snapshot = await ready(element);
      expect(snapshot.room!.size.widthMetres).to.equal(4.1);
      expect(snapshot.diagnosis!.ridges[0].frequencyHz).to.be.closeTo(slowHz, 0.3);
      if (name === 'ridges') expect(shadowText(element, 'caption')).to.equal('Ridges of Studio');
      else await drawn(element);
    });

  it('ringdown-ridges shows the longest decays found so far while the fit refines them', async () => {
    const ridges = await fixture<RingdownRidges>(html`<ringdown-ridges></ringdown-ridges>`);
    const captions = new Set<string>();
    const watch = new MutationObserver(() => {
      const first = ridges.shadowRoot!.querySelector('.first caption');
      if (first) captions.add(first.textContent.trim());
    });
    watch.observe(ridges.shadowRoot!, { subtree: true, childList: true, characterData: true });
    ridges.src = roomAddress(1.17);
    await ready(ridges);
    watch.disconnect();
    expect([...captions].join()).to.match(/^First answer, being refined: the \d longest decays$/);
    expect(ridges.shadowRoot!.querySelector('.first')).to.equal(null);
  });

  it('takes src set by a script after it is in the page', async () => {
    const element = document.createElement('ringdown-spectrogram');
    (await fixture(html`<div></div>`)).append(element);
    element.src = roomAddress();
    await ready(element);
    await drawn(element);
  });

  it('beside a study finds it by for, also when the study comes later', async () => {
    const page = await fixture(html`<div><ringdown-ridges for="later"></ringdown-ridges></div>`);
    const ridges = page.querySelector('ringdown-ridges')!;
    await aTimeout(50);
    const study = document.createElement('ringdown-study');
    study.id = 'later';
    study.src = roomAddress();
    page.append(study);
    await ready(ridges);
    expect(ridges.study).to.equal(study.study);
  });

  it('says that there is no such study', async () => {
    const ridges = await fixture<RingdownRidges>(html`<ringdown-ridges for="nowhere"></ringdown-ridges>`);
    await waitUntil(() => shadowText(ridges, '.veil').includes('“nowhere”'), 'a sentence', { timeout: 5000 });
  });

  it('goes to another study when moved into it', async () => {
    const page = await fixture(
      html`<div>
        <ringdown-study src=${roomAddress()}><ringdown-ridges></ringdown-ridges></ringdown-study>
        <ringdown-study src=${roomAddress(0.9)}></ringdown-study>
      </div>`,
    );
    const [first, second] = page.querySelectorAll('ringdown-study');
    const ridges = page.querySelector('ringdown-ridges')!;
    await ready(first);
    await ready(second);
    expect(ridges.study).to.equal(first.study);
    second.append(ridges);
    await aTimeout(0);
    expect(ridges.study).to.equal(second.study);
  });

  it('keeps two studies on a page apart', async () => {
    const page = await fixture(
      html`<div>
        <ringdown-study src=${roomAddress()}><ringdown-spectrogram></ringdown-spectrogram></ringdown-study>
        <ringdown-study src=${roomAddress(0.9)}><ringdown-spectrogram></ringdown-spectrogram></ringdown-study>
      </div>`,
    );
    const [first, second] = page.querySelectorAll('ringdown-study');
    await ready(first);
    await ready(second);
    first.study.setCursor({ frequencyHz: 50, timeSeconds: 0.1 });
    expect(second.snapshot.cursor).to.equal(null);
    expect(slowRidge(first.snapshot).decayTimeSeconds).to.be.closeTo(1.3, 0.1);
    expect(slowRidge(second.snapshot).decayTimeSeconds).to.be.closeTo(0.9, 0.08);
  });

  it('links its cursor with the others through the study', async () => {
    const { study, waterfall, spectrogram } = await linked();
    const canvas = await drawn(spectrogram);
    canvas.scrollIntoView({ block: 'center' });
    const events = await heard(study, 'ringdown-cursor-change', async () => {
      await sendMouse({ type: 'move', position: centre(canvas) });
      await waitUntil(() => study.snapshot.cursor !== null, 'a cursor');
    });
    expect(events.length).to.be.greaterThan(0);
    expect(events[0].target).to.equal(spectrogram);
    const { frequencyHz } = study.snapshot.cursor!;
    // The middle of a logarithmic axis from 20 to 200 Hz, give or take the margins of the plot and the slice beside it.
    expect(frequencyHz).to.be.within(60, 90);
    await waterfall.updateComplete;
    const readout = shadowText(waterfall, '.readout');
    expect(readout).to.equal(shadowText(spectrogram, '.readout'));
    expect(readout).to.contain(`${frequencyHz.toFixed(1)}`);
    await sendMouse({ type: 'move', position: [0, 0] });
    await waitUntil(() => study.snapshot.cursor === null, 'the cursor leaves with the pointer');
  });

  it('moves the cursor from the keyboard with spoken values', async () => {
    const { study, spectrogram } = await linked();
    await spectrogram.updateComplete;
    const slider = shadow<HTMLInputElement>(spectrogram, '[part=frequency-slider]');
    const other = shadow<HTMLInputElement>(spectrogram, '[part=time-slider]');
    slider.focus();
    const events = await heard(study, 'ringdown-cursor-change', () => sendKeys({ press: 'ArrowRight' }));
    expect(events.length).to.equal(1);
    const { cursor, grid } = study.snapshot;
    await spectrogram.updateComplete;
    expect(slider.getAttribute('aria-valuetext')).to.match(/^\d+\.\d\sHz$/);
    expect([...grid!.frequenciesHz]).to.include(cursor!.frequencyHz);
    other.focus();
    await sendKeys({ press: 'ArrowRight' });
    expect(study.snapshot.cursor!.timeSeconds).to.equal(grid!.timesSeconds[1]);
    await waitUntil(() => shadowText(spectrogram, '[role=status]').includes('dB'), 'the read-out is spoken');
  });

  it('selects a ridge everywhere from a row of the table, by pointer and by keyboard', async () => {
    const { study, ridges } = await linked();
    await ridges.updateComplete;
    const button = shadow<HTMLButtonElement>(ridges, 'tbody tr button');
    const events = await heard(study, 'ringdown-ridge-select', () => button.click());
    expect(events.map(({ detail }) => (detail as { ridge: number }).ridge)).to.deep.equal([0]);
    expect(study.snapshot.selectedRidge).to.equal(0);
    await ridges.updateComplete;
    expect(button.getAttribute('aria-pressed')).to.equal('true');
    button.focus();
    await sendKeys({ press: 'Enter' });
    expect(study.snapshot.selectedRidge).to.equal(null);
  });

  it('tells nobody of what the page itself sets', async () => {
    const { study, ridges } = await linked();
    const types = ['ringdown-cursor-change', 'ringdown-ridge-select', 'ringdown-study-change'];
    for (const type of types) {
      const events = await heard(study, type, async () => {
        study.study.setCursor({ frequencyHz: 40, timeSeconds: 0.2 });
        study.study.selectRidge(0);
        study.setAttribute('range', type === types[0] ? '40' : '45');
        await ready(study);
      });
      expect(events.length, type).to.equal(0);
    }
    await ridges.updateComplete;
    expect(shadow(ridges, 'tbody tr').className).to.equal('selected');
  });

  it('turns by pointer, by viewpoints and by sliders, and leaves the wheel to the page', async () => {
    const { waterfall } = await linked();
    const canvas = await drawn(waterfall);
    canvas.scrollIntoView({ block: 'center' });
    const [corner, plan] = [/Corner/, /Plan/].map((name) =>
      [...waterfall.shadowRoot!.querySelectorAll('button')].find(({ textContent }) =>
        name.test(textContent ?? ''),
      ),
    );
    expect(corner!.getAttribute('aria-pressed')).to.equal('true');
    const [x, y] = centre(canvas);
    await sendMouse({ type: 'move', position: [x, y] });
    await sendMouse({ type: 'down' });
    await sendMouse({ type: 'move', position: [x + 60, y + 20] });
    await sendMouse({ type: 'up' });
    await waterfall.updateComplete;
    expect(corner!.getAttribute('aria-pressed')).to.equal('false');
    plan!.click();
    await waterfall.updateComplete;
    expect(plan!.getAttribute('aria-pressed')).to.equal('true');
    shadow<HTMLDetailsElement>(waterfall, '.turning').open = true;
    const tilt = waterfall.shadowRoot!.querySelectorAll<HTMLInputElement>('.turning input')[1];
    expect(tilt.getAttribute('aria-valuetext')).to.equal('90°');
    tilt.focus();
    await sendKeys({ press: 'ArrowLeft' });
    await waterfall.updateComplete;
    expect(tilt.getAttribute('aria-valuetext')).to.equal('88°');
    const plain = new WheelEvent('wheel', { deltaY: 100, bubbles: true, cancelable: true });
    canvas.dispatchEvent(plain);
    expect(plain.defaultPrevented).to.equal(false);
    const pinch = new WheelEvent('wheel', { deltaY: -100, ctrlKey: true, bubbles: true, cancelable: true });
    canvas.dispatchEvent(pinch);
    expect(pinch.defaultPrevented).to.equal(true);
  });

  it('draws again in the colours of a page that turns dark', async () => {
    const { study, spectrogram } = await linked();
    const canvas = await drawn(spectrogram);
    const corner = (): number[] => [
      ...canvas.getContext('2d')!.getImageData(1, canvas.height - 2, 1, 1).data,
    ];
    expect(corner()[0]).to.be.greaterThan(200);
    const page = study.parentElement!;
    page.setAttribute('style', 'background: rgb(20, 24, 28); color: rgb(220, 226, 225)');
    study.setAttribute('class', 'on-dark');
    await waitUntil(() => corner()[0] < 60, 'a dark ground', { timeout: 5000 });
    expect(spectrogram.matches(':state(dark)')).to.equal(true);
  });

  it('writes numbers as the language of the page does', async () => {
    const page = await fixture(
      html`<div lang="de"><ringdown-ridges src=${roomAddress()} room=${room}></ringdown-ridges></div>`,
    );
    const ridges = page.querySelector('ringdown-ridges')!;
    await ready(ridges);
    await ridges.updateComplete;
    expect(shadow(ridges, 'tbody tr').textContent).to.match(/41,9/);
  });
});
