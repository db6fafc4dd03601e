import { RingdownPlace } from '../elements/place/place.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-place', RingdownPlace);
