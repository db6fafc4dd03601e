import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import type { RingdownWaterfall } from '../../src/elements/waterfall/waterfall.js';
import {
  drawn,
  heard,
  ready,
  room,
  roomAddress,
  shadow,
  shadowText,
  slowRidge,
  waitUntil,
} from './support.js';

const whole = async (linked = false): Promise<RingdownStudy> =>
  fixture<RingdownStudy>(
    html`<ringdown-study room=${room} ?linked=${linked} no-files>
      <ringdown-recording src=${roomAddress(1.3)} label="Studio" stage="before"></ringdown-recording>
      <ringdown-recording src=${roomAddress(0.9)} label="Studio" stage="after"></ringdown-recording>
      <ringdown-waterfall></ringdown-waterfall>
      <ringdown-decay-times></ringdown-decay-times>
      <ringdown-response></ringdown-response>
      <ringdown-pressure-map></ringdown-pressure-map>
    </ringdown-study>`,
  );

const both = async (study: RingdownStudy): Promise<void> => {
  await waitUntil(() => study.snapshot.recordings.length === 2, 'two recordings', { timeout: 10000 });
  await ready(study);
};

const pick = (element: Element, part: string, index: number): void => {
  const select = shadow<HTMLSelectElement>(element, part);
  select.selectedIndex = index;
  select.dispatchEvent(new Event('change'));
};

const view = <T extends HTMLElement>(study: Element, name: string): T =>
  study.querySelector<T>(`ringdown-${name}`)!;

describe('the link to a view', () => {
  afterEach(() => {
    history.replaceState(null, '', location.pathname + location.search);
  });

  it('brings another study of the same recordings to the same view', async () => {
    const study = await whole();
    await both(study);
    study.study.setActive(1);
    await ready(study);
    study.study.setChoices({ toHz: 120, axis: 'linear', rangeDb: 40 });
    await ready(study);
    study.study.setCursor({ frequencyHz: 43.9, timeSeconds: 0.31 });
    study.study.selectRidge(study.snapshot.diagnosis!.ridges.indexOf(slowRidge(study.snapshot)));
    await drawn(view(study, 'waterfall'));
    shadow(view(study, 'waterfall'), '.views button:last-child').click();
    pick(view(study, 'decay-times'), '[part=reading]', 2);
    pick(view(study, 'pressure-map'), '[part=quantity]', 1);
    pick(view(study, 'response'), '.tolerance select', 0);
    const link = study.viewLink;
    expect(link).to.match(
      /^1;to=120;range=40;axis=linear;recording=[0-9a-f]{8}\.1;cursor=43\.9,0\.31;ridge=41\.\d+;/,
    );
    expect(link).to.contain(';waterfall=0,90,1;decay-times=t30;response=0;pressure-map=motion');
    expect(link.length).to.be.lessThan(200);

    const other = await whole();
    // Before anything is there: what it names is taken as it comes.
    expect(other.applyViewLink(link)).to.equal(true);
    await both(other);
    await waitUntil(() => other.snapshot.selectedRidge !== null, 'a ridge is selected', { timeout: 10000 });
    const { choices, cursor, active } = other.snapshot;
    expect(choices).to.deep.equal(study.snapshot.choices);
    expect(cursor).to.deep.equal({ frequencyHz: 43.9, timeSeconds: 0.31 });
    expect(active).to.equal(1);
    expect(slowRidge(other.snapshot)).to.equal(
      other.snapshot.diagnosis!.ridges[other.snapshot.selectedRidge!],
    );
    await other.updateComplete;
    expect(other.viewLink).to.equal(link);
    expect(other.applyViewLink('1')).to.equal(true);
    expect(other.viewLink, 'and back to the beginning').to.equal('1');
  });

  it('is refused in one sentence where it does not read, and changes nothing', async () => {
    const study = await whole();
    await both(study);
    const before = study.viewLink;
    const { snapshot } = study;
    const errors = await heard(study, 'ringdown-error', () => {
      expect(study.applyViewLink('1;to=100;waterfall=10,20,<img src=x>')).to.equal(false);
    });
    expect(errors.length).to.equal(1);
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.match(
      /^The link to a view does not read: “waterfall=10,20,<img/,
    );
    expect(study.shadowRoot!.querySelector('img')).to.equal(null);
    expect(study.viewLink).to.equal(before);
    expect(study.snapshot.choices).to.equal(snapshot.choices);
    study.applyViewLink('1;recording=00000000.1');
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.match(/not among those of this page/);
    study.applyViewLink('1;ridge=77');
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.match(/ridge at 77.*none here/);
    study.applyViewLink('1');
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.equal('');
  });

  it('is read from the address where the page says so, and copied by a button beside each picture', async () => {
    history.replaceState(null, '', '#ringdown=1;to=110;axis=linear');
    const plain = await whole();
    expect(plain.snapshot.choices.toHz, 'not asked for').to.equal(200);
    const study = await whole(true);
    expect(study.snapshot.choices.toHz).to.equal(110);
    await both(study);
    location.hash = '#ringdown=1;to=90';
    await waitUntil(() => study.snapshot.choices.toHz === 90, 'followed');
    expect(study.snapshot.choices.axis).to.equal('log');
    await ready(study);
    expect(view(plain, 'response').shadowRoot!.querySelector('.link')).to.equal(null);
    const written: string[] = [];
    const clipboard = { writeText: (text: string) => (written.push(text), Promise.resolve()) };
    Object.defineProperty(navigator, 'clipboard', { value: clipboard, configurable: true });
    const response = view(study, 'response');
    await waitUntil(() => response.shadowRoot!.querySelector('.link button') !== null, 'a button');
    shadow(response, '.link button').click();
    await waitUntil(() => shadowText(response, '.link [role=status]') === 'Copied.', 'said');
    expect(new URL(written[0]).hash).to.equal('#ringdown=1;to=90');
    clipboard.writeText = () => Promise.reject(new Error('not allowed'));
    shadow(response, '.link button').click();
    await waitUntil(
      () => response.shadowRoot!.querySelector('.link input') !== null,
      'the address to copy by hand',
    );
    expect(shadow<HTMLInputElement>(response, '.link input').value).to.equal(written[0]);
    Reflect.deleteProperty(navigator, 'clipboard');
  });

  it('works for a view that holds a study by itself', async () => {
    history.replaceState(null, '', '#ringdown.desk=1;to=100;waterfall=,,,clear');
    const alone = await fixture<RingdownWaterfall>(
      html`<ringdown-waterfall id="desk" linked src=${roomAddress()} room=${room}></ringdown-waterfall>`,
    );
    await ready(alone);
    expect(alone.snapshot!.choices.toHz).to.equal(100);
    expect(alone.style.getPropertyValue('--ringdown-scale')).to.equal('clear');
  });

  it('survives a change of the room by an attribute', async () => {
    const study = await whole();
    await both(study);
    study.applyViewLink('1;to=120;axis=linear');
    study.setAttribute('room', '5x4x2.5');
    study.setAttribute('range', '40');
    await study.updateComplete;
    await ready(study);
    const { toHz, axis, rangeDb } = study.snapshot.choices;
    expect({ toHz, axis, rangeDb }).to.deep.equal({ toHz: 120, axis: 'linear', rangeDb: 40 });
  });
});
