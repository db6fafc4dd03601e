/** The element classes, with nothing registered, and what a script needs beside them. */
export { RingdownStudy } from './elements/study/study.js';
export { RingdownRecording } from './elements/recording/recording.js';
export { RingdownPlace } from './elements/place/place.js';
export { RingdownRecordings } from './elements/recordings/recordings.js';
export { RingdownWaterfall } from './elements/waterfall/waterfall.js';
export { RingdownSpectrogram } from './elements/spectrogram/spectrogram.js';
export { RingdownRidges } from './elements/ridges/ridges.js';
export { RingdownFit } from './elements/fit/fit.js';
export { RingdownModes } from './elements/modes/modes.js';
export { RingdownRoom } from './elements/room/room.js';
export { RingdownDecayTimes } from './elements/decay-times/decay-times.js';
export { RingdownResponse } from './elements/response/response.js';
export type * from './elements/events.js';
export { createStudy } from './study/study.js';
export { setWorkerFactory, workerWay, type WorkerFactory } from './study/pool.js';
export type * from './study/types.js';
export { createSpeaker } from './words/index.js';
export type { Speaker } from './words/index.js';
