import { RingdownDecayTimes } from '../elements/decay-times/decay-times.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-decay-times', RingdownDecayTimes);
