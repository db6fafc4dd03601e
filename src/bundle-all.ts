/** Everything in one file that requests no further code. */
import { preferInlineWorker } from './study/pool.js';
import './define/index.js';

export * from './index.js';

preferInlineWorker();
