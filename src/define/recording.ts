import { RingdownRecording } from '../elements/recording/recording.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-recording', RingdownRecording);
