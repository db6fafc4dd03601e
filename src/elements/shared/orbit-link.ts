import { viewpoints } from '../../draw/orbit.js';
import type { OrbitView } from '../../draw/types.js';
import type { LinkValue } from '../../study/view-link.js';

const degrees = 180 / Math.PI;
const rounded = (value: number): number => Math.round(value * 10) / 10;

export const sameOrbit = (a: OrbitView, b: OrbitView): boolean =>
  Math.abs(a.azimuthRadians - b.azimuthRadians) < 1e-6 &&
  Math.abs(a.elevationRadians - b.elevationRadians) < 1e-6 &&
  Math.abs(a.zoom - b.zoom) < 1e-6;

/** Turn and tilt in degrees and nearness, for a link; nothing where a view stands as it does by default. */
export const orbitValues = (orbit: OrbitView, own: OrbitView = viewpoints.corner): readonly LinkValue[] =>
  sameOrbit(orbit, own)
    ? [null, null, null]
    : [rounded(orbit.azimuthRadians * degrees), rounded(orbit.elevationRadians * degrees), orbit.zoom];

export const orbitOf = (
  [turn = null, tilt = null, zoom = null]: readonly LinkValue[],
  own: OrbitView = viewpoints.corner,
): OrbitView => ({
  azimuthRadians: turn === null ? own.azimuthRadians : Number(turn) / degrees,
  elevationRadians: tilt === null ? own.elevationRadians : Number(tilt) / degrees,
  zoom: zoom === null ? own.zoom : Number(zoom),
});
