import { expect, fixture } from '@open-wc/testing';
import { emulateMedia, sendKeys, sendMouse } from '@web/test-runner-commands';
import '../../src/define/index.js';
import { currentRenderer } from '../../src/draw/renderer.js';
import { drawCounters } from '../../src/draw/schedule.js';
import type { RingdownPressureMap } from '../../src/elements/pressure-map/pressure-map.js';
import { aTimeout, colours, heard, shadow, shadowText, waitUntil } from './support.js';

async function made(
  attributes = 'room="5.4x4.1x2.7"',
  style = '',
  lang = 'en',
): Promise<RingdownPressureMap> {
  const page = await fixture(
    `<div style="${style}" lang="${lang}"><ringdown-study ${attributes} no-files>
      <ringdown-place kind="seat" name="console" at="2.7 1.4 1.2"></ringdown-place>
      <ringdown-place kind="seat" name="corner" at="0.2 0.2 1.2"></ringdown-place>
      <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
      <ringdown-pressure-map></ringdown-pressure-map>
    </ringdown-study></div>`,
  );
  const map = page.querySelector<RingdownPressureMap>('ringdown-pressure-map')!;
  await waitUntil(() => map.snapshot?.pressure?.atSeats.length === 2, 'the map', { timeout: 10000 });
  await map.updateComplete;
  await painted(map);
  return map;
}

const field = (map: RingdownPressureMap) => shadow<HTMLCanvasElement>(map, 'canvas.colours');

async function painted(map: RingdownPressureMap): Promise<void> {
  map.scrollIntoView({ block: 'center' });
  await waitUntil(
    () =>
      map.shadowRoot!.querySelector('canvas.colours') && field(map).width > 200 && colours(field(map)) > 60,
    'the map stays blank',
    { timeout: 10000 },
  );
}

/** Colour of the plan next to a corner: the first mode is loud there. */
const picture = (map: RingdownPressureMap): string => field(map).toDataURL();

describe('ringdown-pressure-map', () => {
  before(() => emulateMedia({ reducedMotion: 'reduce' }));
  afterEach(() => sendMouse({ type: 'move', position: [0, 0] }));
  after(() => emulateMedia({ reducedMotion: 'no-preference' }));

  it('shows the lowest mode, the chosen one, and tells each place its level', async () => {
    const map = await made('room="5.4x4.1x2.7" absorption="0.1"');
    expect(shadowText(map, 'figcaption')).to.match(/Mode \(1,0,0\), axial, 31\.8.Hz/);
    const rows = [...map.shadowRoot!.querySelectorAll('.twin tbody tr')].map(({ textContent }) =>
      textContent.replace(/\s+/g, ' ').trim(),
    );
    // Half the length is the node of (1,0,0); beside the wall it is loud.
    expect(rows[0]).to.match(/^console Seat -?0\.00 on a node -?0 dB$/);
    expect(rows[1]).to.match(/^corner Seat 0\.99 -?0 dB -19 dB$/);
    expect(rows).to.have.length(5);
    expect(shadowText(map, '.twin')).not.to.match(/NaN|Infinity|undefined|null/);
    const select = shadow<HTMLSelectElement>(map, '[part=mode]');
    select.selectedIndex = 1;
    const events = await heard(map, 'ringdown-mode-select', () => select.dispatchEvent(new Event('change')));
    expect(events.map(({ detail }) => (detail as { order: number[] }).order)).to.deep.equal([[0, 1, 0]]);
    await waitUntil(() => map.snapshot!.pressure!.mode.order[1] === 1, 'another map');
    await map.updateComplete;
    expect(shadowText(map, 'figcaption')).to.contain('(0,1,0)');
  });

  it('is read with three sliders, and spoken', async () => {
    const map = await made();
    const slider = shadow<HTMLInputElement>(map, '[part=x-slider]');
    expect(shadowText(map, '.readout')).to.match(/x 2\.70.m, y 1\.40.m, height 1\.20.m: on a node$/);
    slider.focus();
    await sendKeys({ press: 'Home' });
    await map.updateComplete;
    expect(slider.getAttribute('aria-valuetext')).to.match(/^0\.00.m$/);
    expect(shadowText(map, '.readout')).to.match(/: -?0.dB, above$/);
    await waitUntil(() => shadowText(map, 'div[role=status]') === shadowText(map, '.readout'), 'spoken', {
      timeout: 3000,
    });
    const before = picture(map);
    map.study!.selectMode([0, 0, 1]);
    await waitUntil(() => map.snapshot!.pressure!.mode.order[2] === 1, 'a mode in height');
    await map.updateComplete;
    await waitUntil(() => picture(map) !== before, 'another picture');
    const other = picture(map);
    const height = shadow<HTMLInputElement>(map, '[part=z-slider]');
    height.focus();
    await sendKeys({ press: 'Home' });
    await map.updateComplete;
    expect(shadowText(map, '.readout')).to.match(/: -?0.dB, above$/);
    await waitUntil(() => picture(map) !== other, 'the plan at the floor');
  });

  it('shows particle motion instead: greatest at the node, nothing at the wall', async () => {
    const map = await made();
    const before = picture(map);
    const select = shadow<HTMLSelectElement>(map, '[part=quantity]');
    select.selectedIndex = 1;
    select.dispatchEvent(new Event('change'));
    await map.updateComplete;
    await waitUntil(() => picture(map) !== before, 'another picture');
    expect(shadowText(map, '.readout')).to.match(/: motion -?0.dB$/);
    shadow(map, '[part=x-slider]').focus();
    await sendKeys({ press: 'Home' });
    await map.updateComplete;
    expect(shadowText(map, '.readout')).to.match(/: motion no motion$/);
    expect(shadowText(map, 'figcaption')).to.contain('not what is heard');
  });

  it('follows the pointer, and goes back when it leaves; a press puts the cursor there', async () => {
    const map = await made();
    const before = shadowText(map, '.readout');
    const box = shadow(map, 'canvas').getBoundingClientRect();
    const position: [number, number] = [
      Math.round(box.left + box.width / 2 + 60),
      Math.round(box.top + box.height * 0.25),
    ];
    await sendMouse({ type: 'move', position });
    await waitUntil(() => shadowText(map, '.readout') !== before, 'a reading');
    await sendMouse({ type: 'move', position: [0, 0] });
    await waitUntil(() => shadowText(map, '.readout') === before, 'back');
    await sendMouse({ type: 'click', position });
    await sendMouse({ type: 'move', position: [0, 0] });
    await map.updateComplete;
    expect(shadowText(map, '.readout')).not.to.equal(before);
  });

  it('swings slowly, stands still when told, under reduced motion, out of sight and on paper', async () => {
    const map = await made();
    const still = picture(map);
    await aTimeout(400);
    expect(picture(map), 'reduced motion').to.equal(still);
    expect(map.shadowRoot!.querySelector('[part=swing]')).to.equal(null);
    await emulateMedia({ reducedMotion: 'no-preference' });
    await waitUntil(() => map.shadowRoot!.querySelector('[part=swing]'), 'the button');
    await waitUntil(() => picture(map) !== still, 'it swings');
    shadow<HTMLButtonElement>(map, '[part=swing]').click();
    await map.updateComplete;
    await waitUntil(() => picture(map) === still, 'it stands');
    shadow<HTMLButtonElement>(map, '[part=swing]').click();
    await waitUntil(() => picture(map) !== still, 'it swings again');
    window.dispatchEvent(new Event('beforeprint'));
    expect(picture(map), 'whole on paper').to.equal(still);
    window.dispatchEvent(new Event('afterprint'));
    map.style.display = 'none';
    await aTimeout(100);
    const hidden = picture(map);
    await aTimeout(400);
    expect(picture(map), 'out of sight').to.equal(hidden);
    map.style.display = '';
    await waitUntil(() => picture(map) !== hidden, 'it goes on once it is seen again');
    await emulateMedia({ reducedMotion: 'reduce' });
  });

  it('shows a plan that is no box, and says what is outside', async () => {
    const map = await made('plan="0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5" height="2.5"');
    expect(shadowText(map, 'figcaption')).to.match(/Mode 1 \+ 0, of the plan/);
    for (const [name, press] of [
      ['x', 'End'],
      ['y', 'End'],
    ] as const) {
      shadow(map, `[part=${name}-slider]`).focus();
      await sendKeys({ press });
    }
    await map.updateComplete;
    expect(shadowText(map, '.readout')).to.contain('outside the walls');
  });

  it('says why there is nothing, survives being moved, writes numbers as its page does', async () => {
    const empty = await fixture(`<ringdown-pressure-map></ringdown-pressure-map>`);
    expect(shadowText(empty, '.veil')).to.contain('No room yet');
    await expect(empty).to.be.accessible();
    const wrong = await fixture(`<ringdown-pressure-map room="5 by 4"></ringdown-pressure-map>`);
    await waitUntil(() => shadowText(wrong, '.veil').includes('is not a room size'), 'a sentence');
    const map = await made('room="5.4x4.1x2.7"', '', 'de');
    expect(shadowText(map, '.readout')).to.match(/2,70/);
    const home = document.createElement('section');
    map.parentElement!.append(home);
    home.append(map);
    await painted(map);
  });

  for (const [look, style] of Object.entries({
    light: '',
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}`, async function () {
      this.timeout(60000);
      const map = await made('room="5.4x4.1x2.7" absorption="0.1"', style);
      for (const details of map.shadowRoot!.querySelectorAll('details')) details.open = true;
      await expect(map).to.be.accessible();
      if (look === 'narrow') expect(map.scrollWidth).to.be.at.most(320);
    });

  it('shows the room in the one context of the page, turned by hand and by key, and gives it back', async () => {
    const map = await made('plan="0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5" height="2.5" absorption="0.1"');
    const [plan, room] = [...map.shadowRoot!.querySelectorAll<HTMLButtonElement>('.views button')];
    expect(plan.getAttribute('aria-pressed')).to.equal('true');
    const flat = picture(map);
    room.click();
    await waitUntil(() => drawCounters.contexts === 1 && picture(map) !== flat, 'the room', {
      timeout: 10000,
    });
    await aTimeout(200);
    expect(room.getAttribute('aria-pressed')).to.equal('true');
    expect(colours(field(map))).to.be.greaterThan(60);
    expect(shadow(map, 'canvas[role=img]').getAttribute('aria-label')).to.match(
      /upon the walls and the floor/,
    );
    await expect(map).to.be.accessible();
    const corner = picture(map);
    shadow<HTMLDetailsElement>(map, '.turning').open = true;
    const turn = shadow<HTMLInputElement>(map, '.turning input');
    turn.focus();
    await sendKeys({ press: 'ArrowRight' });
    await map.updateComplete;
    expect(turn.getAttribute('aria-valuetext')).to.equal('-25°');
    await waitUntil(() => picture(map) !== corner, 'turned by key');
    const turned = picture(map);
    const lines = shadow<HTMLCanvasElement>(map, 'canvas[role=img]');
    const { left, top, width, height } = lines.getBoundingClientRect();
    const [x, y] = [Math.round(left + width / 2), Math.round(top + height / 2)];
    await sendMouse({ type: 'move', position: [x, y] });
    await sendMouse({ type: 'down' });
    await sendMouse({ type: 'move', position: [x + 120, y] });
    await sendMouse({ type: 'up' });
    await waitUntil(() => picture(map) !== turned, 'turned by hand');
    const link = map.closest('ringdown-study')!.viewLink;
    expect(link).to.match(/;pressure-map=,,,,,room,-\d+(\.\d)?,36,1$/);
    const { frames } = drawCounters;
    await aTimeout(600);
    expect(drawCounters.frames, 'at rest nothing is drawn').to.equal(frames);
    const saved = new DOMParser().parseFromString(
      map.toSvg({ cssWidth: 600, cssHeight: 400 })!,
      'image/svg+xml',
    );
    expect(saved.querySelectorAll('image').length).to.equal(1);
    expect(saved.documentElement.textContent).to.contain('console');
    map.remove();
    await waitUntil(() => drawCounters.contexts === 0, 'given back', { timeout: 4000 });
  });

  it('comes back from a lost context with the same picture', async () => {
    const map = await made('room="5.4x4.1x2.7"');
    const flat = picture(map);
    map.view = 'room';
    await waitUntil(() => drawCounters.contexts === 1 && picture(map) !== flat, 'the room', {
      timeout: 10000,
    });
    await aTimeout(200);
    const before = picture(map);
    const lost = currentRenderer()!.loseContext();
    await waitUntil(() => picture(map) !== before && colours(field(map)) > 60, 'plan and section meanwhile');
    lost.restore();
    await waitUntil(() => picture(map) === before, 'the room again', { timeout: 5000 });
  });
});
