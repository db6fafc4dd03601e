import { aTimeout, oneEvent, waitUntil } from '@open-wc/testing';
import type { StudySnapshot } from '../../src/study/types.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { decodeWav } from '../../src/signal/wav.js';
import { encodeWav } from '../../src/signal/wav-write.js';
import { Rng } from '../../src/signal/random.js';
import { addMode } from '../support/signals.js';

type Ridge = NonNullable<StudySnapshot['diagnosis']>['ridges'][number];

export const room = '5.4x4.1x2.7';
/** The mode that hangs, Hz: between the long walls of the room above, (0,1,0) of 4.1 m. */
export const slowHz = 41.9;

const sampleRate = 8000;

/** Modes of 0.18 s with one that lasts `slowSeconds`, 50 ms after the start, over noise 70 dB down. */
export function roomBytes(slowSeconds = 1.3, seed = 1): ArrayBuffer {
  const samples = new Float64Array(2 * sampleRate);
  const random = new Rng(seed);
  for (let n = 0; n < samples.length; n += 1) samples[n] = 1e-4 * (2 * random.uniform() - 1);
  for (const frequencyHz of [31.8, 52.8, 63.5, 71, 82.3, 95.2, 110, 126])
    addMode(samples, sampleRate, frequencyHz, 0.18, 0.08, 0.05);
  addMode(samples, sampleRate, slowHz, slowSeconds, 0.25, 0.05);
  const bytes = encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' });
  return bytes.slice().buffer;
}

export const roomFile = (name = 'studio.wav', slowSeconds?: number): File =>
  new File([roomBytes(slowSeconds)], name, { type: 'audio/wav' });

export const roomAddress = (slowSeconds?: number): string =>
  URL.createObjectURL(new Blob([roomBytes(slowSeconds)], { type: 'audio/wav' }));

/** Two channels: the second is another seat of the room, where the slow mode is short. */
export function stereoAddress(): string {
  const [first, second] = [1.3, 0.3].map((slow) => decodeWav(new Uint8Array(roomBytes(slow))).channels[0]);
  const bytes = encodeWav({ channels: [first, second], sampleRate, encoding: 'float-32' });
  return URL.createObjectURL(new Blob([bytes.slice().buffer], { type: 'audio/wav' }));
}

export const brokenFile = (name = 'letter.wav'): File => new File(['This is a letter.'], name);

/** Resolves once the study, or an element with its own, has computed everything. */
export async function ready(
  element: HTMLElement & { snapshot: StudySnapshot | null },
): Promise<StudySnapshot> {
  const done = (): boolean => element.snapshot?.status === 'ready' && element.snapshot.progress === null;
  await waitUntil(done, 'the study is not ready', { timeout: 20000 });
  return element.snapshot!;
}

/** The flagged ridge next to the mode that hangs. */
export function slowRidge({ diagnosis }: StudySnapshot): Ridge {
  const near = diagnosis?.ridges.find(({ frequencyHz }) => Math.abs(frequencyHz - slowHz) < 0.5);
  if (!near) throw new Error(`no ridge at ${slowHz} Hz`);
  return near;
}

export async function addFiles(study: RingdownStudy, ...files: File[]): Promise<StudySnapshot> {
  await study.addFiles(files);
  return study.study.settled();
}

export const shadow = <T extends Element = HTMLElement>(element: Element, selector: string): T => {
  const found = element.shadowRoot?.querySelector<T>(selector);
  if (!found) throw new Error(`${element.localName} has no ${selector}`);
  return found;
};

export const shadowText = (element: Element, selector = '*'): string =>
  [...(element.shadowRoot?.querySelectorAll(selector) ?? [])]
    .map(({ textContent }) => (textContent ?? '').replace(/\s+/g, ' ').trim())
    .join(' | ');

/** How many colours a picture has: a blank one has one. */
export function colours(canvas: HTMLCanvasElement): number {
  const copy = Object.assign(document.createElement('canvas'), {
    width: canvas.width,
    height: canvas.height,
  });
  const context = copy.getContext('2d', { willReadFrequently: true })!;
  context.drawImage(canvas, 0, 0);
  const { data } = context.getImageData(0, 0, copy.width, copy.height);
  return new Set(new Uint32Array(data.buffer)).size;
}

/** Waits until the element's picture has been drawn. */
export async function drawn(element: Element, least = 100): Promise<HTMLCanvasElement> {
  element.scrollIntoView({ block: 'center' });
  await waitUntil(
    () => {
      const canvas = element.shadowRoot?.querySelector('canvas');
      return canvas !== null && canvas !== undefined && canvas.width > 300 && colours(canvas) >= least;
    },
    `${element.localName} stays blank`,
    { timeout: 15000, interval: 100 },
  );
  return shadow<HTMLCanvasElement>(element, 'canvas');
}

/** Collects events of one type while something is done. */
export async function heard(
  target: EventTarget,
  type: string,
  action: () => unknown,
): Promise<CustomEvent[]> {
  const events: CustomEvent[] = [];
  const listener = (event: Event): void => void events.push(event as CustomEvent);
  target.addEventListener(type, listener);
  await action();
  await aTimeout(60);
  target.removeEventListener(type, listener);
  return events;
}

export { aTimeout, oneEvent, waitUntil };
