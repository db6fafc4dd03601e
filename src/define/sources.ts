import { RingdownSources } from '../elements/sources/sources.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-sources', RingdownSources);
