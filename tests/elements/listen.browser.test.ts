import { expect, fixture } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownListen } from '../../src/elements/listen/listen.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { reducedCopy } from '../../src/seats/reduce.js';
import { decodeWav } from '../../src/signal/wav.js';
import { aTimeout, ready, room, roomAddress, shadow, shadowText, slowHz, waitUntil } from './support.js';

/** Every context that the page makes, with what it is told; the real ones do the work. */
const contexts: AudioContext[] = [];
const Real = globalThis.AudioContext;
class Counted extends Real {
  /** What goes to the loudspeakers goes through here. */
  readonly tap = new AnalyserNode(this, { fftSize: 4096 });

  constructor(options?: AudioContextOptions) {
    super(options);
    this.tap.connect(super.destination);
    contexts.push(this);
  }

  override get destination(): AudioDestinationNode {
    return (this.tap ?? super.destination) as unknown as AudioDestinationNode;
  }
}

/** Highest sample that went out during so long. */
async function loudest(context: AudioContext, milliseconds: number): Promise<number> {
  const { tap } = context as Counted;
  const samples = new Float32Array(tap.fftSize);
  let most = 0;
  for (const until = performance.now() + milliseconds; performance.now() < until;) {
    tap.getFloatTimeDomainData(samples);
    for (const value of samples) most = Math.max(most, Math.abs(value));
    await aTimeout(40);
  }
  return most;
}

async function made(attributes = '', style = '', lang = 'en'): Promise<RingdownListen> {
  const page = await fixture(
    `<div style="${style}" lang="${lang}"><ringdown-listen src="${roomAddress()}" label="Studio" room="${room}" ${attributes}></ringdown-listen></div>`,
  );
  const listen = page.querySelector<RingdownListen>('ringdown-listen')!;
  await ready(listen);
  await listen.updateComplete;
  return listen;
}

const status = (listen: RingdownListen): string => shadowText(listen, '[part=status]');
const button = (listen: RingdownListen, part: string) => shadow<HTMLButtonElement>(listen, `[part=${part}]`);
const rows = (listen: RingdownListen): string[] =>
  [...listen.shadowRoot!.querySelectorAll('.twin tbody tr')].map(({ textContent }) =>
    textContent.replace(/\s+/g, ' ').trim(),
  );

async function press(listen: RingdownListen, part: string): Promise<void> {
  button(listen, part).focus();
  await sendKeys({ press: 'Enter' });
  await listen.updateComplete;
}

const rendered = (listen: RingdownListen): Promise<void> =>
  waitUntil(() => listen.shadowRoot!.querySelector('[part=picture]'), 'the sound', {
    timeout: 15000,
  }) as Promise<void>;

describe('ringdown-listen', () => {
  before(() => {
    globalThis.AudioContext = Counted;
  });
  beforeEach(() => {
    contexts.length = 0;
  });
  after(() => {
    globalThis.AudioContext = Real;
  });

  it('is muted and silent at first, asks for no audio, and says why', async () => {
    const listen = await made();
    expect(contexts).to.have.length(0);
    expect(listen.muted).to.equal(true);
    expect(listen.matches(':state(muted)')).to.equal(true);
    expect(status(listen)).to.equal('Nothing is playing, and the sound is muted.');
    expect(shadowText(listen, '[part=why]')).to.match(/starts muted, because/);
    expect(shadowText(listen, '[part=why]')).to.match(/No sample passes -6.dB re full scale/);
    expect(shadowText(listen, '[part=why]')).to.match(
      /below about 60 to 80 Hz \(common practice\), so they do not play 41\.9.Hz/,
    );
    expect(shadowText(listen, '[part=why]')).to.match(/85 dBA for 8 h/);
    // Nothing is worked out before somebody asks.
    expect(listen.shadowRoot!.querySelector('[part=picture]')).to.equal(null);
  });

  it('plays by keyboard, muted until told otherwise, and gives the audio back with Stop', async () => {
    const listen = await made();
    await press(listen, 'play');
    await rendered(listen);
    await waitUntil(() => status(listen).startsWith('Playing a bass line, through the room, muted'), 'said');
    expect(contexts).to.have.length(1);
    expect(listen.matches(':state(playing)')).to.equal(true);
    expect(rows(listen).map((row) => row.split(' ')[0])).to.deep.equal(['dry', 'through', 'treated', 'the']);
    expect(rows(listen)[1]).to.match(/^through the room muted -2\d\.\d dB -1\d\.\d dB/);
    await press(listen, 'mute');
    await waitUntil(() => /at 20.dB below its full level/.test(status(listen)), 'loud');
    expect(rows(listen)[1]).to.match(/^through the room -20 dB /);
    const volume = shadow<HTMLInputElement>(listen, '[part=volume]');
    volume.focus();
    await sendKeys({ press: 'End' });
    await listen.updateComplete;
    expect(volume.getAttribute('aria-valuetext')).to.match(/^-?0.dB$/);
    const [context] = contexts;
    await press(listen, 'play');
    expect(status(listen)).to.equal('Nothing is playing.');
    await waitUntil(() => context.state === 'closed', 'the context is closed');
  });

  it('sends nothing out while muted, then no more than the slider and the ceiling allow', async () => {
    const listen = await made();
    await press(listen, 'play');
    await rendered(listen);
    const [context] = contexts;
    expect(context.state).to.equal('running');
    expect(await loudest(context, 1200), 'muted').to.equal(0);
    await press(listen, 'mute');
    const quiet = await loudest(context, 2500);
    expect(quiet, '20 dB down').to.be.greaterThan(0.001);
    expect(quiet).to.be.lessThan(10 ** ((-20 - 6) / 20));
    shadow<HTMLInputElement>(listen, '[part=volume]').focus();
    await sendKeys({ press: 'End' });
    const full = await loudest(context, 2500);
    expect(full).to.be.greaterThan(3 * quiet);
    expect(full).to.be.lessThan(10 ** (-6 / 20));
    await press(listen, 'mute');
    await aTimeout(150);
    expect(await loudest(context, 400), 'muted again').to.be.lessThan(1e-6);
    listen.stop();
  });

  it('changes what is heard by arrow keys while it plays, with one context and one rendering', async () => {
    const listen = await made();
    await press(listen, 'play');
    await rendered(listen);
    const checked = shadow<HTMLInputElement>(listen, 'input[name=heard]:checked');
    expect(checked.value).to.equal('room');
    checked.focus();
    await sendKeys({ press: 'ArrowRight' });
    await listen.updateComplete;
    expect(listen.heard).to.equal('treated');
    expect(status(listen)).to.contain('treated');
    await sendKeys({ press: 'ArrowRight' });
    await listen.updateComplete;
    expect(status(listen)).to.contain('the mode alone');
    expect(contexts).to.have.length(1);
    expect(shadowText(listen, 'figcaption')).to.match(/a resonator of 41\.9.Hz that decays in 1\.3\d.s/);
    expect(shadowText(listen, 'figcaption')).to.match(/matched cuts proposed .* at 41\.9.Hz, Q/);
    listen.stop();
  });

  it('frees the context when it is removed while it plays, and is silent and muted where it is put back', async () => {
    const listen = await made();
    await press(listen, 'play');
    await rendered(listen);
    await press(listen, 'mute');
    expect(listen.muted).to.equal(false);
    const [context] = contexts;
    const home = document.createElement('section');
    listen.parentElement!.append(home);
    home.append(listen);
    await waitUntil(() => context.state === 'closed', 'moved: closed');
    await listen.updateComplete;
    expect(listen.muted).to.equal(true);
    expect(listen.matches(':state(playing)')).to.equal(false);
    await press(listen, 'play');
    await waitUntil(() => status(listen).startsWith('Playing'), 'it plays again');
    listen.remove();
    expect(contexts).to.have.length(2);
    await waitUntil(() => contexts[1].state === 'closed', 'removed: closed');
  });

  it('removed while it still works the sound out, makes none and leaves no context', async () => {
    const listen = await made();
    button(listen, 'play').click();
    const parent = listen.parentElement!;
    listen.remove();
    await waitUntil(() => contexts.every(({ state }) => state === 'closed'), 'closed');
    parent.append(listen);
    await ready(listen);
    await press(listen, 'play');
    await waitUntil(() => status(listen).startsWith('Playing'), 'it plays', { timeout: 15000 });
    expect(contexts.filter(({ state }) => state !== 'closed')).to.have.length(1);
    listen.stop();
  });

  it('follows the study: another ridge, another material, filters of the design', async () => {
    const page = await fixture<RingdownStudy>(
      `<ringdown-study src="${roomAddress()}" label="Studio" room="${room}"><ringdown-listen></ringdown-listen></ringdown-study>`,
    );
    const listen = page.querySelector<RingdownListen>('ringdown-listen')!;
    await ready(listen);
    await press(listen, 'play');
    await rendered(listen);
    const select = shadow<HTMLSelectElement>(listen, '[part=material]');
    select.selectedIndex = 2;
    select.dispatchEvent(new Event('change'));
    await waitUntil(() => /Playing three bursts/.test(status(listen)), 'bursts');
    await waitUntil(() => listen.toSvg()?.match(/fill-opacity="0\.08"/g)?.length === 3, 'three notes');
    const { system } = page.feed;
    system.setBands([{ kind: 'peaking', frequencyHz: slowHz, gainDb: -9, q: 20 }]);
    await waitUntil(
      () => /with the filter of this study: -9\.0.dB at 41\.9.Hz/.test(shadowText(listen, 'figcaption')),
      'design',
    );
    await waitUntil(() => !/Working/.test(status(listen)), 'rendered again');
    listen.study!.selectResonance(0);
    await waitUntil(() => !/resonator of 41\.9/.test(shadowText(listen, 'figcaption')), 'another resonance');
    listen.stop();
  });

  it('saves what is heard as a WAV file within the ceiling', async () => {
    const listen = await made();
    await press(listen, 'play');
    await rendered(listen);
    listen.stop();
    const files: Blob[] = [];
    const names: string[] = [];
    const create = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (file: Blob) => {
      files.push(file);
      return create(file);
    };
    const took = (event: Event): void => {
      event.preventDefault();
      names.push((event.target as HTMLAnchorElement).download);
    };
    const make = document.createElement.bind(document);
    document.createElement = (name: string) => {
      const element = make(name);
      if (name === 'a') element.addEventListener('click', took);
      return element;
    };
    try {
      await press(listen, 'save');
    } finally {
      URL.createObjectURL = create;
      document.createElement = make;
    }
    expect(names).to.deep.equal(['studio-bass-line-room.wav']);
    const { channels, sampleRate } = decodeWav(new Uint8Array(await files[0].arrayBuffer()));
    expect(sampleRate).to.equal(8000);
    const peak = channels[0].reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(peak).to.be.greaterThan(0.05);
    expect(peak).to.be.lessThan(10 ** (-6 / 20));
  });

  it('of a saved study says that only the bass is there', async () => {
    const page = await fixture(
      `<ringdown-study src="${roomAddress()}" label="Studio"><ringdown-listen></ringdown-listen></ringdown-study>`,
    );
    const listen = page.querySelector<RingdownListen>('ringdown-listen')!;
    const { recordings } = await ready(listen);
    await listen.study!.addCopy({ ...reducedCopy(recordings[0]), label: 'Kept' });
    listen.study!.setActive(1);
    await listen.study!.settled();
    await press(listen, 'play');
    await waitUntil(() => /heard to 250.Hz only, dry too/.test(shadowText(listen, 'figcaption')), 'said', {
      timeout: 15000,
    });
    listen.stop();
  });

  it('of a room alone listens through what is predicted, and says what it assumed', async () => {
    const page = await fixture(
      `<ringdown-study room="${room}" no-files>
        <ringdown-place kind="seat" name="desk" at="3.7 1.4 1.2"></ringdown-place>
        <ringdown-place kind="source" name="left" at="0.4 0.5 0.4"></ringdown-place>
        <ringdown-listen></ringdown-listen>
      </ringdown-study>`,
    );
    const listen = page.querySelector<RingdownListen>('ringdown-listen')!;
    await waitUntil(
      () => listen.snapshot?.prediction && /predicted from the room/.test(shadowText(listen, 'figcaption')),
      'predicted',
    );
    expect(shadowText(listen, 'figcaption')).to.match(/absorption of 0\.1 assumed/);
    await press(listen, 'play');
    await rendered(listen);
    expect(rows(listen).map((row) => row.split(' ')[0])).to.deep.equal(['dry', 'through']);
    listen.stop();
  });

  it('without Web Audio says so, and still works the sound out', async () => {
    // @ts-expect-error A browser without it.
    delete globalThis.AudioContext;
    try {
      const listen = await made();
      expect(status(listen)).to.match(/^This browser plays no sound here/);
      expect(listen.shadowRoot!.querySelector('[part=mute]')).to.equal(null);
      await press(listen, 'play');
      await rendered(listen);
      expect(rows(listen)).to.have.length(4);
      expect(status(listen)).to.match(/can be saved/);
    } finally {
      globalThis.AudioContext = Counted;
    }
  });

  it('says why there is nothing, and writes numbers as its page does', async () => {
    const empty = await fixture(`<ringdown-listen></ringdown-listen>`);
    expect(shadowText(empty, '.veil')).to.contain('No recording yet');
    await expect(empty).to.be.accessible();
    const listen = await made('', '', 'de');
    expect(shadowText(listen, '[part=why]')).to.match(/41,9.Hz/);
  });

  for (const [look, style] of Object.entries({
    light: '',
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}`, async function () {
      this.timeout(60000);
      const listen = await made('', style);
      await press(listen, 'play');
      await rendered(listen);
      for (const details of listen.shadowRoot!.querySelectorAll('details')) details.open = true;
      await expect(listen).to.be.accessible();
      if (look === 'narrow') expect(shadow(listen, 'figure').scrollWidth).to.be.at.most(320);
      listen.stop();
    });
});
