/** Whether surfaces can be drawn by WebGL here; asked before three.js is loaded. */

let known = false;

/** True where a WebGL 2 context can be had. False is asked again next time: a lost GPU may come back. */
export function hasWebGl(): boolean {
  if (known) return true;
  if (typeof document === 'undefined') return false;
  const context = document.createElement('canvas').getContext('webgl2');
  if (!context) return false;
  // Contexts are few per page: this one is given back at once.
  context.getExtension('WEBGL_lose_context')?.loseContext();
  known = true;
  return true;
}
