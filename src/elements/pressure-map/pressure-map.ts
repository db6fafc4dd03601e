import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { DrawSize } from '../../draw/picture.js';
import { drawPressurePixels } from '../../draw/pressure-pixels.js';
import type { DrawTheme } from '../../draw/types.js';
import { figureWords } from '../../sheet/figure-words.js';
import type { Pen } from '../../draw/pen.js';
import type { FigureWords } from '../../draw/figure.js';
import { canvasPen } from '../../draw/pen.js';
import { fitCanvas } from '../../draw/picture.js';
import { drawPressureColours, drawPressureLines, SignedLayer } from '../../draw/pressure-picture.js';
import type { PressureLayout, PressurePicture } from '../../draw/pressure-picture.js';
import { isNode, sameOrder } from '../../study/mode-readings.js';
import type { Cursor, Part } from '../../study/types.js';
import type { Scope } from '../scope.js';
import type { LegendItem } from '../../draw/legend.js';
import { chartStyles } from '../shared/chart-styles.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { figureStyles } from '../shared/figure-styles.js';
import { orderName } from '../../sheet/mode-name.js';
import { RoomChartElement } from '../shared/room-chart.js';
import { roomName } from '../../sheet/room-name.js';
import type { LinkValue } from '../../study/view-link.js';
import { tokens } from '../shared/styles.js';
import {
  firstSpot,
  floorAt,
  levelText,
  motionText,
  placesInMap,
  pressurePicture,
  shapeAt,
  valueAt,
} from './chart.js';
import type { Quantity, Spot } from './chart.js';
import { pressureStyles } from './styles.js';
import { renderPlaceTables } from './tables.js';

/** One swing takes so long, s: slow enough to follow with the eye. */
const swingSeconds = 4;
/** Pictures per second while it swings. */
const swingRate = 24;
const quantities = ['pressure', 'motion'] as const;
/** A step of the cursor, m. */
const stepMetres = 0.05;

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
export class RingdownPressureMap extends RoomChartElement {
  static override styles = [tokens, figureStyles, chartStyles, pressureStyles];

  protected override readonly chartName = 'pressure-map';
  @state() private spot: Spot | null = null;
  @state() private quantity: Quantity = 'pressure';
  @state() private swinging = true;
  @state() private still = false;
  /** @internal */
  override readonly linkName = 'pressure-map';
  #hovered: Spot | null = null;
  #layers: readonly [SignedLayer, SignedLayer] | null = null;
  #layout: PressureLayout | null = null;
  #frame: (action: () => void) => void = () => undefined;
  #began = 0;
  #drawnAt = 0;

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    const { quantity, spot, swinging } = this;
    return [
      quantity === 'motion' ? quantity : null,
      ...(spot ? [spot.x, spot.y, spot.z] : [null, null, null]),
      swinging ? null : 'still',
    ];
  }

  /** @internal */
  override takeLink([
    quantity = null,
    x = null,
    y = null,
    z = null,
    still = null,
  ]: readonly LinkValue[]): void {
    this.quantity = quantity === null ? 'pressure' : 'motion';
    this.spot = x === null || y === null || z === null ? null : { x: Number(x), y: Number(y), z: Number(z) };
    this.swinging = still === null;
  }

  override get needs(): readonly Part[] {
    return ['prediction', 'pressure'];
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#frame = scope.frames();
    const query = '(prefers-reduced-motion: reduce)';
    const look = (): void => {
      this.still = matchMedia(query).matches;
    };
    scope.onMedia(query, look);
    look();
  }

  protected override get drawable(): boolean {
    return Boolean(this.snapshot?.room && this.snapshot.pressure);
  }

  protected override shownParts(): readonly unknown[] {
    const { prediction, pressure, room, places, recordings } = this.snapshot!;
    return [prediction, pressure, room, places, recordings];
  }

  /** The point that is looked at; it stays in the room. */
  get #spot(): Spot {
    const { snapshot } = this;
    const spot = this.#hovered ?? this.spot ?? firstSpot(snapshot!);
    const { lengthMetres, widthMetres, heightMetres } = snapshot!.room!.size;
    return {
      x: Math.min(spot.x, lengthMetres),
      y: Math.min(spot.y, widthMetres),
      z: Math.min(spot.z, heightMetres),
    };
  }

  #picture(): PressurePicture {
    return pressurePicture(this.snapshot!, this.#spot, this.quantity, this.speaker);
  }

  /** For a file: both layers in one, standing still. */
  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const picture = this.#picture();
    drawPressurePixels(pen, picture, theme, size);
    drawPressureLines(pen, picture, theme, size);
  }

  /** Of the room and the mode; no file had a part in it. */
  protected override savedWords(): FigureWords {
    const { snapshot, speaker } = this;
    const label = roomName(snapshot!.room!, speaker);
    const about = { label, legend: this.keyItems(), caption: this.captionText() };
    return figureWords({ ...snapshot!, recordings: [] }, speaker, this.chartName, about);
  }

  protected override draw(): void {
    const lines = this.canvas?.getContext('2d');
    if (!lines || !this.drawable) return;
    const { theme } = this.themeController;
    const { size } = this.stageController;
    fitCanvas(lines.canvas, size);
    lines.setTransform(size.pixelRatio, 0, 0, size.pixelRatio, 0, 0);
    lines.clearRect(0, 0, size.cssWidth, size.cssHeight);
    this.#layout = drawPressureLines(canvasPen(lines, theme.fontFamily), this.#picture(), theme, size);
    this.#drawColours();
    this.#swing();
  }

  #drawColours(): void {
    const context = this.renderRoot.querySelector<HTMLCanvasElement>('canvas.colours')?.getContext('2d');
    if (!context || !this.drawable) return;
    this.#layers ??= [new SignedLayer(), new SignedLayer()];
    const { theme } = this.themeController;
    drawPressureColours(
      context,
      this.#picture(),
      this.#layers,
      this.#factor,
      theme,
      this.stageController.size,
    );
  }

  /** Whole while it stands still: what is seen is the shape itself. */
  get #factor(): number {
    if (!this.#moving) return 1;
    const swing = Math.cos((2 * Math.PI * (performance.now() - this.#began)) / (1000 * swingSeconds));
    // Motion is drawn without its direction.
    return this.quantity === 'motion' ? Math.abs(swing) : swing;
  }

  get #moving(): boolean {
    return this.swinging && !this.still && !this.themeController.printing;
  }

  /** Goes on only while it is seen. */
  #swing(): void {
    if (!this.#moving) return;
    this.#frame(() => {
      if (!this.#moving) return;
      // Out of sight it waits to be drawn again.
      if (!this.stageController.visible) {
        this.stageController.request();
        return;
      }
      const now = performance.now();
      if (now - this.#drawnAt >= 1000 / swingRate - 4) {
        this.#drawnAt = now;
        this.#drawColours();
      }
      this.#swing();
    });
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('swinging')) this.#began = performance.now();
    super.updated(changed);
  }

  #moveSpot(change: Partial<Spot>): void {
    this.#hovered = null;
    this.spot = { ...this.#spot, ...change };
    this.speakReadout();
  }

  protected override hover(event: PointerEvent): void {
    const { x, y } = this.pointOf(event);
    const point = this.#layout?.toRoom(x, y);
    this.canvas?.classList.toggle('on-ridge', (this.#layout?.placeAt(x, y) ?? null) !== null);
    const before = this.#hovered;
    // Plan and section go through the point under the pointer, and back where it was put when it leaves.
    this.#hovered = point ? { ...(this.spot ?? firstSpot(this.snapshot!)), ...point } : null;
    if (before !== this.#hovered) this.requestUpdate();
  }

  protected override leave(): void {
    if (!this.#hovered) return;
    this.#hovered = null;
    this.requestUpdate();
  }

  protected override press(event: MouseEvent): void {
    const { x, y } = this.pointOf(event);
    const place = this.#layout?.placeAt(x, y) ?? null;
    const point = this.#layout?.toRoom(x, y);
    if (place !== null) this.#moveSpot(placesInMap(this.snapshot!)[place].at);
    else if (point) this.#moveSpot(point);
  }

  /** The cursor of this picture is a point of the room, not of the study's frequencies and times. */
  protected override cursorAt(): Cursor | null {
    return null;
  }

  protected override readoutText(): string {
    const { snapshot, speaker } = this;
    if (!snapshot?.pressure || !snapshot.room) return '';
    const spot = this.#spot;
    if (this.quantity === 'motion') {
      const value = valueAt(snapshot.pressure, snapshot.room, spot, 'motion');
      return speaker.view(Number.isNaN(value) ? 'pressure-readout-outside' : 'motion-readout', {
        ...spot,
        level: motionText(value, speaker),
      });
    }
    const shape = shapeAt(snapshot.pressure, snapshot.room, spot);
    const node = isNode(snapshot, spot, floorAt(snapshot.pressure, spot.x, spot.y));
    return speaker.view(Number.isNaN(shape) ? 'pressure-readout-outside' : 'pressure-readout', {
      ...spot,
      level: levelText(shape, node, speaker),
      sign: node ? 'none' : shape > 0 ? 'above' : 'below',
    });
  }

  protected override sliders(): readonly CursorSlider[] {
    const { lengthMetres, widthMetres, heightMetres } = this.snapshot!.room!.size;
    const spot = this.#spot;
    const slider = (axis: 'x' | 'y' | 'z', to: number): CursorSlider => ({
      axis,
      positions: Float64Array.from({ length: Math.ceil(to / stepMetres - 1e-9) + 1 }, (_, k) =>
        Math.min(to, k * stepMetres),
      ),
      value: spot[axis],
      moved: (value) => this.#moveSpot({ [axis]: value }),
    });
    return [slider('x', lengthMetres), slider('y', widthMetres), slider('z', heightMetres)];
  }

  protected override keyItems(): readonly LegendItem[] {
    const { speaker } = this;
    const signs: LegendItem[] =
      this.quantity === 'motion'
        ? [{ sign: 'above', text: speaker.view('key-motion') }]
        : [
            { sign: 'above', text: speaker.view('key-pressure-above') },
            { sign: 'below', text: speaker.view('key-pressure-below') },
            { sign: 'text-line', text: speaker.view('key-node') },
          ];
    return [
      ...signs,
      { sign: 'ring', text: speaker.view('kind-seat') },
      { sign: 'square', text: speaker.view('kind-source') },
    ];
  }

  protected override captionText(): string {
    const { speaker, snapshot } = this;
    const { mode } = snapshot!.pressure!;
    const room = snapshot!.room!;
    return [
      speaker.view('pressure-caption', {
        order: orderName(mode.order, room),
        kind: speaker.term('modeKinds', mode.kind),
        frequencyHz: mode.frequencyHz,
      }),
      ...(mode.decayTimeSeconds === null
        ? []
        : [speaker.view('pressure-decay', { decayTimeSeconds: mode.decayTimeSeconds })]),
      ...(this.quantity === 'motion' ? [speaker.view('motion-caption')] : []),
      speaker.view('pressure-limits'),
    ].join(' ');
  }

  protected override renderTools(): TemplateResult {
    const { speaker, snapshot } = this;
    const { room, modes } = snapshot!.prediction ?? { room: snapshot!.room!, modes: [] };
    const shown = snapshot!.pressure!.mode;
    return html`<div class="tools screen-only">
      <label
        >${speaker.view('choose-mode')}
        <select
          part="mode"
          @change=${(event: Event) =>
            this.selectMode(modes[(event.target as HTMLSelectElement).selectedIndex].order)}
        >
          ${modes.map(
            ({ order, frequencyHz }) =>
              html`<option ?selected=${sameOrder(order, shown.order)}>
                ${speaker.view('mode-choice', { order: orderName(order, room), frequencyHz })}
              </option>`,
          )}
        </select></label
      >
      <label
        >${speaker.view('choose-quantity')}
        <select
          part="quantity"
          @change=${(event: Event) => {
            this.quantity = quantities[(event.target as HTMLSelectElement).selectedIndex];
          }}
        >
          ${quantities.map(
            (one) =>
              html`<option ?selected=${one === this.quantity}>${speaker.view(`quantity-${one}`)}</option>`,
          )}
        </select></label
      >
      ${
        this.still
          ? nothing
          : html`<button
              type="button"
              part="swing"
              aria-pressed=${this.swinging}
              @click=${() => {
                this.swinging = !this.swinging;
              }}
            >
              ${speaker.view('swing')}
            </button>`
      }
    </div>`;
  }

  protected override renderCanvas(): TemplateResult {
    return html`${super.renderCanvas()}<canvas class="colours" aria-hidden="true"></canvas>`;
  }

  protected override renderTable(): TemplateResult {
    return renderPlaceTables(this.snapshot!, this.speaker);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-pressure-map': RingdownPressureMap;
  }
}
