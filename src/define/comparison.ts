import { RingdownComparison } from '../elements/comparison/comparison.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-comparison', RingdownComparison);
