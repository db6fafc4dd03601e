import { RingdownRecordings } from '../elements/recordings/recordings.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-recordings', RingdownRecordings);
