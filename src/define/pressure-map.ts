import { RingdownPressureMap } from '../elements/pressure-map/pressure-map.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-pressure-map', RingdownPressureMap);
