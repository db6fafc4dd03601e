import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import { currentRenderer } from '../../src/draw/renderer.js';
import type { RingdownRidges } from '../../src/elements/ridges/ridges.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import type { RingdownWaterfall } from '../../src/elements/waterfall/waterfall.js';
import { setWorkerFactory, sharedPool, type WorkerLike } from '../../src/study/pool.js';
import type { StudySnapshot } from '../../src/study/types.js';
import {
  addFiles,
  aTimeout,
  colours,
  drawn,
  ready,
  room,
  roomAddress,
  roomFile,
  shadow,
  shadowText,
  slowRidge,
  waitUntil,
} from './support.js';

const workerUrl = new URL('../../src/study/worker.js', import.meta.url);

/** A real worker whose jobs of one kind go wrong. */
class FaultyWorker extends EventTarget {
  readonly #real = new Worker(workerUrl, { type: 'module' });

  /** @param fault is asked at every message; true where it has dealt with it */
  constructor(private readonly fault: (worker: FaultyWorker, data: { id: number; type: string }) => boolean) {
    super();
    this.#real.addEventListener('message', ({ data }) => this.say('message', data));
  }

  say(type: string, data: unknown): void {
    this.dispatchEvent(
      type === 'error'
        ? new ErrorEvent('error', { message: String(data), cancelable: true })
        : new MessageEvent(type, { data }),
    );
  }

  postMessage(data: { id: number; type: string }, transfer: Transferable[] = []): void {
    if (!this.fault(this, data)) this.#real.postMessage(data, transfer);
  }

  terminate(): void {
    this.#real.terminate();
  }
}

const faulty = (fault: ConstructorParameters<typeof FaultyWorker>[0]): void => {
  sharedPool().dispose();
  setWorkerFactory(() => new FaultyWorker(fault) as unknown as WorkerLike);
};

const whole = (): Promise<RingdownStudy> =>
  fixture<RingdownStudy>(
    html`<ringdown-study room=${room}>
      <ringdown-waterfall></ringdown-waterfall>
      <ringdown-ridges></ringdown-ridges>
    </ringdown-study>`,
  );

const inside = <T extends HTMLElement>(study: Element, name: string): T =>
  study.querySelector<T>(`ringdown-${name}`)!;

/** Decay time of the slow mode, to tell recordings apart, s. */
const slowSeconds = (snapshot: StudySnapshot): number => slowRidge(snapshot).decayTimeSeconds ?? NaN;

describe('an element under fire', function () {
  this.timeout(60_000);
  let tried = 0;
  let kept = 0;
  afterEach(function () {
    tried += 1;
    if (this.currentTest?.state === 'passed') kept += 1;
    sharedPool().dispose();
    setWorkerFactory(undefined);
  });
  after(() => console.log(`races: ${kept} of ${tried} situations recovered from, or said in words`));

  it('whose src changes 100 times in a second shows the last file alone', async () => {
    const addresses = [0.7, 0.9, 1.1, 1.5].map((seconds) => roomAddress(seconds));
    const last = roomAddress(1.9);
    const element = await fixture<RingdownRidges>(
      html`<ringdown-ridges src=${addresses[0]}></ringdown-ridges>`,
    );
    const labels: string[] = [];
    let changes = 0;
    let watching = false;
    element.addEventListener('ringdown-ready', () => {
      if (watching) labels.push(slowSeconds(element.snapshot!).toFixed(1));
    });
    const begin = performance.now();
    while (changes < 99) {
      element.setAttribute('src', addresses[changes % addresses.length]);
      changes += 1;
      await aTimeout(Math.max(0, begin + changes * 10 - performance.now()));
    }
    element.setAttribute('src', last);
    watching = true;
    expect(performance.now() - begin).to.be.lessThan(4000);
    await waitUntil(() => element.snapshot?.diagnosis && slowSeconds(element.snapshot) > 1.7, 'the last', {
      timeout: 30_000,
    });
    await element.study!.settled();
    await aTimeout(500);
    expect(element.snapshot!.recordings.length).to.equal(1);
    expect(slowSeconds(element.snapshot!)).to.be.closeTo(1.9, 0.15);
    expect(
      labels.every((seconds) => Number(seconds) > 1.7),
      labels.join(' '),
    ).to.equal(true);
    expect(element.snapshot!.failures).to.deep.equal([]);
    // One row of the table is the slow mode, with the time of the last file.
    await waitUntil(() => /1\.[89]\d* ?±|1\.[89]\d* s/.test(shadowText(element, 'tbody')), 'shown');
  });

  it('removed while it computes, stops and says nothing more; put back, it comes to its end', async () => {
    const study = await whole();
    const parent = study.parentElement!;
    void addFiles(study, roomFile());
    await waitUntil(() => study.snapshot.progress, 'at work', { interval: 1 });
    const events: string[] = [];
    for (const type of ['ringdown-progress', 'ringdown-ready', 'ringdown-error'])
      study.addEventListener(type, () => events.push(type));
    study.remove();
    await aTimeout(400);
    events.length = 0;
    await aTimeout(600);
    expect(events).to.deep.equal([]);
    // Nothing is left in the way of another study.
    const other = await whole();
    await addFiles(other, roomFile('other.wav', 0.9));
    expect(slowSeconds(await ready(other))).to.be.closeTo(0.9, 0.1);
    other.remove();
    parent.append(study);
    expect(slowSeconds(await ready(study))).to.be.closeTo(1.3, 0.1);
    expect(events).to.include('ringdown-ready');
    expect(events).not.to.include('ringdown-error');
  });

  it('moved twenty times while it computes, computes once', async () => {
    const places = [0, 1].map(() => document.body.appendChild(document.createElement('div')));
    const study = await whole();
    const before = study.study;
    void addFiles(study, roomFile());
    let readies = 0;
    study.addEventListener('ringdown-ready', () => (readies += 1));
    for (let k = 0; k < 20; k += 1) {
      places[k % 2].append(study);
      await aTimeout(5);
    }
    await ready(study);
    await drawn(inside(study, 'waterfall'));
    expect(study.study).to.equal(before);
    expect(readies).to.equal(1);
    for (const place of places) place.remove();
  });

  it('hidden while it computes draws nothing, and shown again its picture', async () => {
    const study = await whole();
    study.style.display = 'none';
    await addFiles(study, roomFile());
    await ready(study);
    await aTimeout(200);
    const canvas = shadow<HTMLCanvasElement>(inside(study, 'waterfall'), 'canvas');
    expect(colours(canvas)).to.be.lessThan(3);
    study.style.display = '';
    await drawn(inside(study, 'waterfall'));
    study.style.visibility = 'hidden';
    await aTimeout(100);
    study.style.visibility = '';
    await drawn(inside(study, 'waterfall'));
  });

  it('printed while it computes says what goes on, and printed after it, the picture at once', async () => {
    const study = await whole();
    const waterfall = inside<RingdownWaterfall>(study, 'waterfall');
    void addFiles(study, roomFile());
    await waitUntil(() => study.snapshot.progress, 'at work', { interval: 1 });
    window.dispatchEvent(new Event('beforeprint'));
    await study.updateComplete;
    expect(shadowText(waterfall, '.veil').length).to.be.greaterThan(5);
    window.dispatchEvent(new Event('afterprint'));
    await ready(study);
    await waterfall.updateComplete;
    await waitUntil(() => waterfall.shadowRoot!.querySelector('canvas')!.width > 300, 'sized', {
      timeout: 10_000,
    });
    await drawn(waterfall);
    window.dispatchEvent(new Event('beforeprint'));
    // Whoever prints waits for nothing: on white, in this very turn.
    const canvas = shadow<HTMLCanvasElement>(waterfall, 'canvas');
    expect(colours(canvas)).to.be.greaterThan(100);
    const copy = canvas.getContext('2d')!.getImageData(2, 2, 1, 1).data;
    expect([...copy.slice(0, 3)]).to.deep.equal([255, 255, 255]);
    window.dispatchEvent(new Event('afterprint'));
  });

  it('adopted by another document and back keeps its study, its look and its picture', async () => {
    const study = await whole();
    const home = study.parentElement!;
    const waterfall = inside(study, 'waterfall');
    await addFiles(study, roomFile());
    await drawn(waterfall);
    const before = study.snapshot.diagnosis;
    const border = getComputedStyle(shadow(waterfall, '.picture')).position;
    const frame = document.createElement('iframe');
    frame.style.cssText = 'width: 900px; height: 700px';
    home.append(frame);
    const other = frame.contentDocument!;
    for (const [place, view] of [
      [other.body, frame.contentWindow!],
      [home, window],
    ] as const) {
      place.append(study);
      expect(study.ownerDocument).to.equal(place.ownerDocument);
      for (const element of [study, waterfall]) {
        const sheets = element.shadowRoot!.adoptedStyleSheets;
        expect(sheets.length, element.localName).to.be.greaterThan(0);
      }
      expect(view.getComputedStyle(shadow(waterfall, '.picture')).position).to.equal(border);
      await drawn(waterfall);
      expect(study.snapshot.diagnosis).to.equal(before);
    }
    // What is asked of it there is done there.
    other.body.append(study);
    await addFiles(study, roomFile('second.wav', 0.8));
    study.study.setActive(1);
    await study.study.settled();
    expect(slowSeconds(study.snapshot)).to.be.closeTo(0.8, 0.1);
    await drawn(waterfall);
    home.append(study);
    frame.remove();
    await drawn(waterfall);
  });

  it('whose worker crashes computes in another, and says so where that crashes too', async () => {
    let crashes = 1;
    const crash = (worker: FaultyWorker, { type }: { type: string }): boolean => {
      if (type !== 'fit' || crashes === 0) return false;
      crashes -= 1;
      setTimeout(() => worker.say('error', 'crashed'), 20);
      return true;
    };
    faulty(crash);
    const study = await whole();
    await addFiles(study, roomFile());
    expect(slowSeconds(await ready(study))).to.be.closeTo(1.3, 0.1);
    expect(crashes).to.equal(0);
    expect(study.snapshot.failures).to.deep.equal([]);
    crashes = 2;
    await addFiles(study, roomFile('second.wav', 0.8));
    study.study.setActive(1);
    const snapshot = await study.study.settled();
    expect(crashes).to.equal(0);
    expect(snapshot.failures.map(({ code, label }) => [code, label])).to.deep.equal([
      ['worker-crashed', 'second'],
    ]);
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.match(/^second: The computation stopped twice/);
    // What another job of it brought is shown, and the next file is read as ever.
    await drawn(inside(study, 'waterfall'));
    await addFiles(study, roomFile('third.wav', 1.6));
    study.study.setActive(2);
    await study.study.settled();
    expect(slowSeconds(study.snapshot)).to.be.closeTo(1.6, 0.15);
  });

  it('whose worker runs out of memory says so in words, and the next job works', async () => {
    let full = true;
    faulty((worker, { id, type }) => {
      if (type !== 'open' || !full) return false;
      const failure = { id, type: 'error', code: 'out-of-memory', params: {} };
      setTimeout(() => worker.say('message', failure), 5);
      return true;
    });
    const study = await whole();
    await addFiles(study, roomFile('long.wav'));
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.match(/^long: There is not enough memory/);
    full = false;
    await addFiles(study, roomFile());
    expect(slowSeconds(await ready(study))).to.be.closeTo(1.3, 0.1);
  });

  it('whose WebGL context is lost draws by lines meanwhile, also a new file, and the surface when it is back', async () => {
    const study = await whole();
    const waterfall = inside(study, 'waterfall');
    await addFiles(study, roomFile());
    const surface = (await drawn(waterfall, 1500)).toDataURL();
    const lost = currentRenderer()!.loseContext();
    await waitUntil(() => currentRenderer()!.lost, 'lost');
    await addFiles(study, roomFile('second.wav', 0.8));
    study.study.setActive(1);
    await study.study.settled();
    await aTimeout(300);
    const lines = (await drawn(waterfall, 40)).toDataURL();
    expect(lines).not.to.equal(surface);
    lost.restore();
    await waitUntil(() => !currentRenderer()!.lost, 'back');
    await waitUntil(() => shadow<HTMLCanvasElement>(waterfall, 'canvas').toDataURL() !== lines, 'surface', {
      timeout: 10_000,
    });
    await drawn(waterfall, 1500);
    expect(currentRenderer()!.lost).to.equal(false);
  });

  it('in a tab behind others, where no frames come, computes to the end and draws when it is seen', async () => {
    const real = window.requestAnimationFrame.bind(window);
    const waiting: FrameRequestCallback[] = [];
    window.requestAnimationFrame = (callback) => waiting.push(callback);
    let study: RingdownStudy;
    try {
      study = await whole();
      await addFiles(study, roomFile());
      expect(slowSeconds(await ready(study))).to.be.closeTo(1.3, 0.1);
      expect(study.snapshot.progress).to.equal(null);
    } finally {
      window.requestAnimationFrame = real;
    }
    for (const callback of waiting) real(callback);
    await drawn(inside(study, 'waterfall'));
  });
});
