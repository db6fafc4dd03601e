/**
 * Long because one chosen mode, one spot and one swing are shown, moved and read aloud by the same few values; swing, room, controls
 * and sentences stand beside it.
 */
import { html } from 'lit';
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
import type { Cursor, Part } from '../../study/types.js';
import type { Scope } from '../scope.js';
import { OrbitGestures } from '../shared/gestures.js';
import { orbitOf, orbitValues } from '../shared/orbit-link.js';
import type { Given } from '../shared/settings.js';
import { turningControls, turningStyles } from '../shared/turning.js';
import type { RoomMaker, RoomView } from './room.js';
import type { LegendItem } from '../../draw/legend.js';
import { chartStyles } from '../shared/chart-styles.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { figureStyles } from '../shared/figure-styles.js';
import { RoomChartElement } from '../shared/room-chart.js';
import { roomName } from '../../sheet/room-name.js';
import type { LinkValue } from '../../study/view-link.js';
import { tokens } from '../shared/styles.js';
import { firstSpot, placesInMap, pressurePicture, roomPicture } from './chart.js';
import type { Quantity, Spot } from './chart.js';
import { renderControls, spotSliders } from './controls.js';
import { RoomHolder } from './room-holder.js';
import { pressureCaption, pressureKey, spotText } from './sentences.js';
import { pressureStyles } from './styles.js';
import { Swing } from './swing.js';
import { renderPlaceTables } from './tables.js';

/** The pressure map without its room: everything but who draws that. */
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
  #roomLayout: RoomLayout | null = null;
  readonly #holder = new RoomHolder({
    load: () => this.loadRoom(),
    request: () => this.stageController.request(),
    gone: () => {
      this.roomless = true;
    },
  });
  readonly #swing = new Swing({
    moving: () => this.#moving,
    visible: () => this.stageController.visible,
    request: () => this.stageController.request(),
    draw: () => this.#drawColours(),
    inFrame: (action) => this.#frame(action),
  });
  readonly #gestures = new OrbitGestures({
    orbit: () => this.orbit,
    turned: (orbit) => this.#turn(orbit),
    size: () => this.stageController.boxSize,
  });
  #frame: (action: () => void) => void = () => undefined;

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
    this.#holder.connected();
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

  protected override disconnected(): void {
    super.disconnected();
    this.#holder.disconnected();
  }

  get #inRoom(): boolean {
    return String(this.view ?? '').trim() === 'room' && !this.roomless;
  }

  /** What draws the room, where it is asked for and can be drawn now; plan and section stand in until then. */
  #roomNow(): RoomView | null {
    return this.#inRoom ? this.#holder.now() : null;
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
    const theme = this.look;
    const { size } = this.stageController;
    fitCanvas(lines.canvas, size);
    lines.setTransform(size.pixelRatio, 0, 0, size.pixelRatio, 0, 0);
    lines.clearRect(0, 0, size.cssWidth, size.cssHeight);
    const pen = canvasPen(lines, theme.fontFamily);
    const room = this.#roomNow();
    this.#roomLayout = room && drawRoomLines(pen, this.#roomPicture(), this.orbit, theme, size);
    this.#layout = room ? null : drawPressureLines(pen, this.#picture(), theme, size);
    this.#drawColours();
    this.#swing.run();
  }

  #drawColours(): void {
    const context = this.renderRoot.querySelector<HTMLCanvasElement>('canvas.colours')?.getContext('2d');
    if (!context || !this.drawable) return;
    const theme = this.look;
    const { size } = this.stageController;
    const { room } = this.#holder;
    if (this.#roomLayout && room) {
      const quality = this.#moving ? 'quick' : 'fine';
      if (room.draw(context, this.#roomPicture(), this.orbit, theme, size, this.#factor, quality)) return;
      // Lost meanwhile: plan and section take its place.
      this.stageController.request();
      return;
    }
    this.#layers ??= [new SignedLayer(), new SignedLayer()];
    drawPressureColours(context, this.#picture(), this.#layers, this.#factor, theme, size);
  }

  get #factor(): number {
    const { factor } = this.#swing;
    // Motion is drawn without its direction.
    return this.quantity === 'motion' ? Math.abs(factor) : factor;
  }

  get #moving(): boolean {
    return this.swinging && !this.still && !this.themeController.printing;
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('swinging')) this.#swing.begin();
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
    const { snapshot, speaker, quantity } = this;
    return snapshot?.pressure && snapshot.room ? spotText(snapshot, this.#spot, quantity, speaker) : '';
  }

  protected override sliders(): readonly CursorSlider[] {
    return spotSliders(this.snapshot!, this.#spot, (change) => this.#moveSpot(change));
  }

  protected override keyItems(): readonly LegendItem[] {
    return pressureKey(this.quantity, this.speaker);
  }

  protected override captionText(): string {
    const { quantity } = this;
    return pressureCaption(this.snapshot!, { quantity, inRoom: this.#inRoom }, this.speaker);
  }

  protected override renderTools(): TemplateResult {
    const { speaker, quantity } = this;
    const snapshot = this.snapshot!;
    return renderControls({
      ...{ snapshot, speaker, quantity, inRoom: this.#inRoom },
      room: this.hasRoom ? !this.roomless : null,
      swinging: this.still ? null : this.swinging,
      chooseMode: (index) => this.selectMode(snapshot.prediction!.modes[index].order),
      chooseQuantity: (one) => {
        this.quantity = one;
      },
      chooseView: (view) => {
        this.view = view;
      },
      toggleSwing: () => {
        this.swinging = !this.swinging;
      },
    });
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
