import { describe, expect, it } from 'vitest';
import { roomViewpoint } from '../../src/draw/orbit.js';
import { layoutRoom, wallsSeen, type RoomPicture } from '../../src/draw/room-picture.js';

const size = { cssWidth: 800, cssHeight: 500 };
const picture = (corners: RoomPicture['corners']): RoomPicture => ({
  ...{ lengthMetres: 6, widthMetres: 5, heightMetres: 2.5, corners },
  ...{ columns: 2, rows: 2, floor: new Float32Array(4), along: new Float32Array(4) },
  ...{ upright: 0, largestMotion: null, cursor: { x: 1, y: 1, z: 1 } },
  places: [{ kind: 'seat', x: 3, y: 2, z: 1.2, label: 'desk', selected: false, sound: true }],
});
const corner = (x: number, y: number) => ({ x, y });
const box = [corner(0, 0), corner(6, 0), corner(6, 5), corner(0, 5)];
const bent = [corner(0, 0), corner(6, 0), corner(6, 3.2), corner(3.5, 3.2), corner(3.5, 5), corner(0, 5)];
const front = { azimuthRadians: 0, elevationRadians: 0.5, zoom: 1 };

describe('a room that is looked into', () => {
  it('stands whole within its picture, with heights upwards and the far wall above the near one', () => {
    for (const orbit of [roomViewpoint, front, { ...front, elevationRadians: Math.PI / 2 }]) {
      const { toPixel } = layoutRoom(picture(box), orbit, size);
      for (const { x, y } of box)
        for (const z of [0, 2.5]) {
          const at = toPixel(x, y, z);
          expect(at.x).toBeGreaterThan(0);
          expect(at.x).toBeLessThan(800);
          expect(at.y).toBeGreaterThan(0);
          expect(at.y).toBeLessThan(500);
        }
      expect(toPixel(3, 5, 0).y, 'y runs away from the eye, as up on a plan').toBeLessThan(
        toPixel(3, 0, 0).y,
      );
    }
    const { toPixel } = layoutRoom(picture(box), front, size);
    expect(toPixel(3, 2, 2.5).y).toBeLessThan(toPixel(3, 2, 0).y);
    expect(toPixel(6, 2, 0).x).toBeGreaterThan(toPixel(0, 2, 0).x);
  });

  it('leaves out the walls between the eye and the room, whichever way its corners run', () => {
    const seen = (corners: RoomPicture['corners']) =>
      wallsSeen(picture(corners), layoutRoom(picture(corners), front, size).space);
    // From the front: the near wall is out; far, left and right walls are seen from inside.
    expect(seen(box)).toEqual([false, true, true, true]);
    const about = [...box].reverse();
    expect(seen(about).filter((one) => !one).length).toBe(1);
    expect(seen(about)[2], 'the near wall is the third of the way round').toBe(false);
    const behind = layoutRoom(picture(box), { ...front, azimuthRadians: Math.PI }, size).space;
    expect(wallsSeen(picture(box), behind)).toEqual([true, true, false, true]);
    expect(seen(bent)).toEqual([false, true, true, true, true, true]);
  });

  it('is pressed at its seats', () => {
    const layout = layoutRoom(picture(box), roomViewpoint, size);
    const at = layout.toPixel(3, 2, 1.2);
    expect(layout.placeAt(at.x + 4, at.y)).toBe(0);
    expect(layout.placeAt(at.x + 40, at.y)).toBe(null);
  });
});
