import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownSpectrogram } from '../../src/elements/spectrogram/spectrogram.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { drawn, ready, roomAddress, waitUntil } from './support.js';

/** A study as a build keeps it, and the address of its file. */
async function savedStudy(): Promise<{ text: string; address: string; saved: RingdownStudy }> {
  const saved = await fixture<RingdownStudy>(
    html`<ringdown-study
      src=${roomAddress()}
      room="5.6x3.9x2.7"
      label="Desk"
      to="100"
      range="40"
    ></ringdown-study>`,
  );
  await ready(saved);
  const text = saved.toJson();
  return { text, saved, address: URL.createObjectURL(new Blob([text], { type: 'application/json' })) };
}

describe('a saved study named as the file of a page', function () {
  this.timeout(60000);

  it('is drawn without its recording, with the choices and the room it was saved with', async () => {
    const { address, saved } = await savedStudy();
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study src=${address}><ringdown-spectrogram></ringdown-spectrogram></ringdown-study>`,
    );
    await ready(study);
    const { recordings, choices, room, diagnosis } = study.snapshot;
    expect(recordings.map(({ label }) => label)).to.deep.equal(['Desk']);
    expect(choices.toHz).to.equal(100);
    expect(choices.rangeDb).to.equal(40);
    expect(room?.size).to.deep.equal(saved.snapshot.room?.size);
    // Of the bass at its own rate, not of the file: the same within what each resonance is known to.
    const before = saved.snapshot.diagnosis!.resonances;
    expect(diagnosis!.resonances.length).to.equal(before.length);
    expect(before.length).to.be.greaterThan(0);
    diagnosis!.resonances.forEach(({ frequencyHz }, k) =>
      expect(frequencyHz).to.be.closeTo(before[k].frequencyHz, before[k].frequencySdHz),
    );
    const view = study.querySelector<RingdownSpectrogram>('ringdown-spectrogram')!;
    await drawn(view);
  });

  it('gives way to what the attributes of the page say', async () => {
    const { address } = await savedStudy();
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study src=${address} range="60" room="4x3x2.5"></ringdown-study>`,
    );
    await ready(study);
    expect(study.snapshot.choices.rangeDb).to.equal(60);
    expect(study.snapshot.choices.toHz).to.equal(100);
    expect(study.snapshot.room?.size?.lengthMetres).to.equal(4);
  });

  it('is replaced when the page names another file, and survives being moved', async () => {
    const { address } = await savedStudy();
    const study = await fixture<RingdownStudy>(html`<ringdown-study src=${address}></ringdown-study>`);
    await ready(study);
    const other = document.createElement('div');
    study.parentElement!.append(other);
    other.append(study);
    await waitUntil(() => study.snapshot.recordings.length === 1, 'still there');
    study.setAttribute('src', roomAddress());
    study.setAttribute('label', 'Sofa');
    await waitUntil(() => study.snapshot.recordings.map(({ label }) => label).join() === 'Sofa', 'replaced', {
      timeout: 20000,
    });
  });

  it('is refused in one sentence where it is broken', async () => {
    const address = URL.createObjectURL(
      new Blob(['{"format":"ringdown-study"'], { type: 'application/json' }),
    );
    const study = await fixture<RingdownStudy>(html`<ringdown-study src=${address}></ringdown-study>`);
    await waitUntil(() => study.feed.failures.length > 0, 'refused');
    expect(study.feed.failures[0].code).to.equal('study-not-json');
  });
});
