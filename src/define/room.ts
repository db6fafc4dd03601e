import { RingdownRoom } from '../elements/room/room.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-room', RingdownRoom);
