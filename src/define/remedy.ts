import { RingdownRemedy } from '../elements/remedy/remedy.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-remedy', RingdownRemedy);
