import type { ModeKind } from '../room/index.js';

/** Kinds are told apart by one, two or three strokes, as in the pictures. */
export const modeKindMarks: Readonly<Record<ModeKind, string>> = {
  axial: '|  ',
  tangential: '|| ',
  oblique: '|||',
  plan: '|| ',
  mixed: '|||',
};
