import { expect, fixture, html } from '@open-wc/testing';
import { emulateMedia, sendKeys, sendMouse } from '@web/test-runner-commands';
import '../../src/define/index.js';
import type { StudySnapshot } from '../../src/study/types.js';
import {
  brokenFile,
  drawn,
  heard,
  ready,
  room,
  roomAddress,
  shadow,
  shadowText,
  waitUntil,
} from './support.js';

type View = HTMLElement & {
  snapshot: StudySnapshot | null;
  updateComplete: Promise<unknown>;
};

/** What every chart of a study has in common, whatever it shows. */
const charts = ['recordings', 'fit', 'decay-times', 'response', 'modes'];
/** What they say of an empty study, where that is not that there is no recording. */
const emptyOf: Record<string, string> = { modes: 'No room yet: with its sides, its modes stand here.' };
/** The cursor's axis that each has a slider for. */
const sliderOf: Record<string, 'time' | 'frequency'> = {
  recordings: 'time',
  fit: 'time',
  'decay-times': 'frequency',
  response: 'frequency',
  modes: 'frequency',
};

const looks: Record<string, string> = {
  light: '',
  dark: 'background: #15191c; color: #dde2e1; padding: 1rem',
  narrow: 'inline-size: 320px',
  'right to left': 'direction: rtl',
};

async function made(name: string, style = '', lang = 'en'): Promise<View> {
  const page = await fixture(
    `<div style="${style}" lang="${lang}"><ringdown-${name} src="${roomAddress()}" room="${room}" label="Studio"></ringdown-${name}></div>`,
  );
  const view = page.querySelector<View>(`ringdown-${name}`)!;
  await ready(view);
  await view.updateComplete;
  return view;
}

const ground = (canvas: HTMLCanvasElement): string =>
  canvas
    .getContext('2d')!
    .getImageData(1, canvas.height - 2, 1, 1)
    .data.join();

for (const name of charts)
  describe(`ringdown-${name}, as every chart`, () => {
    afterEach(() => sendMouse({ type: 'move', position: [0, 0] }));
    after(() => emulateMedia({ forcedColors: 'none' }));

    it('draws alone with src and room, named once and for all, with help and a table twin', async () => {
      const view = await made(name);
      const canvas = await drawn(view, 20);
      expect(canvas.getAttribute('role')).to.equal('img');
      expect(canvas.getAttribute('aria-label')).to.contain('Studio');
      const help = view.shadowRoot!.getElementById(canvas.getAttribute('aria-describedby')!)!;
      expect(help.textContent.length).to.be.greaterThan(20);
      expect(shadowText(view, 'figcaption').length).to.be.greaterThan(40);
      const table = shadow(view, '.twin table');
      expect(table.querySelectorAll('thead th').length).to.be.greaterThan(1);
      expect(table.querySelectorAll('tbody tr').length).to.be.greaterThan(3);
      expect(table.textContent).not.to.match(/NaN|Infinity|undefined|null/);
    });

    it('moves the cursor of the study from the keyboard and speaks its value', async () => {
      const view = await made(name);
      await drawn(view, 20);
      const axis = sliderOf[name];
      const slider = shadow<HTMLInputElement>(view, `[part=${axis}-slider]`);
      slider.focus();
      const events = await heard(view, 'ringdown-cursor-change', () => sendKeys({ press: 'ArrowRight' }));
      expect(events.length).to.equal(1);
      expect(view.snapshot!.cursor).not.to.equal(null);
      await view.updateComplete;
      expect(slider.getAttribute('aria-valuetext')).to.match(axis === 'time' ? /\d\s(ms|s)$/ : /\d\sHz$/);
      await waitUntil(() => shadowText(view, '.unseen[role=status]').length > 5, 'spoken', { timeout: 3000 });
      expect(shadowText(view, '.unseen[role=status]')).to.equal(shadowText(view, '.readout'));
    });

    it('follows the pointer and gives the cursor back when it leaves', async () => {
      const view = await made(name);
      const canvas = await drawn(view, 20);
      canvas.scrollIntoView({ block: 'center' });
      const box = canvas.getBoundingClientRect();
      await sendMouse({
        type: 'move',
        position: [Math.round(box.left + box.width * 0.4), Math.round(box.top + box.height * 0.55)],
      });
      await waitUntil(() => view.snapshot!.cursor !== null, 'a cursor');
      await sendMouse({ type: 'move', position: [0, 0] });
      await waitUntil(() => view.snapshot!.cursor === null, 'no cursor again');
    });

    it('says in words why there is nothing', async () => {
      const empty = await fixture<View>(`<ringdown-${name}></ringdown-${name}>`);
      expect(shadowText(empty, '.veil')).to.equal(emptyOf[name] ?? 'No recording yet.');
      await expect(empty).to.be.accessible();
      const address = URL.createObjectURL(brokenFile());
      const broken = await fixture<View>(`<ringdown-${name} src="${address}"></ringdown-${name}>`);
      await waitUntil(() => shadowText(broken, '.veil').includes('not a WAV file'), 'a sentence', {
        timeout: 5000,
      });
    });

    it('writes numbers as the language of the page does', async () => {
      const view = await made(name, '', 'de');
      expect(shadowText(view, '.twin table')).to.match(/\d,\d/);
      expect(shadowText(view, '.twin table')).not.to.match(/\d\.\d/);
    });

    it('turns dark with the page, prints black on white, follows forced colours', async () => {
      const view = await made(name, looks.dark);
      const canvas = await drawn(view, 20);
      expect(view.matches(':state(dark)')).to.equal(true);
      const dark = ground(canvas);
      expect(Number(dark.split(',')[0])).to.be.lessThan(60);
      window.dispatchEvent(new Event('beforeprint'));
      expect(ground(canvas)).to.equal('255,255,255,255');
      window.dispatchEvent(new Event('afterprint'));
      await waitUntil(() => ground(canvas) === dark, 'back on the screen');
      await emulateMedia({ forcedColors: 'active' });
      const system = document.createElement('canvas').getContext('2d')!;
      system.fillStyle = 'Canvas';
      system.fillRect(0, 0, 1, 1);
      const expected = system.getImageData(0, 0, 1, 1).data.join();
      await waitUntil(() => ground(canvas) === expected, 'the ground of the system', { timeout: 5000 });
      await emulateMedia({ forcedColors: 'none' });
    });

    it('survives being moved', async () => {
      const view = await made(name);
      await drawn(view, 20);
      const home = document.createElement('section');
      view.parentElement!.append(home);
      home.append(view);
      await ready(view);
      await drawn(view, 20);
    });

    for (const [look, style] of Object.entries(looks))
      it(`axe finds nothing, ${look}`, async function () {
        this.timeout(90000);
        const view = await made(name, style);
        await drawn(view, 20);
        for (const details of view.shadowRoot!.querySelectorAll('details')) details.open = true;
        await expect(view).to.be.accessible();
        if (look === 'narrow') {
          expect(view.scrollWidth).to.be.at.most(320);
          for (const part of view.shadowRoot!.querySelectorAll('figure, .tools, .key, .list'))
            expect(part.getBoundingClientRect().right, part.className).to.be.at.most(
              view.getBoundingClientRect().right + 0.5,
            );
        }
      });
  });

describe('the charts of one study', () => {
  it('show what is chosen in any of them', async () => {
    const study = await fixture<View & { study: { selectRidge(index: number): void } }>(
      html`<ringdown-study room=${room} src=${roomAddress()} label="Studio">
        <ringdown-fit></ringdown-fit>
        <ringdown-ridges></ringdown-ridges>
      </ringdown-study>`,
    );
    await ready(study);
    const fit = study.querySelector<View>('ringdown-fit')!;
    await waitUntil(() => study.snapshot!.ridgeFit !== null, 'a fit', { timeout: 10000 });
    await fit.updateComplete;
    const chooser = shadow<HTMLSelectElement>(fit, '[part=ridge]');
    const other = [...chooser.options].findIndex(({ value }, k) => k > 0 && value.startsWith('resonance'));
    const { frequencyHz } = study.snapshot!.ridgeFit!.target;
    chooser.selectedIndex = other;
    chooser.dispatchEvent(new Event('change'));
    await waitUntil(() => study.snapshot!.ridgeFit!.target.frequencyHz !== frequencyHz, 'another fit', {
      timeout: 10000,
    });
    expect(study.snapshot!.selectedResonance).to.equal(study.snapshot!.ridgeFit!.target.resonance);
    await fit.updateComplete;
    expect(shadowText(fit, 'figcaption')).to.contain(
      `${study.snapshot!.ridgeFit!.target.frequencyHz.toFixed(1)}`,
    );
  });

  it('select a mode in the picture of decay times or in its table, and show it everywhere', async () => {
    const study = await fixture<View>(
      html`<ringdown-study room=${room} src=${roomAddress()} label="Studio">
        <ringdown-decay-times></ringdown-decay-times>
        <ringdown-fit></ringdown-fit>
      </ringdown-study>`,
    );
    await ready(study);
    const view = study.querySelector<View>('ringdown-decay-times')!;
    await drawn(view, 20);
    shadow<HTMLDetailsElement>(view, '.twin').open = true;
    const flagged = [...view.shadowRoot!.querySelectorAll('.twin tbody tr')].find(({ textContent }) =>
      textContent.includes('41.9'),
    )!;
    const events = await heard(study, 'ringdown-ridge-select', () =>
      flagged.querySelector('button')!.click(),
    );
    expect(events.length).to.equal(1);
    const { selectedRidge, diagnosis } = study.snapshot!;
    expect(diagnosis!.ridges[selectedRidge!].frequencyHz).to.be.closeTo(41.9, 0.3);
    await waitUntil(
      () => Math.abs((study.snapshot!.ridgeFit?.target.frequencyHz ?? 0) - 41.9) < 0.3,
      'its fit',
      { timeout: 10000 },
    );
    await view.updateComplete;
    expect(flagged.className).to.equal('selected');
    expect(shadowText(view, '.twin table')).to.match(/shorter than|\d\.\d\d s/);
  });
});
