/** Registers every element. The study first, so that it is there when the elements in it ask for it. */
import './study.js';
import './recording.js';
import './place.js';
import './recordings.js';
import './waterfall.js';
import './spectrogram.js';
import './ridges.js';
import './fit.js';
import './decay-times.js';
import './modes.js';
import './room.js';
import './pressure-map.js';
import './seats.js';
import './sources.js';
import './response.js';
import './listen.js';
import './report.js';
