import { RingdownPressureMapFlat } from '../elements/pressure-map/pressure-map-flat.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-pressure-map', RingdownPressureMapFlat);
