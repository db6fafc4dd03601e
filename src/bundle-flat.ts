/** Everything in one file without the surface: the waterfall is drawn by lines. */
import { preferInlineWorker } from './study/pool.js';
import './define/study.js';
import './define/recording.js';
import './define/place.js';
import './define/recordings.js';
import './define/waterfall-flat.js';
import './define/spectrogram.js';
import './define/ridges.js';
import './define/fit.js';
import './define/decay-times.js';
import './define/modes.js';
import './define/room.js';
import './define/pressure-map.js';
import './define/seats.js';
import './define/response.js';

export { RingdownStudy } from './elements/study/study.js';
export { RingdownRecording } from './elements/recording/recording.js';
export { RingdownPlace } from './elements/place/place.js';
export { RingdownRecordings } from './elements/recordings/recordings.js';
export { RingdownWaterfallFlat as RingdownWaterfall } from './elements/waterfall/waterfall-flat.js';
export { RingdownSpectrogram } from './elements/spectrogram/spectrogram.js';
export { RingdownRidges } from './elements/ridges/ridges.js';
export { RingdownFit } from './elements/fit/fit.js';
export { RingdownModes } from './elements/modes/modes.js';
export { RingdownRoom } from './elements/room/room.js';
export { RingdownPressureMap } from './elements/pressure-map/pressure-map.js';
export { RingdownSeats } from './elements/seats/seats.js';
export { RingdownDecayTimes } from './elements/decay-times/decay-times.js';
export { RingdownResponse } from './elements/response/response.js';
export type * from './elements/events.js';
export { createStudy } from './study/study.js';
export { setWorkerFactory, type WorkerFactory } from './study/pool.js';
export type * from './study/types.js';
export { createSpeaker } from './words/index.js';

preferInlineWorker();
