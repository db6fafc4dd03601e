import { RingdownRidges } from '../elements/ridges/ridges.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-ridges', RingdownRidges);
