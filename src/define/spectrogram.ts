import { RingdownSpectrogram } from '../elements/spectrogram/spectrogram.js';
import { defineElement } from './define-element.js';

defineElement('ringdown-spectrogram', RingdownSpectrogram);
