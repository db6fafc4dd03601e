/**
 * The camera's orbit as pure functions: a gesture in, a view out. No inertia: the picture stops with the hand, so that
 * reduced motion needs no other path and nothing is drawn after the last event.
 */
import type { OrbitView } from './types.js';

const degrees = Math.PI / 180;

/** Straight down is the plan view; never below the floor, where the surface would be seen from inside. */
export const orbitLimits = {
  elevationRadians: [6 * degrees, 90 * degrees],
  zoom: [0.6, 5],
} as const;

/** Viewpoints by name. Azimuth 0 looks along time from its late end: frequency runs to the right. */
export const viewpoints = {
  front: { azimuthRadians: 0, elevationRadians: 20 * degrees, zoom: 1 },
  corner: { azimuthRadians: -24 * degrees, elevationRadians: 28 * degrees, zoom: 1 },
  side: { azimuthRadians: -68 * degrees, elevationRadians: 26 * degrees, zoom: 1 },
  high: { azimuthRadians: -18 * degrees, elevationRadians: 56 * degrees, zoom: 1 },
  plan: { azimuthRadians: 0, elevationRadians: 90 * degrees, zoom: 1 },
} as const satisfies Readonly<Record<string, OrbitView>>;

/** Into a room, over its near walls: the floor and two walls in view. */
export const roomViewpoint: OrbitView = {
  azimuthRadians: -28 * degrees,
  elevationRadians: 36 * degrees,
  zoom: 1,
};

export type ViewpointName = keyof typeof viewpoints;

const clamp = (value: number, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, value));

/** An angle within (-pi, pi]. */
function wrap(angle: number): number {
  const turn = 2 * Math.PI;
  const wrapped = angle - turn * Math.floor((angle + Math.PI) / turn);
  return wrapped === -Math.PI ? Math.PI : wrapped;
}

/** Any view brought within the limits; what is not a number becomes the corner viewpoint's. */
export function limitOrbit(view: OrbitView): OrbitView {
  const or = (value: number, other: number): number => (Number.isFinite(value) ? value : other);
  const { corner } = viewpoints;
  return {
    azimuthRadians: wrap(or(view.azimuthRadians, corner.azimuthRadians)),
    elevationRadians: clamp(or(view.elevationRadians, corner.elevationRadians), orbitLimits.elevationRadians),
    zoom: clamp(or(view.zoom, corner.zoom), orbitLimits.zoom),
  };
}

/** A drag over so many CSS pixels: half a turn across the picture's width, a quarter up its height. */
export function dragOrbit(
  view: OrbitView,
  dx: number,
  dy: number,
  size: { readonly cssWidth: number; readonly cssHeight: number },
): OrbitView {
  return limitOrbit({
    azimuthRadians: view.azimuthRadians - (dx / Math.max(1, size.cssWidth)) * Math.PI,
    elevationRadians: view.elevationRadians + (dy / Math.max(1, size.cssHeight)) * (Math.PI / 2),
    zoom: view.zoom,
  });
}

/** A pinch: distance of the two fingers now over that at its start, applied to the view at its start. */
export function pinchOrbit(view: OrbitView, ratio: number): OrbitView {
  return limitOrbit({ ...view, zoom: view.zoom * (ratio > 0 ? ratio : 1) });
}

/** A wheel, where the page has given it to the picture; `deltaPixels` below 0 comes nearer. */
export function wheelOrbit(view: OrbitView, deltaPixels: number): OrbitView {
  return limitOrbit({ ...view, zoom: view.zoom * Math.exp(-deltaPixels / 480) });
}

/** Keys as a keyboard event names them: arrows turn by 5 degrees, + and - zoom, Home resets. Null for any other. */
export function keyOrbit(
  view: OrbitView,
  key: string,
  home: OrbitView = viewpoints.corner,
): OrbitView | null {
  const step = 5 * degrees;
  switch (key) {
    case 'ArrowLeft':
      return limitOrbit({ ...view, azimuthRadians: view.azimuthRadians - step });
    case 'ArrowRight':
      return limitOrbit({ ...view, azimuthRadians: view.azimuthRadians + step });
    case 'ArrowUp':
      return limitOrbit({ ...view, elevationRadians: view.elevationRadians + step });
    case 'ArrowDown':
      return limitOrbit({ ...view, elevationRadians: view.elevationRadians - step });
    case '+':
    case '=':
      return limitOrbit({ ...view, zoom: view.zoom * 1.15 });
    case '-':
      return limitOrbit({ ...view, zoom: view.zoom / 1.15 });
    case 'Home':
      return limitOrbit(home);
    default:
      return null;
  }
}
