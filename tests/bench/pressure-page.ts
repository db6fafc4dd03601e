/** The page of `npm run bench -- pressure`: measures in the browser and hands its figures to the script. */
import { canvasPen } from '../../src/draw/pen.js';
import { drawPressureColours, drawPressureLines, SignedLayer } from '../../src/draw/pressure-picture.js';
import { roomViewpoint } from '../../src/draw/orbit.js';
import { drawRoomLines, type RoomPicture } from '../../src/draw/room-picture.js';
import { RoomView } from '../../src/draw/room-view.js';
import type { PressurePicture } from '../../src/draw/pressure-picture.js';
import { lightTheme } from '../draw/fields.js';

const size = { cssWidth: 900, cssHeight: 650, pixelRatio: 1 };

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1];

/** A box of 5.4 x 4.1 x 2.7 m with the mode (2,1,1), at so many points as an element asks for. */
function picture(shift: number): PressurePicture {
  const [columns, rows, levels] = [81, 62, 33];
  const wave = (order: number, part: number): number => Math.cos(order * Math.PI * part);
  const plan = Float32Array.from({ length: columns * rows }, (_, k) => {
    const [c, r] = [k % columns, Math.floor(k / columns)];
    return wave(2, c / (columns - 1)) * wave(1, r / (rows - 1)) * (1 - shift);
  });
  const section = Float32Array.from({ length: columns * levels }, (_, k) => {
    const [c, r] = [k % columns, Math.floor(k / columns)];
    return wave(2, c / (columns - 1)) * wave(1, r / (levels - 1)) * (1 - shift);
  });
  return {
    ...{ lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.7 },
    corners: [
      { x: 0, y: 0 },
      { x: 5.4, y: 0 },
      { x: 5.4, y: 4.1 },
      { x: 0, y: 4.1 },
    ],
    plan: { columns, rows, values: plan },
    section: { columns, rows: levels, values: section },
    cursor: { x: 3, y: 1.5, z: 1.2 },
    places: [1, 2, 3].map((x) => ({
      ...{ kind: 'seat' as const, x, y: 2, z: 1.2, label: `Seat ${x}`, selected: false, sound: true },
    })),
    planLabel: 'plan',
    sectionLabel: 'section',
  };
}

/** The L-shaped room's walls make the dearest picture: every pixel of the floor asks for its six walls. */
function roomOf(shift: number): RoomPicture {
  const { plan, places, cursor, lengthMetres, widthMetres, heightMetres } = picture(shift);
  return {
    ...{ lengthMetres, widthMetres, heightMetres, cursor, places },
    ...{ columns: plan.columns, rows: plan.rows, floor: plan.values, along: plan.values.map(Math.abs) },
    corners: [
      { x: 0, y: 0 },
      { x: 5.4, y: 0 },
      { x: 5.4, y: 2.5 },
      { x: 3, y: 2.5 },
      { x: 3, y: 4.1 },
      { x: 0, y: 4.1 },
    ],
    upright: Math.PI / 2.7,
    largestMotion: null,
  };
}

function measure(): Record<string, number> {
  const canvases = [0, 1].map(() => document.createElement('canvas'));
  document.body.append(...canvases);
  const [lines, colours] = canvases.map((canvas) => canvas.getContext('2d')!);
  Object.assign(lines.canvas, { width: size.cssWidth, height: size.cssHeight });
  const layers = [new SignedLayer(), new SignedLayer()] as const;
  const timed = (task: (k: number) => void): number => {
    const values = Array.from({ length: 40 }, (_, k) => {
      const begin = performance.now();
      task(k);
      return performance.now() - begin;
    });
    return median(values.slice(5));
  };
  const steady = picture(0);
  const room = new RoomView(() => undefined);
  if (!room.available) throw new Error('There is no WebGL here to draw the room with.');
  const roomNow = roomOf(0);
  const turned = (k: number) => ({ ...roomViewpoint, azimuthRadians: k / 20 });
  return {
    roomSwing: timed((k) =>
      room.draw(colours, roomNow, roomViewpoint, lightTheme, size, Math.cos(k), 'quick'),
    ),
    roomTurn: timed((k) => {
      lines.clearRect(0, 0, size.cssWidth, size.cssHeight);
      drawRoomLines(canvasPen(lines, 'sans-serif'), roomNow, turned(k), lightTheme, size);
      room.draw(colours, roomNow, turned(k), lightTheme, size, 1, 'quick');
    }),
    roomFine: timed((k) => room.draw(colours, roomNow, turned(k), lightTheme, size, 1, 'fine')),
    swing: timed((k) => drawPressureColours(colours, steady, layers, Math.cos(k), lightTheme, size)),
    whole: timed((k) => {
      const fresh = picture(k / 1000);
      lines.clearRect(0, 0, size.cssWidth, size.cssHeight);
      drawPressureLines(canvasPen(lines, 'sans-serif'), fresh, lightTheme, size);
      drawPressureColours(colours, fresh, layers, 1, lightTheme, size);
    }),
  };
}

Object.assign(window, { measure });
