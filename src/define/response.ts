import { RingdownResponse } from '../elements/response/response.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-response', RingdownResponse);
