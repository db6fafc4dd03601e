import { RingdownReport } from '../elements/report/report.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-report', RingdownReport);
