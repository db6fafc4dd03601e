import { RingdownFit } from '../elements/fit/fit.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-fit', RingdownFit);
