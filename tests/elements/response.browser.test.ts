import { expect, fixture, html } from '@open-wc/testing';
import { sendKeys, sendMouse } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownResponse } from '../../src/elements/response/response.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { bestLevel, shareOf, spreadOf, type Response } from '../../src/sheet/response-chart.js';
import { drawn, ready, room, roomAddress, shadow, shadowText, waitUntil } from './support.js';

async function alone(attributes: Record<string, string> = {}): Promise<RingdownResponse> {
  const view = document.createElement('ringdown-response');
  for (const [name, value] of Object.entries({ src: roomAddress(), room, label: 'Studio', ...attributes }))
    view.setAttribute(name, value);
  (await fixture(html`<div></div>`)).append(view);
  await ready(view);
  await waitUntil(() => (view.snapshot?.responses.length ?? 0) > 0, 'a response', { timeout: 10000 });
  await view.updateComplete;
  return view;
}

const shareText = (view: RingdownResponse): string => shadowText(view, '.share');

describe('ringdown-response', () => {
  afterEach(() => sendMouse({ type: 'move', position: [0, 0] }));

  it('smooths nothing unless asked, says what is on, and lets every view of the study know', async () => {
    const view = await alone();
    expect(shadowText(view, 'figcaption')).to.match(/^Not smoothed\./);
    const chooser = shadow<HTMLSelectElement>(view, '[part=smoothing]');
    for (const [index, text] of [
      [5, 'Smoothed over 1/3 octave'],
      [7, 'balance of tone only'],
    ] as const) {
      chooser.selectedIndex = index;
      chooser.dispatchEvent(new Event('change'));
      await waitUntil(() => shadowText(view, 'figcaption').includes(text), text, { timeout: 10000 });
    }
    expect(view.snapshot!.choices.smoothing).to.equal('erb');
    expect(view.snapshot!.responses[0]!.smoothing).to.equal('erb');
  });

  it('tells how much lies within its window, which has two presets and can be put away', async () => {
    const view = await alone();
    expect(shareText(view)).to.match(
      /^\d+\s%\swithin ±2\.5\sdB from 20\sHz to 200\sHz, about -?\d+\.\d\sdB\.$/,
    );
    const wide = parseInt(shareText(view), 10);
    view.tolerance = 1;
    await view.updateComplete;
    expect(parseInt(shareText(view), 10)).to.be.lessThan(wide);
    view.tolerance = 'none';
    await view.updateComplete;
    expect(shareText(view)).to.equal('');
  });

  it('moves its window by the keyboard, by the mouse, and back to where most fits', async () => {
    const view = await alone();
    const canvas = await drawn(view, 20);
    const slider = shadow<HTMLInputElement>(view, '[part=tolerance-slider]');
    const best = Number(slider.value);
    slider.focus();
    await sendKeys({ press: 'ArrowRight' });
    await view.updateComplete;
    expect(Number(slider.value)).to.be.closeTo(best + 0.1, 0.01);
    expect(slider.getAttribute('aria-valuetext')).to.match(/\d\.\d\sdB$/);

    canvas.scrollIntoView({ block: 'center' });
    const box = canvas.getBoundingClientRect();
    // The plot reaches from 26 px below the top to 56 px above the bottom, and over the study's range.
    const [bottom, top] = [Number(slider.min), Number(slider.max)];
    const yOf = (level: number): number =>
      box.top + 26 + ((top - level) / (top - bottom)) * (box.height - 26 - 56);
    const x = Math.round(box.left + box.width / 2);
    await sendMouse({ type: 'move', position: [x, Math.round(yOf(best))] });
    await sendMouse({ type: 'down' });
    await sendMouse({ type: 'move', position: [x, Math.round(yOf(best - 10))] });
    await sendMouse({ type: 'up' });
    await view.updateComplete;
    expect(Number(slider.value)).to.be.closeTo(best - 10, 1);
    const button = [...view.shadowRoot!.querySelectorAll('button')].find(({ textContent }) =>
      textContent.includes('most fits'),
    )!;
    button.click();
    await view.updateComplete;
    expect(Number(slider.value)).to.be.closeTo(best, 0.01);
  });

  it('takes its window from attributes with a decimal comma, and says which cannot be read', async () => {
    const view = await alone({ tolerance: '1,5', 'tolerance-from': '30', 'tolerance-to': 'ninety' });
    expect(shareText(view)).to.match(/within ±1\.5\sdB from 30\sHz to 200\sHz/);
    expect(shadowText(view, '.alert')).to.contain('tolerance-to="ninety" is not a number');
  });

  it('overlays the recordings of the shown stage with their spread', async () => {
    const study = await fixture<RingdownStudy>(
      html`<ringdown-study no-files room=${room}>
        <ringdown-recording src=${roomAddress()} label="Desk"></ringdown-recording>
        <ringdown-recording src=${roomAddress(0.4)} label="Sofa"></ringdown-recording>
        <ringdown-recording src=${roomAddress(0.3)} label="Later" stage="after"></ringdown-recording>
        <ringdown-response></ringdown-response>
      </ringdown-study>`,
    );
    await waitUntil(() => study.snapshot.responses.filter(Boolean).length === 3, 'three responses', {
      timeout: 20000,
    });
    await ready(study);
    const view = study.querySelector('ringdown-response')!;
    await view.updateComplete;
    expect(shadowText(view, '.twin thead th')).to.match(/^Frequency \| Desk \| Sofa \| Spread/);
    expect(shadowText(view, 'figcaption')).to.match(/at most by \d+\.\d\sdB, at 4[12]\.\d/);
    const box = shadow<HTMLInputElement>(view, 'input[type=checkbox]');
    box.click();
    await view.updateComplete;
    expect(shadowText(view, '.twin thead th')).not.to.contain('Sofa');
    view.noSeats = true;
    await view.updateComplete;
    expect(view.shadowRoot!.querySelector('input[type=checkbox]')).to.equal(null);
  });
});

describe('the tolerance window', () => {
  const response = (levels: number[]): Response =>
    ({
      frequenciesHz: Float64Array.from(levels, (_, k) => 20 * 10 ** (k / (levels.length - 1))),
      levelsDb: Float64Array.from(levels),
    }) as Response;
  const window = { halfDb: 2.5, fromHz: 20, toHz: 200 };

  it('goes where most fits, but not down to what the source does not play', () => {
    const reach = response([...new Array<number>(60).fill(-40), ...new Array<number>(40).fill(0)]);
    expect(Math.abs(bestLevel(reach, window))).to.be.at.most(2.5);
    const hill = response(Array.from({ length: 101 }, (_, k) => (k < 70 ? 3 : 20)));
    const level = bestLevel({ ...hill, levelsDb: hill.levelsDb.map((v) => v / 2) }, window);
    expect(level).to.be.within(-1, 4);
    expect(shareOf(response(new Array<number>(50).fill(7)), { ...window, levelDb: 7 })).to.be.closeTo(
      1,
      1e-9,
    );
    expect(shareOf(response(new Array<number>(50).fill(7)), { ...window, levelDb: 12 })).to.equal(0);
  });

  it('knows no spread of one seat', () => {
    const seat = (index: number, shift: number) => ({
      index,
      label: '',
      calibrated: false,
      response: response([0 + shift, 5, 10 + shift]),
    });
    expect(spreadOf([seat(0, 0)])).to.equal(null);
    const spread = spreadOf([seat(0, 0), seat(1, 4)])!;
    expect(spread.mostDb).to.equal(4);
    expect(spread.medianDb).to.equal(4);
  });
});
