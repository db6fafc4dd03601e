import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import { scaleColour, scaleTable } from '../../src/draw/colours.js';
import type { RingdownSpectrogram } from '../../src/elements/spectrogram/spectrogram.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import {
  addFiles,
  aTimeout,
  brokenFile,
  drawn,
  heard,
  oneEvent,
  ready,
  room,
  roomAddress,
  roomFile,
  shadow,
  shadowText,
  slowHz,
  slowRidge,
  waitUntil,
} from './support.js';

const whole = (): Promise<RingdownStudy> =>
  fixture<RingdownStudy>(
    html`<ringdown-study room=${room}>
      <ringdown-waterfall></ringdown-waterfall>
      <ringdown-spectrogram></ringdown-spectrogram>
      <ringdown-ridges></ringdown-ridges>
    </ringdown-study>`,
  );

const view = (study: Element, name: string): HTMLElement =>
  study.querySelector<HTMLElement>(`ringdown-${name}`)!;

describe('ringdown-study', () => {
  it('takes a file, and pictures and table appear', async () => {
    const study = await whole();
    const progress = await heard(study, 'ringdown-progress', async () => {
      const ends = oneEvent(study, 'ringdown-ready');
      await addFiles(study, roomFile());
      await ends;
    });
    expect(progress.length).to.be.greaterThan(0);
    const snapshot = await ready(study);
    const worst = snapshot.diagnosis!.ridges[0];
    expect(worst.frequencyHz).to.be.closeTo(slowHz, 0.3);
    expect(worst.decayTimeSeconds).to.be.closeTo(1.3, 0.1);
    await drawn(view(study, 'waterfall'));
    await drawn(view(study, 'spectrogram'));
    const row = shadow(view(study, 'ridges'), 'tbody tr').textContent;
    expect(row).to.match(/41\.9\d*\s*±/);
    expect(row).to.contain('(0,1,0)');
    expect(shadowText(study, '.result')).to.match(/ridge.*41\.9/);
    await waitUntil(() => /ridge.*41\.9/.test(shadowText(study, '.messages')), 'spoken');
  });

  it('takes a file by its button and by drop', async () => {
    const study = await whole();
    const files = new DataTransfer();
    files.items.add(roomFile('by button.wav'));
    const input = shadow<HTMLInputElement>(study, 'input[type=file]');
    input.files = files.files;
    const changes = await heard(study, 'ringdown-study-change', async () => {
      input.dispatchEvent(new Event('change'));
      await ready(study);
      const drop = new DataTransfer();
      drop.items.add(roomFile('by drop.wav', 0.9));
      const over = new DragEvent('dragover', { dataTransfer: drop, bubbles: true, cancelable: true });
      study.dispatchEvent(over);
      expect(over.defaultPrevented).to.equal(true);
      expect(study.matches(':state(drop)')).to.equal(true);
      study.dispatchEvent(new DragEvent('drop', { dataTransfer: drop, bubbles: true, cancelable: true }));
      await waitUntil(() => study.snapshot.recordings.length === 2, 'two recordings', { timeout: 10000 });
      await ready(study);
      await aTimeout(100);
    });
    expect(study.matches(':state(drop)')).to.equal(false);
    expect(changes.length).to.equal(2);
    expect(study.snapshot.recordings.map(({ label }) => label)).to.deep.equal(['by button', 'by drop']);
    expect(study.snapshot.active, 'what was dropped last is shown').to.equal(1);
  });

  it('says in one sentence why a file is refused, and goes on with the next', async () => {
    const study = await whole();
    const errors = await heard(study, 'ringdown-error', () => addFiles(study, brokenFile()));
    expect(errors.length).to.equal(1);
    const { message } = errors[0].detail as { message: string };
    expect(message).to.match(/^letter: This is not a WAV file/);
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.equal(message);
    expect(shadowText(view(study, 'ridges'), '.veil')).to.contain('not a WAV file');
    expect(study.matches(':state(error)')).to.equal(true);
    await addFiles(study, roomFile());
    await ready(study);
    expect(study.matches(':state(error)')).to.equal(false);
    expect(study.snapshot.recordings.length).to.equal(1);
    expect(shadowText(study, '.messages .alert'), 'the refusal stays readable').to.equal(message);
  });

  it('offers several recordings and shows the one chosen', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study room=${room} no-files>
        <ringdown-place kind="seat" name="desk" at="2.7 1.4 1.2"></ringdown-place>
        <ringdown-recording
          src=${roomAddress(1.3)}
          label="Studio"
          stage="before"
          seat="desk"
        ></ringdown-recording>
        <ringdown-recording src=${roomAddress(0.9)} label="Studio" stage="after"></ringdown-recording>
        <ringdown-ridges></ringdown-ridges>
      </ringdown-study>`,
    );
    await waitUntil(() => study.snapshot.recordings.length === 2, 'two recordings', { timeout: 10000 });
    await ready(study);
    expect(study.snapshot.recordings[0].seat).to.deep.equal({ x: 2.7, y: 1.4, z: 1.2 });
    expect(study.snapshot.active).to.equal(0);
    await study.updateComplete;
    const chooser = shadow<HTMLSelectElement>(study, 'select');
    expect([...chooser.options].map(({ text }) => text.trim())).to.deep.equal([
      'Studio (before)',
      'Studio (after)',
    ]);
    chooser.selectedIndex = 1;
    const changes = await heard(study, 'ringdown-study-change', () =>
      chooser.dispatchEvent(new Event('change')),
    );
    expect(changes.map(({ detail }) => (detail as { what: string }).what)).to.deep.equal(['active']);
    await ready(study);
    expect(slowRidge(study.snapshot).decayTimeSeconds).to.be.closeTo(0.9, 0.08);
  });

  it('drops a recording whose element leaves, and reads one again whose attribute changes', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study
        ><ringdown-recording src=${roomAddress()} label="One"></ringdown-recording
      ></ringdown-study>`,
    );
    await ready(study);
    study.querySelector('ringdown-recording')!.label = 'Two';
    await waitUntil(() => study.snapshot.recordings[0]?.label === 'Two', 'renamed', { timeout: 10000 });
    study.querySelector('ringdown-recording')!.remove();
    await waitUntil(() => study.snapshot.status === 'empty', 'empty again', { timeout: 10000 });
  });

  it('computes again when an attribute changes', async () => {
    const study = await whole();
    await addFiles(study, roomFile());
    await ready(study);
    study.setAttribute('window', '0,2');
    study.setAttribute('to', '120');
    study.removeAttribute('room');
    await waitUntil(() => study.snapshot.grid?.windowSeconds === 0.2, 'a new grid', { timeout: 10000 });
    const { grid, diagnosis, choices } = await ready(study);
    expect(choices.toHz).to.equal(120);
    expect(grid!.frequenciesHz[grid!.frequenciesHz.length - 1]).to.be.closeTo(120, 1e-6);
    expect(diagnosis!.room).to.equal(null);
    study.removeAttribute('window');
    await waitUntil(() => study.snapshot.grid?.windowSeconds === 0.3, 'the default again', {
      timeout: 10000,
    });
  });

  it('says which attribute cannot be read, and keeps the rest', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study room="5.4x4.1" window="wide" range="40"></ringdown-study>`,
    );
    const text = shadowText(study, '.messages .alert');
    expect(text).to.contain('“5.4x4.1” is not a room size');
    expect(text).to.contain('window="wide" is not a number');
    expect(study.snapshot.choices.rangeDb).to.equal(40);
    study.setAttribute('room', room);
    study.setAttribute('window', '0.3');
    await study.updateComplete;
    await aTimeout(0);
    expect(shadowText(study, '.messages .alert')).to.equal('');
  });

  it('says so when an address holds nothing', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study src="/no-such-file.wav"></ringdown-study>`,
    );
    const event = await oneEvent<CustomEvent<{ message: string }>>(study, 'ringdown-error');
    expect(event.detail.message).to.contain('the server answered 404');
  });

  it('survives being moved, with the same study and its pictures', async () => {
    const study = await whole();
    await addFiles(study, roomFile());
    await ready(study);
    await drawn(view(study, 'waterfall'));
    const before = study.study;
    const home = document.createElement('section');
    study.parentElement!.append(home);
    home.append(study);
    await aTimeout(300);
    expect(study.study, 'the same study').to.equal(before);
    expect(study.snapshot.status).to.equal('ready');
    study.setAttribute('range', '30');
    await drawn(view(study, 'waterfall'));
    await drawn(view(study, 'spectrogram'));
    await addFiles(study, roomFile('second.wav', 0.8));
    expect(study.snapshot.recordings.length).to.equal(2);
  });

  it('reads its files again when it comes back after a long absence', async () => {
    const study = await whole();
    await addFiles(study, roomFile());
    await ready(study);
    const home = study.parentElement!;
    study.remove();
    await aTimeout(300);
    home.append(study);
    await ready(study);
    expect(study.snapshot.recordings.map(({ label }) => label)).to.deep.equal(['studio']);
    await drawn(view(study, 'spectrogram'));
  });

  it('offers frequencies, axis, times and range, which all its views follow', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study room=${room} src=${roomAddress()} no-files>
        <ringdown-spectrogram></ringdown-spectrogram>
        <ringdown-decay-times></ringdown-decay-times>
        <ringdown-response></ringdown-response>
        <ringdown-modes></ringdown-modes>
      </ringdown-study>`,
    );
    await ready(study);
    await study.updateComplete;
    expect(shadowText(study, '.choices small')).to.equal('20 Hz to 200 Hz, logarithmic; 1.00 s; 50 dB');
    shadow<HTMLDetailsElement>(study, '.choices').open = true;
    const names = ['spectrogram', 'decay-times', 'response', 'modes'];
    const before = new Map<string, string>();
    const picture = async (name: string): Promise<string> => {
      const element = view(study, name) as RingdownSpectrogram;
      await drawn(element, 5);
      return element.toSvg({ cssWidth: 600, cssHeight: 300 })!;
    };
    for (const name of names) before.set(name, await picture(name));
    const set = (name: string, value: string): Promise<CustomEvent[]> => {
      const field = shadow<HTMLInputElement | HTMLSelectElement>(study, `.choices [name=${name}]`);
      if (field instanceof HTMLSelectElement)
        field.selectedIndex = [...field.options].findIndex(({ text }) => text.trim() === value);
      else field.value = value;
      return heard(study, 'ringdown-study-change', () => field.dispatchEvent(new Event('change')));
    };
    expect(
      (await set('axis', 'linear')).map(({ detail }) => (detail as { what: string }).what),
    ).to.deep.equal(['choices']);
    await ready(study);
    for (const name of names) expect(await picture(name), name).to.not.equal(before.get(name));
    await set('toHz', '150,5');
    expect(study.snapshot.choices.toHz).to.equal(150.5);
    expect(await set('fromHz', '200')).to.deep.equal([]);
    expect(shadowText(study, '.choices .alert')).to.match(/200 Hz, must lie below the highest, 150.5 Hz/);
    await set('fromHz', 'bass');
    expect(shadowText(study, '.choices .alert')).to.match(/“bass” is not a frequency/);
    expect(study.snapshot.choices.fromHz, 'as it was').to.equal(20);
    await ready(study);
    study.noChoices = true;
    await study.updateComplete;
    expect(study.shadowRoot!.querySelector('.choices')).to.equal(null);
  });

  it('offers the colours of level, which all its pictures take, also when saved, linked or printed', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study room=${room} no-files scale="clear">
        <ringdown-recording
          label="Desk"
          seat="3.7 1.4 1.2"
          src=${roomAddress(1.3)}
          stage="before"
        ></ringdown-recording>
        <ringdown-recording
          label="Desk"
          seat="3.7 1.4 1.2"
          src=${roomAddress(0.6)}
          stage="after"
        ></ringdown-recording>
        <ringdown-waterfall></ringdown-waterfall>
        <ringdown-spectrogram style="--ringdown-scale: dusk"></ringdown-spectrogram>
        <ringdown-comparison></ringdown-comparison>
      </ringdown-study>`,
    );
    await waitUntil(() => study.snapshot.recordings.length === 2, 'two recordings', { timeout: 10000 });
    const before = await ready(study);
    const names = ['waterfall', 'spectrogram', 'comparison'];
    for (const name of names) await drawn(view(study, name));
    const canvasOf = (name: string): HTMLCanvasElement => shadow(view(study, name), 'canvas');
    /** Whether a picture has the colours about the middle of a scale: its key has them all. */
    const holds = (name: string, scale: 'dusk' | 'dawn' | 'clear'): boolean => {
      const { width, height } = canvasOf(name);
      const copy = Object.assign(document.createElement('canvas'), { width, height });
      const context = copy.getContext('2d', { willReadFrequently: true })!;
      context.drawImage(canvasOf(name), 0, 0);
      const pixels = new Uint32Array(context.getImageData(0, 0, width, height).data.buffer);
      const table = scaleTable(scale);
      const middle = new Set(new Uint32Array(table.buffer, table.byteOffset, 256).subarray(90, 166));
      return pixels.reduce((count, pixel) => count + Number(middle.has(pixel)), 0) > 20;
    };
    const scales = ['dusk', 'dawn', 'clear'] as const;
    const shown = async (scale: (typeof scales)[number], ...of: readonly string[]): Promise<void> => {
      for (const name of of.length > 0 ? of : names) {
        view(study, name).scrollIntoView({ block: 'center' });
        const right = (): boolean => scales.every((one) => holds(name, one) === (one === scale));
        await waitUntil(right, `${name} is not ${scale}`, { timeout: 10000 });
      }
    };
    await shown('clear');
    const select = shadow<HTMLSelectElement>(study, '.choices [name=scale]');
    expect([...select.options].map(({ text }) => text.trim())).to.deep.equal([
      'as the page',
      'night blue to ivory',
      'paper to ink',
      'for colour-vision deficiency',
    ]);
    expect(select.selectedIndex).to.equal(3);
    const choose = async (index: number): Promise<void> => {
      select.selectedIndex = index;
      const events = await heard(study, 'ringdown-study-change', () =>
        select.dispatchEvent(new Event('change')),
      );
      expect(events.map(({ detail }) => (detail as { what: string }).what)).to.deep.equal(['choices']);
    };
    await choose(2);
    await shown('dawn');
    expect(study.viewLink).to.contain(';scale=dawn');
    const svg = (view(study, 'waterfall') as RingdownSpectrogram).toSvg()!;
    expect(svg).to.contain(scaleColour('dawn', 47.5, [0, 48]));
    await choose(3);
    const saved = (view(study, 'waterfall') as RingdownSpectrogram).toSvg()!;
    expect(saved).to.contain(scaleColour('clear', 47.5, [0, 48]));
    expect(saved).not.to.contain(scaleColour('dawn', 47.5, [0, 48]));
    window.dispatchEvent(new Event('beforeprint'));
    await shown('clear');
    window.dispatchEvent(new Event('afterprint'));
    const after = study.snapshot;
    expect(after.grid, 'no grid is computed again').to.equal(before.grid);
    expect(after.diagnosis).to.equal(before.diagnosis);
    expect((JSON.parse(study.toJson()) as { choices: { scale: string } }).choices.scale).to.equal('clear');
    await choose(0);
    const own = view(study, 'spectrogram');
    await shown('dusk', 'spectrogram');
    await shown('dawn', 'waterfall', 'comparison');
    own.style.removeProperty('--ringdown-scale');
    await shown('dawn');
    study.setAttribute('scale', 'rainbow');
    await study.updateComplete;
    expect(shadowText(study, '.messages .alert')).to.match(/scale="rainbow".*auto, dusk, dawn, clear/);
  });
});
