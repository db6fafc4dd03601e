/** What the files of figures share: how they get at the file that holds all else. */
import { loadWhenUsed } from './elements/shared/late-elements.js';
import { hasMore, more, setMore, type MoreFile } from './study/more.js';
import { preferInlineWorker } from './study/pool.js';

const fileName = 'ringdown-more.js';

/** Elements that `ringdown-more.js` defines. */
const lateElements = [
  ...['recordings', 'fit', 'room', 'pressure-map', 'seats', 'sources', 'remedy', 'comparison'],
  ...['report', 'listen'],
].map((name) => `ringdown-${name}`);

/** @param address of the file that asks */
export function startFigures(address: string): void {
  preferInlineWorker();
  const there = new URL(`./${fileName}`, address).href;
  setMore(fileName, () => import(/* @vite-ignore */ there) as Promise<MoreFile>);
  loadWhenUsed(lateElements, { wanted: hasMore, load: more });
}
