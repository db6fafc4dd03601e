import { RingdownListen } from '../elements/listen/listen.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-listen', RingdownListen);
