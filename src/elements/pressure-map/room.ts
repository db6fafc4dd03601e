import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import type { RoomPicture } from '../../draw/room-picture.js';
import type { DrawTheme, OrbitView } from '../../draw/types.js';

/** What draws the room, as far as this element needs to know it. */
export interface RoomView {
  /** Whether anything can be drawn now, and whether it may be later. */
  readonly available: boolean;
  readonly canCome: boolean;
  draw(
    context: CanvasRenderingContext2D,
    picture: RoomPicture,
    orbit: OrbitView,
    theme: DrawTheme,
    size: DrawSize,
    factor: number,
    quality: 'quick' | 'fine',
  ): boolean;
  paint(pen: Pen, picture: RoomPicture, orbit: OrbitView, theme: DrawTheme, size: DrawSize): void;
  dispose(): void;
}

export interface RoomMaker {
  create(changed: () => void): RoomView;
}
