import { WaterfallBase } from './waterfall-base.js';

/** The waterfall of the build without the surface: the same element, drawn by lines. */
export class RingdownWaterfallFlat extends WaterfallBase {}
