import { RingdownModes } from '../elements/modes/modes.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-modes', RingdownModes);
