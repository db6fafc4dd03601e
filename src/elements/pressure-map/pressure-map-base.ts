import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import { limitOrbit, roomViewpoint } from '../../draw/orbit.js';
import { drawRoomLines, type RoomLayout, type RoomPicture } from '../../draw/room-picture.js';
import type { OrbitView } from '../../draw/types.js';
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
import { afterGrace } from '../scope.js';
import type { Dispose, Scope } from '../scope.js';
import { OrbitGestures } from '../shared/gestures.js';
import { orbitOf, orbitValues } from '../shared/orbit-link.js';
import type { Given } from '../shared/settings.js';
import { turningControls, turningStyles } from '../shared/turning.js';
import type { RoomMaker, RoomView } from './room.js';
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
  roomPicture,
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
 * The pressure map without its room: everything but who draws that. Two layers, two views and one cursor share most of
 * its state, so that it is long and in one piece.
 */
export abstract class PressureMapBase extends RoomChartElement {
  static override styles = [tokens, figureStyles, chartStyles, turningStyles, pressureStyles];

  protected override readonly chartName = 'pressure-map';
  /** "plan" for plan and section, "room" for the room that can be turned. */
  @property() view: Given = null;
  @state() private orbit: OrbitView = roomViewpoint;
  /** The room was asked for and cannot be drawn here. */
  @state() private roomless = false;
  @state() private spot: Spot | null = null;
  @state() private quantity: Quantity = 'pressure';
  @state() private swinging = true;
  @state() private still = false;
  /** @internal */
  override readonly linkName = 'pressure-map';
  #hovered: Spot | null = null;
  #layers: readonly [SignedLayer, SignedLayer] | null = null;
  #layout: PressureLayout | null = null;
  #maker: RoomMaker | null = null;
  #room: RoomView | null = null;
  #roomLayout: RoomLayout | null = null;
  #loading = false;
  #callOff: Dispose | null = null;
  readonly #gestures = new OrbitGestures({
    orbit: () => this.orbit,
    turned: (orbit) => this.#turn(orbit),
    size: () => this.stageController.boxSize,
  });
  #frame: (action: () => void) => void = () => undefined;
  #began = 0;
  #drawnAt = 0;

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    const { quantity, spot, swinging, orbit } = this;
    return [
      quantity === 'motion' ? quantity : null,
      ...(spot ? [spot.x, spot.y, spot.z] : [null, null, null]),
      swinging ? null : 'still',
      ...(this.#inRoom ? ['room', ...orbitValues(orbit, roomViewpoint)] : [null, null, null, null]),
    ];
  }

  /** @internal */
  override takeLink([
    quantity = null,
    x = null,
    y = null,
    z = null,
    still = null,
    view = null,
    ...turned
  ]: readonly LinkValue[]): void {
    this.view = view;
    this.#turn(orbitOf(turned, roomViewpoint));
    this.quantity = quantity === null ? 'pressure' : 'motion';
    this.spot = x === null || y === null || z === null ? null : { x: Number(x), y: Number(y), z: Number(z) };
    this.swinging = still === null;
  }

  override get needs(): readonly Part[] {
    return ['prediction', 'pressure'];
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#callOff?.();
    this.#callOff = null;
    this.#frame = scope.frames();
    const query = '(prefers-reduced-motion: reduce)';
    const look = (): void => {
      this.still = matchMedia(query).matches;
    };
    scope.onMedia(query, look);
    look();
  }

  /** Whether this build can draw a room. */
  protected readonly hasRoom: boolean = false;

  /** Fetches what draws the room; null where this build has none. */
  protected loadRoom(): Promise<RoomMaker> | null {
    return null;
  }

  /** A moved element keeps its part of the page's context; one that stays away gives it back. */
  protected override disconnected(): void {
    super.disconnected();
    this.#callOff = afterGrace(() => this.#freeRoom());
  }

  #freeRoom(): void {
    this.#room?.dispose();
    this.#room = null;
  }

  get #inRoom(): boolean {
    return String(this.view ?? '').trim() === 'room' && !this.roomless;
  }

  /** What draws the room, where it is asked for and can be drawn now; plan and section stand in until then. */
  #roomNow(): RoomView | null {
    if (!this.#inRoom) return null;
    if (!this.#maker) {
      void this.#load();
      return null;
    }
    this.#room ??= this.#maker.create(() => this.stageController.request());
    if (this.#room.available) return this.#room;
    this.#lost();
    return null;
  }

  /** For good where there never was a context; one that is lost may come back. */
  #lost(): void {
    if (this.#room?.canCome) return;
    this.#freeRoom();
    this.roomless = true;
  }

  async #load(): Promise<void> {
    if (this.#loading) return;
    this.#loading = true;
    try {
      this.#maker = (await this.loadRoom()) ?? null;
    } catch {
      // A page that forbids the further module, or a lost network: plan and section show the same.
    }
    this.#loading = false;
    if (this.#maker) this.stageController.request();
    else this.roomless = true;
  }

  #turn(orbit: OrbitView): void {
    this.orbit = limitOrbit(orbit);
    this.stageController.request();
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

  #roomPicture(): RoomPicture {
    return roomPicture(this.snapshot!, this.#spot, this.quantity, this.speaker);
  }

  /** For a file: both layers in one, standing still. */
  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const room = this.#roomNow();
    if (room) {
      room.paint(pen, this.#roomPicture(), this.orbit, theme, size);
      return;
    }
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
    const pen = canvasPen(lines, theme.fontFamily);
    const room = this.#roomNow();
    this.#roomLayout = room && drawRoomLines(pen, this.#roomPicture(), this.orbit, theme, size);
    this.#layout = room ? null : drawPressureLines(pen, this.#picture(), theme, size);
    this.#drawColours();
    this.#swing();
  }

  #drawColours(): void {
    const context = this.renderRoot.querySelector<HTMLCanvasElement>('canvas.colours')?.getContext('2d');
    if (!context || !this.drawable) return;
    const { theme } = this.themeController;
    const { size } = this.stageController;
    if (this.#roomLayout && this.#room) {
      const quality = this.#moving ? 'quick' : 'fine';
      if (this.#room.draw(context, this.#roomPicture(), this.orbit, theme, size, this.#factor, quality))
        return;
      // Lost meanwhile: plan and section take its place.
      this.stageController.request();
      return;
    }
    this.#layers ??= [new SignedLayer(), new SignedLayer()];
    drawPressureColours(context, this.#picture(), this.#layers, this.#factor, theme, size);
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

  get #shown(): RoomLayout | PressureLayout | null {
    return this.#roomLayout ?? this.#layout;
  }

  #moveSpot(change: Partial<Spot>): void {
    this.#hovered = null;
    this.spot = { ...this.#spot, ...change };
    this.speakReadout();
  }

  protected override hover(event: PointerEvent): void {
    const { x, y } = this.pointOf(event);
    const point = this.#layout?.toRoom(x, y);
    this.canvas?.classList.toggle('on-ridge', (this.#shown?.placeAt(x, y) ?? null) !== null);
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
    const place = this.#shown?.placeAt(x, y) ?? null;
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
        inRoom: this.#inRoom,
        order: orderName(mode.order, room),
        kind: speaker.term('modeKinds', mode.kind),
        frequencyHz: mode.frequencyHz,
      }),
      ...(mode.decayTimeSeconds === null
        ? []
        : [speaker.view('pressure-decay', { decayTimeSeconds: mode.decayTimeSeconds })]),
      ...(this.quantity === 'motion' ? [speaker.view('motion-caption')] : []),
      ...(this.#inRoom ? [speaker.view('pressure-room-caption')] : []),
      speaker.view('pressure-limits'),
    ].join(' ');
  }

  protected override renderTools(): TemplateResult {
    const { speaker, snapshot } = this;
    const { room, modes } = snapshot!.prediction ?? { room: snapshot!.room!, modes: [] };
    const shown = snapshot!.pressure!.mode;
    return html`<div class="tools screen-only">
      ${this.#renderViews()}
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

  /** Only where this build can draw a room. */
  #renderViews(): TemplateResult | typeof nothing {
    if (!this.hasRoom) return nothing;
    const { speaker } = this;
    return html`<div class="views" part="views" role="group" aria-label=${speaker.view('view-group')}>
      ${(['plan', 'room'] as const).map(
        (one) =>
          html`<button
            type="button"
            aria-pressed=${(one === 'room') === this.#inRoom}
            ?disabled=${one === 'room' && this.roomless}
            @click=${() => {
              this.view = one;
            }}
          >
            ${speaker.view(`pressure-view-${one}`)}
          </button>`,
      )}
    </div>`;
  }

  protected override renderMore(): TemplateResult | null {
    const { speaker } = this;
    if (this.#inRoom) return turningControls(speaker, this.orbit, (orbit) => this.#turn(orbit));
    return this.roomless ? html`<p class="flat" role="status">${speaker.view('room-needs-webgl')}</p>` : null;
  }

  protected override renderCanvas(): TemplateResult {
    const gestures = this.#gestures;
    const canvas = this.#inRoom
      ? html`<canvas
          class="turned"
          role="img"
          aria-label=${this.speaker.view('pressure-room-name', { label: this.recordingLabel })}
          aria-describedby="help"
          @pointerdown=${(event: PointerEvent) => gestures.down(event)}
          @pointermove=${(event: PointerEvent) => {
            if (!gestures.move(event)) this.hover(event);
          }}
          @pointerup=${(event: PointerEvent) => {
            if (gestures.up(event)) this.press(event);
          }}
          @pointercancel=${(event: PointerEvent) => gestures.up(event)}
          @wheel=${gestures.wheelListener}
        ></canvas>`
      : super.renderCanvas();
    return html`${canvas}<canvas class="colours" aria-hidden="true"></canvas>`;
  }

  protected override renderTable(): TemplateResult {
    return renderPlaceTables(this.snapshot!, this.speaker);
  }
}
