import { expect, fixture, html } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import {
  addFiles,
  brokenFile,
  heard,
  ready,
  room,
  roomAddress,
  roomFile,
  shadow,
  shadowText,
  waitUntil,
} from './support.js';

const name = 'test of keeping';
const key = `ringdown:${name}`;

const page = (autosave: string | null = name): Promise<RingdownStudy> =>
  fixture<RingdownStudy>(html`<ringdown-study autosave=${autosave ?? ''} to="100"></ringdown-study>`);

const kept = (): string | null => localStorage.getItem(key);

/** A study with one file, the room and a title, kept by the browser. */
async function keptPage(): Promise<RingdownStudy> {
  const study = await page();
  await addFiles(study, roomFile('desk.wav'));
  study.study.setSheet({ title: 'Live room' });
  await waitUntil(() => kept()?.includes('Live room') && kept()!.includes('desk'), 'kept', {
    timeout: 20000,
  });
  return study;
}

async function failing(
  method: 'setItem' | 'getItem',
  thrown: Error,
  action: () => Promise<void>,
): Promise<void> {
  const own = Object.getOwnPropertyDescriptor(Storage.prototype, method)!;
  Storage.prototype[method] = () => {
    throw thrown;
  };
  try {
    await action();
  } finally {
    Object.defineProperty(Storage.prototype, method, own);
  }
}

describe('a study that is kept', function () {
  this.timeout(60000);
  beforeEach(() => localStorage.clear());
  after(() => localStorage.clear());

  it('comes back on the next visit without its file, with what was typed', async () => {
    const study = await keptPage();
    const [{ hash }] = study.snapshot.recordings;
    const ridges = study.snapshot.diagnosis!.ridges.map(({ frequencyHz }) => frequencyHz);
    study.remove();
    const again = await page();
    await ready(again);
    const [recording] = again.snapshot.recordings;
    expect(recording.hash).to.equal(hash);
    expect(recording.reduced).to.not.equal(undefined);
    expect(again.snapshot.sheet.title).to.equal('Live room');
    expect(again.snapshot.choices.toHz).to.equal(100);
    const back = again.snapshot.diagnosis!.ridges.map(({ frequencyHz }) => frequencyHz);
    expect(back.length).to.equal(ridges.length);
    back.forEach((frequencyHz, k) => expect(frequencyHz).to.be.closeTo(ridges[k], 0.05));
    expect(shadowText(again, '.hint')).to.contain('Kept in this browser.');
  });

  it('takes the place of what the page asks for, until the page asks for something else', async () => {
    (await keptPage()).remove();
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study
        autosave=${name}
        room=${room}
        src=${roomAddress()}
        label="of the page"
      ></ringdown-study>`,
    );
    await ready(study);
    expect(study.snapshot.recordings.map(({ label }) => label)).to.deep.equal(['desk']);
    study.src = roomAddress(0.5);
    await waitUntil(() => study.snapshot.recordings.length === 2, 'the other file', { timeout: 20000 });
  });

  it('keeps nothing unless it is asked to', async () => {
    const study = await page(null);
    await addFiles(study, roomFile());
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(localStorage.length).to.equal(0);
  });

  it('is cleared by keys alone, with the copy in the browser', async () => {
    const study = await keptPage();
    await study.updateComplete;
    shadow(study, '[part=clear] summary').focus();
    await sendKeys({ press: 'Enter' });
    await sendKeys({ press: 'Tab' });
    const events = await heard(study, 'ringdown-study-change', () => sendKeys({ press: 'Enter' }));
    expect(events.length).to.equal(1);
    expect(kept()).to.equal(null);
    expect(study.snapshot.recordings.length).to.equal(0);
    expect(study.snapshot.sheet.title).to.equal('');
    study.remove();
    const again = await page();
    expect(again.snapshot.recordings.length).to.equal(0);
  });

  it('says in one sentence that the browser has no room, or keeps nothing at all, and goes on', async () => {
    await failing('setItem', new DOMException('full', 'QuotaExceededError'), async () => {
      const study = await page();
      await addFiles(study, roomFile());
      await waitUntil(() => shadowText(study, '.alert').includes('gives it no more room'), 'the sentence', {
        timeout: 20000,
      });
      expect(study.snapshot.status).to.equal('ready');
      study.remove();
    });
    await failing('getItem', new DOMException('no', 'SecurityError'), async () => {
      const study = await page();
      await waitUntil(() => shadowText(study, '.alert').includes('lets it keep nothing'), 'the sentence');
      await addFiles(study, roomFile());
      expect((await ready(study)).recordings.length).to.equal(1);
      await expect(study).to.be.accessible();
      study.remove();
    });
  });

  it('sets a broken copy aside and does not delete it', async () => {
    localStorage.setItem(key, '{"format":"ringdown-study"');
    const study = await page();
    await waitUntil(() => shadowText(study, '.alert').includes('could not be read'), 'the sentence');
    expect(localStorage.getItem(`${key}:unread`)).to.equal('{"format":"ringdown-study"');
  });
});

describe('a saved study', function () {
  this.timeout(60000);

  it('opens from its file in the place of what is there; another file leaves everything', async () => {
    const study = await fixture<RingdownStudy>(html`<ringdown-study to="100"></ringdown-study>`);
    await addFiles(study, roomFile('desk.wav'));
    study.study.setSheet({ client: 'Radio Quillmarsh' });
    const text = study.toJson();
    const other = await fixture<RingdownStudy>(
      html`<ringdown-study src=${roomAddress(0.4)}></ringdown-study>`,
    );
    await ready(other);
    const input = shadow<HTMLInputElement>(other, 'input[accept^=".json,application"]');
    const choose = (file: File): void => {
      const files = new DataTransfer();
      files.items.add(file);
      input.files = files.files;
      input.dispatchEvent(new Event('change'));
    };
    choose(brokenFile('letter.json'));
    await waitUntil(
      () => shadowText(other, '.alert').includes('letter.json: This is not a saved study'),
      'refused',
    );
    expect(other.snapshot.recordings.length).to.equal(1);
    choose(new File([text], 'study.json'));
    await waitUntil(() => other.snapshot.recordings[0]?.label === 'desk', 'opened');
    await ready(other);
    expect(other.snapshot.recordings.length).to.equal(1);
    expect(other.snapshot.sheet.client).to.equal('Radio Quillmarsh');
    expect(shadowText(other, '.alert')).to.equal('');
    const { results } = JSON.parse(other.toJson()) as { results: { ridges: unknown[] }[] };
    expect(results[0].ridges.length).to.be.greaterThan(0);
    const home = document.createElement('section');
    other.parentElement!.append(home);
    home.append(other);
    await ready(other);
    expect(other.snapshot.recordings.map(({ label }) => label)).to.deep.equal(['desk']);
    expect(other.snapshot.sheet.client).to.equal('Radio Quillmarsh');
  });

  it('is saved by keys alone', async () => {
    const study = await fixture<RingdownStudy>(html`<ringdown-study></ringdown-study>`);
    await addFiles(study, roomFile('desk.wav'));
    await study.updateComplete;
    const saved: string[] = [];
    const click = Object.getOwnPropertyDescriptor(HTMLElement.prototype, 'click')!;
    HTMLAnchorElement.prototype.click = function () {
      saved.push(this.download);
    };
    try {
      shadow(study, '[part=save-button]').focus();
      await sendKeys({ press: 'Enter' });
    } finally {
      Object.defineProperty(HTMLAnchorElement.prototype, 'click', click);
    }
    expect(saved).to.deep.equal(['desk.json']);
  });
});
