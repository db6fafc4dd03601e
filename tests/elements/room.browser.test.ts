import { expect, fixture } from '@open-wc/testing';
import { sendKeys, sendMouse } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { RingdownRoom } from '../../src/elements/room/room.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { encodeWav } from '../../src/signal/wav-write.js';
import { Rng } from '../../src/signal/random.js';
import { addMode } from '../support/signals.js';
import { aTimeout, colours, heard, ready, roomAddress, shadow, shadowText, waitUntil } from './support.js';

/** The low modes of 5.4 x 4.1 x 2.7 m, half a second each, as a file. */
function ringing(): string {
  const sampleRate = 8000;
  const samples = new Float64Array(2 * sampleRate);
  const random = new Rng(2);
  for (let n = 0; n < samples.length; n += 1) samples[n] = 1e-4 * (2 * random.uniform() - 1);
  for (const frequencyHz of [31.8, 41.9, 52.6, 63.6, 71.1, 75.9, 82.5, 89.5, 95.3])
    addMode(samples, sampleRate, frequencyHz, 0.6, 0.1, 0.05);
  const bytes = encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' });
  return URL.createObjectURL(new Blob([bytes.slice().buffer], { type: 'audio/wav' }));
}

async function made(attributes = 'room="5.4x4.1x2.7"', style = ''): Promise<RingdownRoom> {
  const page = await fixture(
    `<div style="${style}"><ringdown-study ${attributes} no-files>
      <ringdown-place kind="seat" name="console" at="3.7 1.4 1.2"></ringdown-place>
      <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
      <ringdown-room></ringdown-room>
    </ringdown-study></div>`,
  );
  const room = page.querySelector<RingdownRoom>('ringdown-room')!;
  await waitUntil(() => room.snapshot?.room && room.snapshot.places.length === 2, 'the room');
  await room.updateComplete;
  await painted(room);
  return room;
}

async function painted(room: RingdownRoom): Promise<HTMLCanvasElement> {
  room.scrollIntoView();
  await waitUntil(() => {
    const canvas = room.shadowRoot!.querySelector('canvas');
    return canvas && canvas.width > 150 && colours(canvas) > 8;
  }, 'the plan stays blank');
  return shadow<HTMLCanvasElement>(room, 'canvas');
}

async function type(room: RingdownRoom, selector: string, text: string): Promise<void> {
  const field = shadow<HTMLInputElement>(room, selector);
  field.focus();
  field.select();
  await sendKeys({ type: text });
  await sendKeys({ press: 'Tab' });
  await room.updateComplete;
}

const handle = (room: RingdownRoom, label: string): HTMLButtonElement =>
  [...room.shadowRoot!.querySelectorAll<HTMLButtonElement>('.handle')].find((one) =>
    one.getAttribute('aria-label')!.startsWith(label),
  )!;

const seat = (room: RingdownRoom) => room.snapshot!.places.find(({ name }) => name === 'console')!.at;

describe('ringdown-room', () => {
  it('reads 4,50 as 4.5 m and tells the page', async () => {
    const room = await made();
    const events = await heard(room, 'ringdown-study-change', () => type(room, '[part=length]', '4,50'));
    expect(room.snapshot!.room!.size.lengthMetres).to.equal(4.5);
    expect(events.map(({ detail }) => (detail as { what: string }).what)).to.deep.equal(['room']);
    expect(shadow<HTMLInputElement>(room, '[part=length]').value).to.equal('4.5');
    expect(shadowText(room, 'figcaption')).to.contain('49.8 m³');
  });

  it('refuses a side that no room has, with the reason where it was typed, and keeps the last good room', async () => {
    const room = await made();
    await type(room, '[part=width]', '410');
    const field = shadow<HTMLInputElement>(room, '[part=width]');
    expect(field.getAttribute('aria-invalid')).to.equal('true');
    const reason = room.shadowRoot!.getElementById(field.getAttribute('aria-describedby')!)!;
    expect(reason.textContent).to.match(/width .* 410 m.*no listener fits in/s);
    expect(field.value).to.equal('410');
    expect(room.snapshot!.room!.size.widthMetres).to.equal(4.1);
    await type(room, '[part=width]', 'wide');
    expect(shadowText(room, '.wrong')).to.contain('“wide” is not a length');
    await type(room, '[part=width]', '410 cm');
    expect(shadowText(room, '.wrong')).to.equal('');
    await type(room, '[part=temperature]', '400');
    expect(shadowText(room, '.wrong')).to.contain('outside what rooms have');
    await expect(room).to.be.accessible();
  });

  it('writes and reads feet and inches', async () => {
    const room = await made('room="16x12x8 ft"');
    const unit = shadow<HTMLSelectElement>(room, '[part=unit]');
    unit.value = 'ft';
    unit.dispatchEvent(new Event('change'));
    await room.updateComplete;
    expect(shadow<HTMLInputElement>(room, '[part=length]').value).to.equal('16 ft 0 in');
    await type(room, '[part=length]', `14'9"`);
    expect(room.snapshot!.room!.size.lengthMetres).to.be.closeTo(14.75 * 0.3048, 1e-9);
    await type(room, '[part=height]', '9');
    expect(room.snapshot!.room!.size.heightMetres).to.be.closeTo(9 * 0.3048, 1e-9);
  });

  it('moves a seat with the arrow keys, as far as the wall', async () => {
    const room = await made();
    handle(room, 'console').focus();
    await sendKeys({ press: 'ArrowRight' });
    await sendKeys({ press: 'ArrowUp' });
    await room.updateComplete;
    expect(seat(room)).to.deep.equal({ x: 3.8, y: 1.5, z: 1.2 });
    for (let k = 0; k < 5; k += 1) await sendKeys({ press: 'Shift+ArrowRight' });
    await room.updateComplete;
    expect(seat(room).x).to.equal(5.4);
    const active = room.shadowRoot!.activeElement!;
    expect(active.getAttribute('aria-label')).to.equal('console: x 5.4, y 1.5');
  });

  for (const [pixels, larger] of [
    [16, 1],
    [24, 1.5],
    [12, 1],
  ] as const)
    it(`moves a source by dragging it, and the recordings that were made there, with text of ${pixels} px`, async () => {
      const page = await fixture<RingdownStudy>(
        `<ringdown-study room="5.4x4.1x2.7" no-files style="font-size: ${pixels}px">
        <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
        <ringdown-recording src="${roomAddress()}" label="one" source="left"></ringdown-recording>
        <ringdown-room></ringdown-room>
      </ringdown-study>`,
      );
      await ready(page);
      const room = page.querySelector('ringdown-room')!;
      const picture = await painted(room);
      // Letters grow with the text, as far as 320 px of its own are left to the picture.
      const ratio = Math.min(3, devicePixelRatio);
      const scale = Math.min(larger, picture.clientWidth / 320);
      expect(picture.width).to.be.closeTo(picture.clientWidth * ratio, 1);
      expect(picture.getContext('2d')!.getTransform().a).to.be.closeTo(ratio * scale, 1e-6);
      const box = handle(room, 'left').getBoundingClientRect();
      const canvas = shadow(room, 'canvas').getBoundingClientRect();
      await sendMouse({ type: 'move', position: [Math.round(box.left + 14), Math.round(box.top + 14)] });
      await sendMouse({ type: 'down' });
      await sendMouse({
        type: 'move',
        position: [Math.round(canvas.left + canvas.width / 2), Math.round(canvas.top + canvas.height / 2)],
      });
      expect(room.snapshot!.places[0].at.x, 'not before it is let go').to.equal(0.4);
      await sendMouse({ type: 'up' });
      const { at } = room.snapshot!.places[0];
      expect(at.x).to.be.closeTo(2.7, 0.1);
      expect(at.y).to.be.closeTo(2.05, 0.1);
      expect(room.snapshot!.recordings[0].source).to.deep.equal(at);
      await sendMouse({ type: 'move', position: [0, 0] });
      await page.study.settled();
    });

  it('types, adds, names and removes places', async () => {
    const room = await made();
    shadow<HTMLButtonElement>(room, '[part=add-seat]').click();
    await room.updateComplete;
    expect(room.snapshot!.places.map(({ name }) => name)).to.deep.equal(['console', 'left', 'Seat 2']);
    await type(room, '[aria-label="Seat 2: height"]', '1,05');
    await type(room, '[aria-label="Name of Seat 2"]', 'sofa');
    expect(room.snapshot!.places[2]).to.deep.include({ name: 'sofa' });
    expect(room.snapshot!.places[2].at.z).to.equal(1.05);
    await type(room, '[aria-label="sofa: x"]', '9');
    expect(shadowText(room, '.places .wrong')).to.contain('sofa lies outside the walls');
    shadow<HTMLButtonElement>(room, '[aria-label="Remove sofa"]').click();
    await room.updateComplete;
    expect(room.snapshot!.places.length).to.equal(2);
  });

  it('draws a plan by its corners, keeps places where they stand, refuses walls that cross', async () => {
    const room = await made();
    const shape = shadow<HTMLSelectElement>(room, '[part=shape]');
    shape.value = 'plan';
    shape.dispatchEvent(new Event('change'));
    await room.updateComplete;
    expect(room.snapshot!.room!.plan!.corners.length).to.equal(4);
    shadow<HTMLButtonElement>(room, '[part=add-corner]').click();
    await room.updateComplete;
    expect(room.snapshot!.room!.plan!.corners.length).to.equal(5);
    // The new corner stands in the middle of the longest wall; half a metre out, everything moves up by as much.
    handle(room, 'Corner 2').focus();
    await sendKeys({ press: 'Shift+ArrowDown' });
    await room.updateComplete;
    expect(room.snapshot!.room!.size.widthMetres).to.be.closeTo(4.6, 1e-9);
    expect(seat(room).y).to.be.closeTo(1.9, 1e-9);
    await type(room, '[aria-label="Corner 2: y"]', '12');
    expect(shadowText(room, '.wrong')).to.match(/Walls \d and \d of the plan cross/);
    expect(room.snapshot!.room!.size.widthMetres).to.be.closeTo(4.6, 1e-9);
    await type(room, '[aria-label="Corner 2: y"]', '0');
    expect(shadowText(room, '.wrong')).to.equal('');
  });

  it('says what walls are made of, one for all or one by one', async () => {
    const room = await made();
    const select = shadow<HTMLSelectElement>(room, '[part=walls] select');
    select.value = 'concrete';
    select.dispatchEvent(new Event('change'));
    await room.updateComplete;
    expect(room.snapshot!.room!.absorptionBands!.length).to.equal(12);
    const floor = room.shadowRoot!.querySelectorAll<HTMLSelectElement>('[part=walls] .walls select')[4];
    floor.value = 'carpet';
    floor.dispatchEvent(new Event('change'));
    await room.updateComplete;
    expect(room.snapshot!.room!.absorption![4]).to.be.greaterThan(room.snapshot!.room!.absorption![5]);
    await type(room, '[part=length]', '6');
    expect(room.snapshot!.room!.absorptionBands!.length, 'walls stay').to.equal(12);
    // A coefficient of one's own, with a comma; a second one that is none is refused in a sentence.
    shadow<HTMLDetailsElement>(room, '[part=walls] details').open = true;
    floor.selectedIndex = floor.options.length - 1;
    floor.dispatchEvent(new Event('change'));
    await room.updateComplete;
    await type(room, '[part=own-wall]', '0,23');
    expect(room.snapshot!.room!.absorptionBands!.every(({ absorption }) => absorption[4] === 0.23)).to.equal(
      true,
    );
    await type(room, '[part=own-wall]', '1.7');
    expect(shadowText(room, '[part=walls] .wrong')).to.match(/1\.7.*between 0 and 1|0 .* 1/);
    expect(room.snapshot!.room!.absorption![4]).to.equal(0.23);
    await type(room, '[part=own-wall]', '0.3');
    expect(shadowText(room, '[part=constructions] tbody')).to.match(
      /plasterboard on studs.*0\.29.*Egan 1988/,
    );
    expect(shadowText(room, '[part=constructions] > p')).to.match(/quoted from memory.*Miki 1990/);
  });

  it('stands alone, survives being moved, prints black on white without its fields', async () => {
    const page = await fixture(
      `<div style="background: #15191c; color: #dde2e1"><ringdown-room room="5x4x3"></ringdown-room></div>`,
    );
    const room = page.querySelector<RingdownRoom>('ringdown-room')!;
    const canvas = await painted(room);
    expect(room.matches(':state(dark)')).to.equal(true);
    await type(room, '[part=length]', '5.5');
    const home = document.createElement('section');
    page.append(home);
    home.append(room);
    await aTimeout(300);
    expect(room.snapshot!.room!.size.lengthMetres).to.equal(5.5);
    room.remove();
    await aTimeout(300);
    page.append(room);
    await waitUntil(() => room.snapshot?.room?.size.lengthMetres === 5.5, 'what was typed is still there');
    await painted(room);
    const ground = (): string => canvas.getContext('2d')!.getImageData(1, 1, 1, 1).data.join();
    window.dispatchEvent(new Event('beforeprint'));
    expect(ground()).to.equal('255,255,255,255');
    window.dispatchEvent(new Event('afterprint'));
  });

  for (const [look, style] of Object.entries({
    light: '',
    dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
    narrow: 'inline-size: 320px',
    'right to left': 'direction: rtl',
  }))
    it(`axe finds nothing, ${look}`, async function () {
      this.timeout(60000);
      const room = await made('plan="0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5" height="2.5"', style);
      for (const details of room.shadowRoot!.querySelectorAll('details')) details.open = true;
      await expect(room).to.be.accessible();
      if (look === 'narrow') expect(room.scrollWidth).to.be.at.most(320);
    });

  it('fits the sides to the ridges, says how far that is chance, and lets the user take or leave it', async function () {
    this.timeout(120000);
    const page = await fixture(
      `<div><ringdown-study src="${ringing()}" room="5.5x4x2.75" no-files>
        <ringdown-room></ringdown-room>
      </ringdown-study></div>`,
    );
    const element = page.querySelector<RingdownRoom>('ringdown-room')!;
    await waitUntil(() => element.snapshot?.diagnosis, 'the diagnosis', { timeout: 60000 });
    await element.updateComplete;
    const before = element.snapshot!.room!;
    const fitted = async () => {
      shadow<HTMLButtonElement>(element, '[part="fit"]').click();
      await waitUntil(
        () => element.shadowRoot!.querySelector('[part="fit-take"], .fitting .wrong'),
        'the fit',
        {
          timeout: 60000,
        },
      );
      expect(element.shadowRoot!.querySelector('.fitting .wrong')?.textContent).to.equal(undefined);
    };
    await fitted();
    const text = shadowText(element, '.fitting');
    expect(text).to.include('sets of random resonances');
    expect(text).to.include('a recording cannot tell which');
    expect(element.shadowRoot!.querySelectorAll('.fitting tbody tr').length).to.be.greaterThan(3);
    await expect(element).to.be.accessible();
    shadow<HTMLButtonElement>(element, '[part="fit-leave"]').click();
    await element.updateComplete;
    expect(element.snapshot!.room).to.equal(before);
    await fitted();
    shadow<HTMLButtonElement>(element, '[part="fit-take"]').click();
    await waitUntil(() => element.snapshot!.room !== before, 'the other room');
    expect(element.snapshot!.room!.size).not.to.deep.equal(before.size);
    await element.updateComplete;
    expect(element.shadowRoot!.querySelector('[part="fit-take"]')).to.equal(null);
  });

  for (const width of [288, 358])
    it(`shows each place whole, with its button, on a page ${width + 32} px wide`, async () => {
      const room = await made('room="5.4x4.1x2.7"', `width: ${width}px`);
      const { right } = room.getBoundingClientRect();
      const table = shadow(room, '.places table');
      const rows = [...table.querySelectorAll('tbody tr')];
      expect(rows).to.have.length(2);
      for (const row of rows) {
        const controls = [...row.querySelectorAll('input, button')];
        expect(controls.map(({ localName }) => localName)).to.deep.equal([
          ...['input', 'input', 'input', 'input'],
          'button',
        ]);
        for (const control of controls) {
          const box = control.getBoundingClientRect();
          expect(box.right, control.getAttribute('aria-label')!).to.be.at.most(right + 0.5);
          expect(box.width).to.be.at.least(24);
          expect(box.height).to.be.at.least(24);
        }
        // Without a head above them the fields say which of the three they are.
        const said = [...row.querySelectorAll('td[data-axis]')].map(
          (cell) => getComputedStyle(cell, '::before').content,
        );
        expect(said).to.deep.equal(['"x"', '"y"', '"Height"']);
      }
      const scroll = shadow(room, '.places .scroll');
      expect(scroll.scrollWidth).to.be.at.most(scroll.clientWidth);
    });

  it('shows feet and inches whole on a page 320 px wide', async () => {
    const room = await made('room="5.4x4.1x2.7"', 'width: 288px');
    const unit = shadow<HTMLSelectElement>(room, '[part=unit]');
    unit.selectedIndex = 1;
    unit.dispatchEvent(new Event('change'));
    await room.updateComplete;
    const fields = [...room.shadowRoot!.querySelectorAll<HTMLInputElement>('.places td[data-axis] input')];
    expect(fields.map(({ value }) => value)).to.include('12 ft 1.7 in');
    for (const field of fields) expect(field.scrollWidth, field.value).to.be.at.most(field.clientWidth);
    for (const button of room.shadowRoot!.querySelectorAll('.places td button'))
      expect(button.getBoundingClientRect().right).to.be.at.most(room.getBoundingClientRect().right + 0.5);
  });

  it('says why a place is refused below its fields on a narrow page too', async () => {
    const room = await made('room="5.4x4.1x2.7"', 'width: 288px');
    await type(room, '.places input[aria-label$=" x"], .places td[data-axis] input', '9');
    const said = shadow(room, '.places .wrong').getBoundingClientRect();
    expect(said.width).to.be.greaterThan(200);
    expect(said.right).to.be.at.most(room.getBoundingClientRect().right + 0.5);
  });
});
