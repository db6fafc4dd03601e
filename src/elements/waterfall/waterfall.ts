import { WaterfallBase } from './waterfall-base.js';
import type { SurfaceMaker } from './waterfall-base.js';

/**
 * The decay surface: level over frequency and time, turned by pointer, touch or keyboard, with the ridges flagged on it
 * by frequency and decay time and the predicted modes as strokes on the floor. three.js is fetched when the first one
 * becomes visible; without WebGL the same data are drawn by lines.
 *
 * @summary Surface of level over frequency and time, with the ridges flagged.
 * @tag ringdown-waterfall
 *
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<RidgeSelectDetail>} ringdown-ridge-select - The user selected a ridge.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and viewpoints.
 * @csspart title - Name of the recording.
 * @csspart views - The buttons of the viewpoints.
 * @csspart picture - What holds the canvas.
 * @csspart cursor - The two sliders and the read-out.
 * @csspart readout - The value under the cursor.
 * @csspart turning - The sliders that turn the view.
 * @csspart save - Width and buttons to save the picture.
 * @csspart link - Button that copies a link to the view.
 * @csspart key - The signs in the picture.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart canvas - The picture itself.
 *
 * @cssprop [--ringdown-height=clamp(20rem, 58cqi, 38rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - Cursor and selection.
 * @cssprop --ringdown-scale - Colour scale: `dusk`, `dawn` or `clear`; where `scale` is `auto`.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownWaterfall extends WaterfallBase {
  protected override async loadSurface(): Promise<SurfaceMaker> {
    const { prepareSurface, SurfaceView } = await import('../../draw/surface.js');
    return {
      prepare: prepareSurface,
      create: (canvas, { once = false } = {}) => new SurfaceView(canvas, { watchVisibility: !once, once }),
    };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-waterfall': RingdownWaterfall;
  }
}
