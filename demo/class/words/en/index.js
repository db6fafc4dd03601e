export { frame } from './frame.js';
export { impostors } from './impostors.js';
export { kinds } from './kinds.js';
export { places } from './places.js';
export { remedies } from './remedies.js';
export { walk } from './walk.js';
export { windows } from './windows.js';
