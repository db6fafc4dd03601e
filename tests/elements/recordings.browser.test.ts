import { expect, fixture, html } from '@open-wc/testing';
import { sendKeys, sendMouse } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownRecordings } from '../../src/elements/recordings/recordings.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import {
  drawn,
  heard,
  ready,
  room,
  roomAddress,
  shadow,
  shadowText,
  stereoAddress,
  waitUntil,
} from './support.js';

const several = async (style = ''): Promise<{ study: RingdownStudy; view: RingdownRecordings }> => {
  const page = await fixture(
    html`<div style=${style}>
      <ringdown-study no-files room=${room}>
        <ringdown-recording src=${roomAddress()} label="Studio" stage="before"></ringdown-recording>
        <ringdown-recording src=${roomAddress(0.9)} label="Studio" stage="after"></ringdown-recording>
        <ringdown-recordings></ringdown-recordings>
      </ringdown-study>
    </div>`,
  );
  const study = page.querySelector('ringdown-study')!;
  await waitUntil(() => study.snapshot.recordings.length === 2, 'two recordings', { timeout: 15000 });
  await ready(study);
  const view = page.querySelector('ringdown-recordings')!;
  await view.updateComplete;
  return { study, view };
};

describe('ringdown-recordings', () => {
  afterEach(() => sendMouse({ type: 'move', position: [0, 0] }));

  it('works alone: trace, range per band, notes in words', async () => {
    const view = await fixture<RingdownRecordings>(
      html`<ringdown-recordings src=${roomAddress()} room=${room} label="Studio"></ringdown-recordings>`,
    );
    await ready(view);
    await drawn(view);
    expect(shadowText(view, '.list tbody tr')).to.match(/Studio.*50 ms.*2\.00 s/);
    expect(view.shadowRoot!.querySelectorAll('.twin tbody tr').length).to.equal(11);
    const heads = [...view.shadowRoot!.querySelectorAll('.twin thead th')].map((th) => th.textContent.trim());
    expect(heads.slice(4)).to.deep.equal(['EDT', 'T20', 'T30', 'Shortest believable']);
    for (const row of view.shadowRoot!.querySelectorAll('.twin tbody tr')) {
      const cells = [...row.querySelectorAll('td')].map((td) => td.textContent.trim());
      for (const cell of cells.slice(3))
        expect(cell).to.match(
          /^(\d.*\u00a0m?s|shorter than .*|too little range \(.*\)|the file ends first)$/,
        );
    }
    expect(shadowText(view, '.notes').length).to.be.greaterThan(20);
    expect(shadow(view, 'canvas').getAttribute('aria-label')).to.contain('Studio');
  });

  it('lists every recording with a verdict, and chooses the one the study shows', async () => {
    const { study, view } = await several();
    const rows = [...view.shadowRoot!.querySelectorAll('.list tbody tr')];
    expect(rows.length).to.equal(2);
    for (const row of rows)
      expect(row.querySelector('.verdict span')!.textContent).to.match(/fit to be read|read with care/);
    expect(rows[0].className).to.equal('selected');
    const events = await heard(view, 'ringdown-study-change', () => rows[1].querySelector('button')!.click());
    expect(events.map(({ detail }) => (detail as { what: string }).what)).to.deep.equal(['active']);
    expect(study.snapshot.active).to.equal(1);
    await ready(study);
    await view.updateComplete;
    expect(rows[1].querySelector('button')!.getAttribute('aria-pressed')).to.equal('true');
  });

  it('reads another channel on request', async () => {
    const view = await fixture<RingdownRecordings>(
      html`<ringdown-recordings src=${stereoAddress()} label="Two channels"></ringdown-recordings>`,
    );
    const before = await ready(view);
    await drawn(view);
    expect(before.recordings[0].channel).to.equal(1);
    const chooser = shadow<HTMLSelectElement>(view, '[part=channel]');
    chooser.selectedIndex = 1;
    chooser.dispatchEvent(new Event('change'));
    await waitUntil(() => view.snapshot!.recordings[0].channel === 2, 'channel 2', { timeout: 10000 });
    await ready(view);
    expect(shadowText(view, '.notes')).to.contain('Channel 2 of 2');
  });

  it('moves the cursor by pointer in time and in the bands, and by the keyboard', async () => {
    const { study, view } = await several('inline-size: 780px');
    const canvas = await drawn(view);
    canvas.scrollIntoView({ block: 'center' });
    const box = canvas.getBoundingClientRect();
    const at = (x: number, y: number): [number, number] => [
      Math.round(box.left + box.width * x),
      Math.round(box.top + box.height * y),
    ];
    await sendMouse({ type: 'move', position: at(0.3, 0.6) });
    await waitUntil(() => study.snapshot.cursor !== null, 'a cursor');
    const time = study.snapshot.cursor!.timeSeconds;
    expect(time).to.be.within(0.5, 1.2);
    await sendMouse({ type: 'move', position: at(0.85, 0.5) });
    await waitUntil(() => study.snapshot.cursor!.frequencyHz > 30, 'a frequency');
    expect(study.snapshot.cursor!.timeSeconds, 'the time stays').to.equal(time);
    expect(shadowText(view, '.readout')).to.match(/band: \d+\sdB of range/);
    await sendMouse({ type: 'move', position: [0, 0] });
    const slider = shadow<HTMLInputElement>(view, '[part=time-slider]');
    slider.focus();
    await sendKeys({ press: 'ArrowRight' });
    await view.updateComplete;
    expect(slider.getAttribute('aria-valuetext')).to.match(/\d\s(ms|s)$/);
    await waitUntil(() => shadowText(view, '[role=status]').length > 5, 'the read-out is spoken');
  });
});
