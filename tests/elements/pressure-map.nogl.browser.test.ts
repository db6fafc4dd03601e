import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownPressureMap } from '../../src/elements/pressure-map/pressure-map.js';
import { colours, shadow, shadowText, waitUntil } from './support.js';

describe('the room of ringdown-pressure-map without WebGL', () => {
  it('says so, and plan and section stay', async () => {
    expect(document.createElement('canvas').getContext('webgl2'), 'this browser has no WebGL').to.equal(null);
    const map = await fixture<RingdownPressureMap>(
      html`<ringdown-pressure-map room="5.4x4.1x2.7" view="room"></ringdown-pressure-map>`,
    );
    await waitUntil(() => map.shadowRoot!.querySelector('.flat') !== null, 'a sentence', { timeout: 10000 });
    expect(shadowText(map, '.flat')).to.match(/needs WebGL.*plan and section show the same/);
    await waitUntil(
      () => colours(shadow<HTMLCanvasElement>(map, 'canvas.colours')) > 60,
      'the plan is drawn in more than 60 colours',
      { timeout: 15000 },
    );
    const [plan, room] = [...map.shadowRoot!.querySelectorAll<HTMLButtonElement>('.views button')];
    expect(plan.getAttribute('aria-pressed')).to.equal('true');
    expect(room.disabled).to.equal(true);
  });
});
