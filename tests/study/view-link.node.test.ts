import { describe, expect, it } from 'vitest';
import { Rng } from '../../src/signal/random.js';
import { defaultChoices } from '../../src/study/choices.js';
import { createStudy } from '../../src/study/study.js';
import type { StudySnapshot } from '../../src/study/types.js';
import { fragmentWith, linkInFragment, readViewLink, viewLinkText } from '../../src/study/view-link.js';
import { createSpeaker } from '../../src/words/index.js';

const empty: StudySnapshot = createStudy().snapshot;

/** The code and sentence with which a text is refused. */
function refused(text: string): { code: string; sentence: string } {
  try {
    readViewLink(text);
  } catch (error) {
    const { code, params } = error as { code: string; params: Record<string, string | number> };
    return { code, sentence: createSpeaker('en').error({ code, params }) };
  }
  return { code: 'taken', sentence: '' };
}

describe('the link to a view', () => {
  it('of a study as it is by default says no more than its version', () => {
    expect(viewLinkText(empty)).toBe('1');
    expect(readViewLink('1')).toEqual({
      choices: defaultChoices,
      recording: null,
      cursor: null,
      ridgeHz: null,
      mode: null,
      views: new Map(),
    });
  });

  it('comes back as it went, with every choice in the words of the attributes', () => {
    const choices = {
      fromHz: 25,
      toHz: 120,
      method: 'constant-q',
      windowSeconds: 0.2,
      stepSeconds: 0.02,
      spanSeconds: 1.5,
      limit: 'target',
      rangeDb: 40,
      axis: 'linear',
      smoothing: '1/12',
      scale: 'clear',
    } as const;
    const text = viewLinkText(
      { ...empty, choices, cursor: { frequencyHz: 43.912, timeSeconds: -0.05 }, selectedMode: [0, 1, 0] },
      [
        ['waterfall', [-24.5, 28, 1.2, null]],
        ['waterfall.2', [null, null, null, 'clear']],
        ['decay-times', [null]],
      ],
    );
    expect(text).toBe(
      '1;from=25;to=120;method=constant-q;window=0.2;step=0.02;span=1.5;limit=target;range=40;axis=linear;' +
        'smoothing=1/12;scale=clear;cursor=43.91,-0.05;mode=0,1,0;waterfall=-24.5,28,1.2;waterfall.2=,,,clear',
    );
    const link = readViewLink(text);
    expect(link.choices).toEqual(choices);
    expect(link.cursor).toEqual({ frequencyHz: 43.91, timeSeconds: -0.05 });
    expect(link.mode).toEqual([0, 1, 0]);
    expect(link.views.get('waterfall')).toEqual([-24.5, 28, 1.2]);
    expect(link.views.get('waterfall.2')).toEqual([null, null, null, 'clear']);
  });

  it.each([
    ['', 'link-version'],
    ['2;to=120', 'link-version'],
    ['<script>alert(1)</script>', 'link-version'],
    ['1;to=1e9', 'link-part'],
    ['1;to=NaN', 'link-part'],
    ['1;to=', 'link-part'],
    ['1;to=120;to=130', 'link-part'],
    ['1;from=300', 'band-order'],
    ['1;method=magic', 'link-part'],
    ['1;scale=rainbow', 'link-part'],
    ['1;__proto__=1', 'link-part'],
    ['1;constructor=1,2', 'link-part'],
    ['1;cursor=40', 'link-part'],
    ['1;cursor=40,0.1,3', 'link-part'],
    ['1;recording=javascript:alert(1)', 'link-part'],
    ['1;mode=a,b,c', 'link-part'],
    ['1;waterfall=10,20,1,rainbow', 'link-part'],
    ['1;waterfall=10,20,1,clear,5', 'link-part'],
    ['1;nothing=1', 'link-part'],
  ])('refuses %j in one sentence', (text, code) => {
    const found = refused(text);
    expect(found.code).toBe(code);
    expect(found.sentence).toMatch(/^[A-Z].*\.$/);
    expect(found.sentence.length).toBeLessThan(200);
  });

  it('refuses what is longer than any view needs', () => {
    expect(refused(`1;to=${'1'.repeat(3000)}`).code).toBe('link-long');
  });

  it('never throws anything but a refusal, whatever letters it is made of', () => {
    const random = new Rng(7);
    const good = '1;from=25;to=120;method=cumulative;cursor=43.9,0.3;waterfall=-24,28,1.2,clear;mode=0,1,0';
    const strange = '0123456789.,;=-e%<\u0000\u00e9\ud83d';
    let taken = 0;
    for (let round = 0; round < 3000; round += 1) {
      const letters = [...good];
      for (let k = 0; k < 1 + 3 * random.uniform(); k += 1)
        letters[Math.floor(random.uniform() * letters.length)] =
          strange[Math.floor(random.uniform() * strange.length)];
      const { code } = refused(letters.join(''));
      if (code === 'taken') taken += 1;
      else expect(['link-version', 'link-part', 'band-order']).toContain(code);
    }
    expect(taken).toBeGreaterThan(0);
  });

  it('stands in an address beside those of other studies, told apart by the id', () => {
    const one = fragmentWith('#section', '', '1;to=120');
    expect(one).toBe('ringdown=1;to=120');
    const two = fragmentWith(`#${one}`, 'after', '1;axis=linear');
    expect(linkInFragment(`#${two}`, '')).toBe('1;to=120');
    expect(linkInFragment(`#${two}`, 'after')).toBe('1;axis=linear');
    expect(linkInFragment(`#${two}`, 'before')).toBe(null);
    expect(linkInFragment('#ringdown=1%3Bto%3D120', '')).toBe('1;to=120');
    expect(linkInFragment('#ringdown=1;to=%', ''), 'a stray per cent sign is refused later').toBe('1;to=%');
  });
});
