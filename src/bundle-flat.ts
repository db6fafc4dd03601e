/** The flat views in one file, for a plain script tag of type "module": the waterfall is drawn by lines. */
import { startFigures } from './bundle-figures.js';
import './define/study.js';
import './define/recording.js';
import './define/place.js';
import './define/waterfall-flat.js';
import './define/spectrogram.js';
import './define/ridges.js';
import './define/decay-times.js';
import './define/modes.js';
import './define/response.js';

export { RingdownStudy } from './elements/study/study.js';
export { RingdownRecording } from './elements/recording/recording.js';
export { RingdownPlace } from './elements/place/place.js';
export { RingdownWaterfallFlat as RingdownWaterfall } from './elements/waterfall/waterfall-flat.js';
export { RingdownSpectrogram } from './elements/spectrogram/spectrogram.js';
export { RingdownRidges } from './elements/ridges/ridges.js';
export { RingdownDecayTimes } from './elements/decay-times/decay-times.js';
export { RingdownModes } from './elements/modes/modes.js';
export { RingdownResponse } from './elements/response/response.js';
export type * from './elements/events.js';
export { createStudy } from './study/study.js';
export { documentText, openStudyText, resultsOf, studyDocument } from './study/document.js';
export { more } from './study/more.js';
export { setWorkerFactory, workerWay, type WorkerFactory } from './study/pool.js';
export type * from './study/types.js';
export { addWords, createSpeaker } from './words/index.js';

startFigures(import.meta.url);
