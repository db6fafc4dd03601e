import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { setWorkerFactory } from '../src/study/pool.js';
import { everything, recorded } from './everything.js';
import { HalfWay } from './half-way.js';
import { brokenFile, crowdedFile, noisyFile, shortFile, slowRoom } from './recordings.js';

/** Every element in each of the states that a page may see it in. */
const meta: Meta = { title: 'All elements', component: 'ringdown-study' };
export default meta;

/** An address that never answers: `pending` in its name tells tests not to wait for it. */
const withoutAnswer = '/recordings/pending';

export const Filled: StoryObj = { render: () => everything(recorded(slowRoom(), 'Studio 2')) };

export const Empty: StoryObj = { render: () => everything(null, false) };

export const Loading: StoryObj = {
  beforeEach: () => {
    const { fetch } = globalThis;
    globalThis.fetch = (input, init) =>
      (input instanceof Request ? input.url : input.toString()).endsWith(withoutAnswer)
        ? new Promise((_, reject) =>
            init?.signal?.addEventListener('abort', () => reject(new DOMException('aborted', 'AbortError'))),
          )
        : fetch(input, init);
    return () => {
      globalThis.fetch = fetch;
    };
  },
  render: () => everything(recorded(withoutAnswer, 'Studio 2')),
};

/** Everything is answered but the fit, which stays on its way. */
export const AtWork: StoryObj = {
  tags: ['!autodocs'],
  beforeEach: () => {
    setWorkerFactory(() => new HalfWay());
    return () => setWorkerFactory(undefined);
  },
  render: () => everything(recorded(slowRoom(), 'Studio 2')),
};

export const Refused: StoryObj = { render: () => everything(recorded(brokenFile(), 'A letter')) };

export const TooShort: StoryObj = { render: () => everything(recorded(shortFile(), 'Cut off')) };

export const InTheNoise: StoryObj = { render: () => everything(recorded(noisyFile(), 'Beside a road')) };

export const MoreThanAHundredRidges: StoryObj = {
  render: () => everything(recorded(crowdedFile(), 'A tank')),
};

export const WithoutWebGl: StoryObj = {
  tags: ['!autodocs'],
  beforeEach: () => {
    const canvas = HTMLCanvasElement.prototype;
    const own = Object.getOwnPropertyDescriptor(canvas, 'getContext')!;
    const refusing = new Proxy(own.value as typeof canvas.getContext, {
      apply: (target, self, [kind, ...rest]: [string, ...unknown[]]): unknown =>
        kind.includes('webgl') ? null : Reflect.apply(target, self, [kind, ...rest]),
    });
    Object.defineProperty(canvas, 'getContext', { ...own, value: refusing });
    return () => {
      Object.defineProperty(canvas, 'getContext', own);
    };
  },
  render: () => everything(recorded(slowRoom(), 'Studio 2')),
};

export const WithoutWorkers: StoryObj = {
  tags: ['!autodocs'],
  beforeEach: () => {
    const { Worker } = globalThis;
    Object.defineProperty(globalThis, 'Worker', { value: undefined, configurable: true, writable: true });
    return () => {
      globalThis.Worker = Worker;
    };
  },
  render: () => everything(recorded(slowRoom(), 'Studio 2')),
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      ${everything(recorded(slowRoom(), 'Studio 2'))}
    </div>`,
};

export const FromRightToLeft: StoryObj = {
  render: () => html`<div dir="rtl">${everything(recorded(slowRoom(), 'Studio 2'))}</div>`,
};

export const InAGermanPage: StoryObj = {
  render: () => html`<div lang="de">${everything(recorded(slowRoom(), 'Studio 2'))}</div>`,
};

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 320px">${everything(recorded(slowRoom(), 'Studio 2'))}</div>`,
};

/** As on paper; tests look at it under print media. */
export const Printed: StoryObj = { render: () => everything(recorded(slowRoom(), 'Studio 2')) };
