import { walk } from './lesson-walk.js';
import { kinds } from './lesson-kinds.js';
import { places } from './lesson-places.js';
import { windows } from './lesson-windows.js';
import { impostors } from './lesson-impostors.js';
import { remedies } from './lesson-remedies.js';

/**
 * A lesson: its questions with their options; `tasks` says what is to be tried, and `act` makes it; `answer` says from the figures of `class.json`,
 * which the engine computed, which option is right and why.
 */
export const lessons = [walk, kinds, places, windows, impostors, remedies];
