import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownWaterfall } from '../../src/elements/waterfall/waterfall.js';
import { drawn, ready, room, roomAddress, shadowText } from './support.js';

describe('ringdown-waterfall without WebGL', () => {
  it('draws the same data by lines and says so', async () => {
    expect(document.createElement('canvas').getContext('webgl2'), 'this browser has no WebGL').to.equal(null);
    const waterfall = await fixture<RingdownWaterfall>(
      html`<ringdown-waterfall src=${roomAddress()} room=${room}></ringdown-waterfall>`,
    );
    await ready(waterfall);
    await drawn(waterfall, 50);
    await waterfall.updateComplete;
    expect(shadowText(waterfall, '.flat')).to.contain('without WebGL');
  });
});
