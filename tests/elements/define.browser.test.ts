import { expect } from '@open-wc/testing';
import '../../src/define/index.js';
import { defineElement } from '../../src/define/define-element.js';
import { RingdownRidges } from '../../src/elements/ridges/ridges.js';

const tags = [
  'study',
  'recording',
  'place',
  'recordings',
  'fit',
  'decay-times',
  'modes',
  'room',
  'pressure-map',
  'seats',
  'sources',
  'report',
  'response',
  'waterfall',
  'spectrogram',
  'ridges',
];

describe('the define entries', () => {
  it('register every element', () => {
    for (const tag of tags) expect(customElements.get(`ringdown-${tag}`), tag).to.be.a('function');
  });

  it('do nothing when asked again, and warn and do nothing for a second copy', () => {
    const { warn } = console;
    const warnings: unknown[] = [];
    console.warn = (...words: unknown[]): void => void warnings.push(words.join(' '));
    try {
      defineElement('ringdown-ridges', RingdownRidges);
      expect(warnings).to.deep.equal([]);
      defineElement('ringdown-ridges', class extends HTMLElement {});
      expect(warnings.length).to.equal(1);
      expect(warnings[0]).to.contain('<ringdown-ridges> is already defined');
    } finally {
      console.warn = warn;
    }
    expect(customElements.get('ringdown-ridges')).to.equal(RingdownRidges);
  });
});
