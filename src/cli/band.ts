import { RingdownError } from '../signal/index.js';
import { bandBounds } from '../study/choices.js';
import type { Words } from './options.js';

/** `--from` and `--to`, Hz. */
export function readBand(words: Words): { fromHz: number; toHz: number } {
  const fromHz = words.number('from', ...bandBounds) ?? 20;
  const toHz = words.number('to', ...bandBounds) ?? 200;
  if (fromHz >= toHz) throw new RingdownError('option-order', { from: fromHz, to: toHz });
  return { fromHz, toHz };
}
