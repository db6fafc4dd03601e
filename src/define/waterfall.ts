import { RingdownWaterfall } from '../elements/waterfall/waterfall.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-waterfall', RingdownWaterfall);
