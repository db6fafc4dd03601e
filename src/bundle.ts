/** Everything in one file, for a plain script tag of type "module". */
import { preferInlineWorker } from './study/pool.js';
import './define/index.js';

export * from './index.js';

preferInlineWorker();
