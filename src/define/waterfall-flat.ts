import { RingdownWaterfallFlat } from '../elements/waterfall/waterfall-flat.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-waterfall', RingdownWaterfallFlat);
