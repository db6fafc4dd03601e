/** Everything in one file, for a plain script tag of type "module". */
import './define/index.js';

export * from './index.js';
