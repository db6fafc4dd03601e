import { PressureMapBase } from './pressure-map-base.js';
import type { RoomMaker } from './room.js';

/**
 * Where a mode is loud: its signed pressure in the floor plan and in a section, slowly swinging, with its nodes, and the
 * level that each seat and source gets. The mode is the one that was chosen, else the likeliest of the ridge in view,
 * else the lowest.
 *
 * @summary The pressure of one mode in plan and section, with the level at each seat and source.
 * @tag ringdown-pressure-map
 *
 * @fires {CustomEvent<ModeSelectDetail>} ringdown-mode-select - The user chose a mode.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a room.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - Name of the recording, or of the room.
 * @csspart mode - Choice of the mode.
 * @csspart views - The buttons for plan and section, or the room.
 * @csspart turning - The sliders that turn the room.
 * @csspart quantity - Choice between pressure and particle motion.
 * @csspart swing - The button that stops the swinging.
 * @csspart picture - What holds the canvases.
 * @csspart key - What the signs mean.
 * @csspart cursor - The sliders and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart save - Width and buttons to save the picture.
 * @csspart link - Button that copies a link to the view.
 * @csspart table - Seats and sources as tables.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 *
 * @cssprop [--ringdown-height=clamp(22rem, 72cqi, 42rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text, walls and lines; the page's where not given.
 * @cssprop --ringdown-accent - Cursor.
 *
 * @cssstate busy - Something is being computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownPressureMap extends PressureMapBase {
  protected override readonly hasRoom = true;

  protected override async loadRoom(): Promise<RoomMaker> {
    const { RoomView } = await import('../../draw/room-view.js');
    return { create: (changed) => new RoomView(changed) };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-pressure-map': RingdownPressureMap;
  }
}
