import { RingdownStudy } from '../elements/study/study.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-study', RingdownStudy);
