import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import '../../src/define/index.js';
import { addWords } from '../../src/words/index.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { drawn, ready, room, roomAddress, shadow } from './support.js';

/** A language of its own, so that the words of this page stay with these tests. */
const tag = 'de-x-seite';

const study = async (lang: string): Promise<RingdownStudy> => {
  const page = await fixture(
    html`<div lang=${lang}>
      <ringdown-study src=${roomAddress()} room=${room} label="Studio">
        <ringdown-waterfall></ringdown-waterfall>
        <ringdown-ridges></ringdown-ridges>
        <ringdown-modes></ringdown-modes>
      </ringdown-study>
    </div>`,
  );
  return page.querySelector('ringdown-study')!;
};

const words = (element: Element): string => element.shadowRoot!.textContent.replace(/\s+/g, ' ');
const said = async (element: Element, wanted: RegExp): Promise<void> => {
  await waitUntil(() => wanted.test(words(element)), `${element.localName} says ${String(wanted)}`, {
    timeout: 10000,
  });
};

describe('elements in German', () => {
  it('fetch their words, say everything in them, and write numbers with a comma', async () => {
    const whole = await study('de');
    await ready(whole);
    const [waterfall, ridges, modes] = [...whole.children];
    await said(whole, /Grate? über der Grenze „Hörbarkeit“.*bei 41,9.Hz: 1,\d\d.s bei einer Grenze von/);
    await said(waterfall, /Wasserfall.*Gleitendes Hann-Fenster von 0,30.s/);
    await said(ridges, /Abklingzeit.*41,9.*Raummode/);
    await said(modes, /Moden von 20.Hz bis 200.Hz eines Quaders mit schallharten Wänden/);
    const canvas = await drawn(waterfall);
    expect(canvas.getAttribute('aria-label')).to.equal(
      'Wasserfall-Darstellung von Studio: Pegel über Frequenz und Zeit',
    );
    for (const element of [whole, ...whole.children])
      expect(words(element), element.localName).not.to.match(
        /\b(the|of|and|with|decay|ridge|limit|level|recording|frequency)\b/i,
      );
  });

  it('say what is wrong in German', async () => {
    const page = await fixture(html`<div lang="de"><ringdown-study room="groß"></ringdown-study></div>`);
    await said(page.firstElementChild!, /„groß“ ist keine Raumgröße/);
  });

  it('speak anew when the language of the page changes, and draw anew', async () => {
    const whole = await study('en');
    await ready(whole);
    const waterfall = whole.firstElementChild!;
    await said(waterfall, /Sliding Hann window of 0\.30/);
    whole.parentElement!.lang = 'de';
    await said(waterfall, /Gleitendes Hann-Fenster von 0,30/);
    await said(whole, /über der Grenze „Hörbarkeit“/);
    whole.parentElement!.lang = 'en';
    await said(waterfall, /Sliding Hann window of 0\.30/);
  });

  it('follow the language around a shadow root that they stand in', async () => {
    const page = await fixture(html`<div lang="de"><div></div></div>`);
    const root = page.firstElementChild!.attachShadow({ mode: 'open' });
    root.innerHTML = '<ringdown-ridges></ringdown-ridges>';
    await said(root.firstElementChild!, /Noch keine Aufnahme/);
  });

  it('take a page’s own words while they stand there, as text and never as HTML', async () => {
    const whole = await study(tag);
    await ready(whole);
    const ridges = whole.children[1];
    await said(ridges, /Alle Kandidaten und was helfen kann/);
    const hostile = '<img src=x onerror="window.ringdownHurt = true"><b>fett</b>';
    addWords({
      language: tag,
      views: { evidence: hostile, ridges: hostile, 'key-ridge': hostile, 'frequency-axis': hostile },
      labels: { cause: hostile, decayTime: hostile },
      causes: { 'room-mode': { name: hostile, meaning: hostile } },
      captions: { method: hostile },
    });
    await said(ridges, /<img src=x/);
    await said(whole.firstElementChild!, /<b>fett<\/b>/);
    for (const element of [whole, ...whole.children])
      expect(element.shadowRoot!.querySelectorAll('img, b:not(:empty)').length, element.localName).to.equal(
        0,
      );
    const svg = (whole.firstElementChild as unknown as { toSvg(): string | null }).toSvg()!;
    const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml');
    expect(drawing.querySelectorAll('parsererror, img, b').length).to.equal(0);
    expect(drawing.documentElement.textContent).to.contain('<b>fett</b>');
    expect((window as { ringdownHurt?: boolean }).ringdownHurt).to.equal(undefined);
    expect(shadow(ridges, 'tbody tr').textContent).to.match(/41,9/);
  });
});
