import type { Words } from '../types.js';
import { captions } from './captions.js';
import { commandErrors } from './errors-command.js';
import { fileErrors } from './errors-files.js';
import { houseErrors } from './errors-house.js';
import { seatErrors } from './errors-seats.js';
import { studyErrors } from './errors-study.js';
import { pageErrors } from './errors-page.js';
import { notes } from './notes.js';
import { cautions, remedies } from './remedies.js';
import {
  audible,
  causes,
  constructions,
  labels,
  axes,
  limits,
  methods,
  modeKinds,
  resonanceKinds,
  stages,
} from './terms.js';
import { views } from './views.js';
import { chartViews } from './views-charts.js';
import { systemViews } from './views-system.js';
import { listenViews } from './views-listen.js';
import { remedyViews } from './views-remedy.js';
import { modeViews } from './views-modes.js';
import { recordingViews } from './views-recordings.js';
import { roomViews } from './views-room.js';
import { sheetViews } from './views-sheet.js';

export const english: Words = {
  language: 'en',
  errors: { ...fileErrors, ...houseErrors, ...studyErrors, ...seatErrors, ...commandErrors, ...pageErrors },
  notes,
  remedies,
  captions,
  views: {
    ...views,
    ...chartViews,
    ...modeViews,
    ...recordingViews,
    ...roomViews,
    ...listenViews,
    ...systemViews,
    ...sheetViews,
    ...remedyViews,
  },
  stages,
  resonanceKinds,
  modeKinds,
  constructions,
  causes,
  axes,
  limits,
  audible,
  methods,
  cautions,
  labels,
  unknown: (p, n) => `Something is wrong that has no sentence yet (${n.text(p.code)}).`,
};
