import { RingdownSeats } from '../elements/seats/seats.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-seats', RingdownSeats);
