import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { hostileTexts } from '../support/hostile.js';
import { brokenFile, ready, room, roomAddress, roomFile } from './support.js';

type Window = typeof globalThis & { __hit?: number };

/** Everything in the page, through all shadow roots. */
function* all(root: ParentNode): Generator<Element> {
  for (const element of root.querySelectorAll('*')) {
    yield element;
    if (element.shadowRoot) yield* all(element.shadowRoot);
  }
}

/** Elements and attributes that only a text taken for markup could have made. */
const made = (root: ParentNode): string[] =>
  [...all(root)].flatMap((element) => [
    ...(/^(img|script|iframe|object|embed|link|base|meta|foreignobject)$/i.test(element.localName)
      ? [element.outerHTML]
      : []),
    ...[...element.attributes].filter(({ name }) => /^on/.test(name)).map(({ name }) => name),
    ...[...element.attributes]
      .filter(({ value }) => /^\s*javascript:/i.test(value) && element.localName === 'a')
      .map(({ value }) => value),
  ]);

const views = [
  'waterfall',
  'spectrogram',
  'ridges',
  'decay-times',
  'response',
  'fit',
  'modes',
  'pressure-map',
  'room',
];

describe('text from outside', () => {
  it('is text in every view, saved picture and message', async () => {
    const address = roomAddress();
    const page = await fixture(html`<div></div>`);
    const study = document.createElement('ringdown-study');
    study.room = room;
    for (const [k, text] of hostileTexts.slice(0, 10).entries()) {
      const recording = document.createElement('ringdown-recording');
      Object.assign(recording, { src: address, label: text, stage: text, seat: text.slice(0, 40) });
      const place = document.createElement('ringdown-place');
      place.name = text.slice(0, 40);
      place.at = `${1 + k / 10} 1 1.2`;
      study.append(place, ...(k < 2 ? [recording] : []));
    }
    for (const name of views) study.append(document.createElement(`ringdown-${name}`));
    page.append(study);
    await ready(study);
    await study.addFiles([
      brokenFile('<img src=x onerror=window.__hit=1>.wav'),
      roomFile('"><script>window.__hit=1</script>.wav'),
    ]);
    await ready(study);
    for (const [name, text] of [...hostileTexts.entries()].slice(0, 8)) {
      study.setAttribute(
        ['window', 'limit', 'axis', 'smoothing', 'from', 'range', 'walls', 'method'][name],
        text,
      );
    }
    await study.updateComplete;
    await waitUntil(() => study.feed.failures.length >= 8, 'not every attribute is refused');
    await study.updateComplete;
    expect(made(page)).to.deep.equal([]);
    for (const name of views) {
      const view = study.querySelector(`ringdown-${name}`) as unknown as { toSvg?: () => string | null };
      const text = view.toSvg?.();
      if (!text) continue;
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
      expect(parsed.querySelector('parsererror')).to.equal(null);
      expect(made(parsed)).to.deep.equal([]);
    }
    expect((globalThis as Window).__hit).to.equal(undefined);
    // What is shown is what was written, and no entity of it.
    const shown = [...all(page)].map((element) => element.shadowRoot?.textContent ?? '').join(' ');
    expect(shown).to.contain(hostileTexts[0]);
  });

  it('of a saved study makes the page fetch nothing', async () => {
    const study = await fixture<RingdownStudy>(
      `<ringdown-study room="${room}"><ringdown-waterfall></ringdown-waterfall></ringdown-study>`,
    );
    const before = performance.getEntriesByType('resource').length;
    const evil = JSON.stringify({
      ...{ format: 'ringdown-study', version: 1, choices: {}, active: 0, places: [] },
      recordings: [
        { src: 'http://127.0.0.1:9/x.wav', url: 'http://127.0.0.1:9/y', label: '<img src=//127.0.0.1:9/z>' },
      ],
      room: null,
    });
    await study.addFiles([new File([evil], 'study.json', { type: 'application/json' })]);
    await waitUntil(() => study.feed.failures.length > 0);
    await new Promise((resolve) => setTimeout(resolve, 200));
    const since = performance.getEntriesByType('resource').slice(before);
    expect(since.filter(({ name }) => /127\.0\.0\.1:9/.test(name))).to.deep.equal([]);
  });
});
