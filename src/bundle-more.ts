/** All that the files of figures leave out, in the file that they fetch once a page asks for it: `ringdown-more.js`. */
import './define/recordings.js';
import './define/fit.js';
import './define/room.js';
import './define/pressure-map.js';
import './define/seats.js';
import './define/sources.js';
import './define/listen.js';
import './define/report.js';
import './define/remedy.js';
import './define/comparison.js';
import { fileErrors } from './words/en/errors-files.js';
import { houseErrors } from './words/en/errors-house.js';
import { seatErrors } from './words/en/errors-seats.js';
import { studyErrors } from './words/en/errors-study.js';
import { english } from './words/en/index.js';
import { remedyViews } from './words/en/views-remedy.js';
import { recordingViews } from './words/en/views-recordings.js';
import { roomViews } from './words/en/views-room.js';
import { sheetViews } from './words/en/views-sheet.js';
import { systemViews } from './words/en/views-system.js';
import { listenViews } from './words/en/views-listen.js';
import { wordsGrew } from './words/registry.js';

Object.assign(english.errors, fileErrors, houseErrors, seatErrors, studyErrors);
Object.assign(english.views, remedyViews, sheetViews, systemViews, listenViews, recordingViews, roomViews);
wordsGrew();

export { RingdownRecordings } from './elements/recordings/recordings.js';
export { RingdownFit } from './elements/fit/fit.js';
export { RingdownRoom } from './elements/room/room.js';
export { RingdownPressureMap } from './elements/pressure-map/pressure-map.js';
export { RingdownSeats } from './elements/seats/seats.js';
export { RingdownSources } from './elements/sources/sources.js';
export { RingdownListen } from './elements/listen/listen.js';
export { RingdownReport } from './elements/report/report.js';
export { RingdownRemedy } from './elements/remedy/remedy.js';
export { RingdownComparison } from './elements/comparison/comparison.js';
