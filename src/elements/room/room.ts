/**
 * Long because form, plan and fit write the same room and the same places, and each follows the others at once;
 * the templates of its parts stand beside it.
 */
import { html } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { paintCanvas } from '../../draw/canvas.js';
import type { FigureSize } from '../../draw/figure.js';
import { drawPlan, planLayout } from '../../draw/plan.js';
import type { PlanLayout, PlanView } from '../../draw/plan.js';
import { placesOf } from '../../study/places.js';
import type { ShownPlace } from '../../study/places.js';
import { cornersOf, readLength, readRoomForm, roomVolume, withinRoom } from '../../study/room-form.js';
import type { FormFailure, LengthUnit, RoomForm } from '../../study/room-form.js';
import type { StudyPlace, StudySnapshot } from '../../study/types.js';
import { emit } from '../events.js';
import { drawingPng, drawingSvg, renderSave } from '../shared/drawing.js';
import type { Drawing } from '../shared/drawing.js';
import { figureStyles } from '../shared/figure-styles.js';
import { figureWords } from '../../sheet/figure-words.js';
import { placeName } from '../../sheet/place-name.js';
import type { RoomFit } from '../../sheet/room-fit.js';
import { roomName } from '../../sheet/room-name.js';
import { failed } from '../shared/settings.js';
import { StageController } from '../shared/stage.js';
import { tokens } from '../shared/styles.js';
import { ViewElement } from '../shared/view-element.js';
import { renderFitting, type Fitting } from './fitting.js';
import { cornersOfForm, middleOfLongest, newPlace, originOf, wallsFor } from './edit.js';
import type { Point } from './edit.js';
import { formOf, lengthText, renderForm } from './form.js';
import { renderHandles } from './handles.js';
import type { Handle } from './handles.js';
import { renderPlaces } from './places.js';
import { roomStyles } from './styles.js';

type Room = NonNullable<StudySnapshot['room']>;

/**
 * The room: its sides or its floor plan, height, air and walls, and its seats and sources, each typed, dragged or moved
 * with the arrow keys; in metres or in feet and inches. What cannot be is refused with its reason where it was typed,
 * and the study keeps the last room that can. With a recording beside it, the sides of a box can be fitted to its ridges,
 * within what a tape and walls may be off, to be taken or left.
 *
 * @summary The room with its seats and sources, to be typed and drawn.
 * @tag ringdown-room
 *
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user changed the room, a seat or a source.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - All of it.
 * @csspart form - Shape, sides, air and walls.
 * @csspart shape - Box or floor plan.
 * @csspart unit - Metres, or feet and inches.
 * @csspart length - Field of the length; likewise `width`, `height`, `temperature`, `humidity`.
 * @csspart corners - Corners of the plan as fields.
 * @csspart walls - What the walls are made of.
 * @csspart own-wall - A coefficient of one's own.
 * @csspart constructions - The table of what each construction is taken to absorb.
 * @csspart picture - What holds the plan.
 * @csspart handle - A seat, a source or a corner that can be dragged.
 * @csspart save - Width and buttons to save the plan.
 * @csspart caption - Its size, volume and speed of sound.
 * @csspart message - Why there is no plan yet.
 * @csspart places - Seats and sources as fields.
 * @csspart add-seat - The button that adds a seat; likewise `add-source`.
 * @csspart add-corner - Adds a corner to the plan.
 * @csspart fitting - The sides fitted to the ridges: what the fit says, once it is asked for.
 * @csspart fit - The button that fits them.
 * @csspart fit-take - The button that takes the fitted sides.
 * @csspart fit-leave - The button that leaves the room as typed.
 *
 * @cssprop [--ringdown-height=clamp(16rem, 44cqi, 28rem)] - Height of the plan.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and walls; the page's where not given.
 * @cssprop --ringdown-accent - What has the focus.
 * @cssprop --ringdown-alert - What was refused.
 *
 * @cssstate error - Something was refused.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownRoom extends ViewElement {
  static override styles = [tokens, figureStyles, roomStyles];

  readonly #stage = new StageController(this, () => this.#draw());
  @state() private form: RoomForm | null = null;
  @state() private wrong: readonly FormFailure[] = [];
  /** What was refused of a place, by its index. */
  @state() private wrongPlaces: ReadonlyMap<number, string> = new Map();
  /** What is dragged, and where it is held. */
  @state() private held: { readonly handle: string; readonly at: Point } | null = null;
  @state() private saveFailed = false;
  @state() private fitting: Fitting = { at: 'none' };
  /** What the fit was made of; another room or another diagnosis makes it void. */
  #fitted: { readonly room: Room | null; readonly diagnosis: unknown } | null = null;
  /** Ends a fit that nobody waits for any more. */
  #fit: AbortController | null = null;
  /** The room that the form stands for. */
  #shown: Room | null | undefined;
  #layout: PlanLayout | null = null;

  /**
   * Without a study around it, it holds one: a form is there to be filled.
   * @internal
   */
  get ownsRoom(): boolean {
    return this.closest('ringdown-study') === null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#leaveFit();
  }

  protected override snapshotChanged(): void {
    const { room, diagnosis } = this.snapshot ?? { room: null, diagnosis: null };
    if (this.#fitted && (room !== this.#fitted.room || diagnosis !== this.#fitted.diagnosis))
      this.#leaveFit();
    this.#stage.request();
  }

  protected override themeChanged(): void {
    if (this.themeController.printing) this.#stage.drawNow();
    else this.#stage.request();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const room = this.snapshot?.room ?? null;
    if (room === this.#shown && this.form) return;
    this.#shown = room;
    this.form = formOf(room, this.form?.unit ?? 'm', this.speaker);
    this.wrong = [];
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    this.setState('error', this.wrong.length > 0 || this.found.failures.length > 0);
    this.#stage.request();
  }

  get #places(): ShownPlace[] {
    return this.snapshot ? placesOf(this.snapshot) : [];
  }

  /** Corners as they are drawn: those of the form, with the one that is dragged; else those of the last good room. */
  get #corners(): { readonly corners: readonly Point[]; readonly sound: boolean } | null {
    const { form, held } = this;
    const room = this.snapshot?.room ?? null;
    const drawn = form?.shape === 'plan' ? cornersOfForm(form) : null;
    if (!drawn || drawn.length < 3) return room && { corners: cornersOf(room), sound: true };
    const corners = drawn.map((corner, k) => (held?.handle === `corner-${k}` ? held.at : corner));
    return { corners, sound: this.wrong.length === 0 };
  }

  #view(): PlanView | null {
    const shape = this.#corners;
    if (!shape || !this.form) return null;
    const places = this.#places;
    const { unit } = this.form;
    return {
      ...shape,
      lengthText: (metres) => this.speaker.view(`length-${unit}`, { length: this.#text(metres) }),
      // A metre, or a yard.
      rulerMetres: unit === 'm' ? 1 : 0.9144,
      ...(unit === 'ft' && { margin: { left: 84, right: 84 } }),
      places: places.map((place, k) => {
        const at = this.held?.handle === `place-${k}` ? this.held.at : place.at;
        return {
          kind: place.kind,
          ...{ x: at.x, y: at.y },
          label: placeName(place, places, this.speaker),
          selected: this.held?.handle === `place-${k}`,
          sound: place.inside,
        };
      }),
    };
  }

  /** Whole centimetres on the plan, or tenths of an inch. */
  #text(metres: number): string {
    const { unit } = this.form!;
    return lengthText(unit === 'm' ? Math.round(metres * 100) / 100 : metres, unit, this.speaker);
  }

  #draw(): void {
    const context = this.renderRoot.querySelector('canvas')?.getContext('2d');
    const view = this.#view();
    if (!context || !view) return;
    const theme = this.look;
    const { size, scale } = this.#stage;
    this.#layout = paintCanvas(context, theme, size, (pen) => drawPlan(pen, view, theme, size));
    // Handles stand where the plan was just drawn.
    for (const node of this.renderRoot.querySelectorAll<HTMLElement>('.handle')) {
      const { x, y } = this.#layout?.toPixel(Number(node.dataset.x), Number(node.dataset.y)) ?? {
        x: 0,
        y: 0,
      };
      node.style.translate = `${x * scale}px ${y * scale}px`;
    }
  }

  /** The plan of the last room that can be, for a file; of its own size unless told otherwise. */
  #drawing(size: Partial<FigureSize>): Drawing | null {
    const { snapshot, speaker } = this;
    const view = this.#view();
    if (!snapshot?.room || !view?.sound) return null;
    const { cssWidth, cssHeight } = this.#stage.size;
    const saved = { cssWidth: cssWidth || 900, cssHeight: cssHeight || 380, ...size };
    const { theme } = this.themeController;
    // A plan is of the room alone: no file had a part in it.
    const words = figureWords({ ...snapshot, recordings: [] }, speaker, 'plan', {
      label: roomName(snapshot.room, speaker),
      legend: [
        { sign: 'ring', text: speaker.view('kind-seat') },
        { sign: 'square', text: speaker.view('kind-source') },
      ],
      caption: this.#caption(snapshot.room),
    });
    return {
      ...{ name: 'plan', words, theme, size: saved },
      paint: (pen) => void drawPlan(pen, view, theme, saved),
    };
  }

  /** The plan as a vector document; null while there is no room. */
  toSvg(size: Partial<FigureSize> = {}): string | null {
    const drawing = this.#drawing(size);
    return drawing && drawingSvg(drawing);
  }

  /** The same as a PNG file so many pixels wide. Rejects with a RangeError where the browser makes none that large. */
  async toPng(widthPixels = 2400, size: Partial<FigureSize> = {}): Promise<Blob | null> {
    const drawing = this.#drawing(size);
    return drawing && drawingPng(drawing, widthPixels);
  }

  #renderSave(room: Room): TemplateResult {
    const { speaker, saveFailed } = this;
    return renderSave({
      ...{ speaker, scope: () => this.scope, label: roomName(room, speaker), hasFailed: saveFailed },
      drawing: () => this.#drawing({}),
      failed: (hasFailed) => {
        this.saveFailed = hasFailed;
      },
    });
  }

  #change(change: Partial<RoomForm>): void {
    const before = this.form!;
    let form = { ...before, ...change };
    // A wall more or less: the others stay of what they are.
    const count = (form.shape === 'box' ? 4 : form.corners.length) + 2;
    if (form.walls.length !== count) form = { ...form, walls: wallsFor(form.walls, count) };
    this.form = form;
    const { room, failures } = readRoomForm(form);
    this.wrong = failures;
    if (!room || !this.study) return;
    this.#shiftPlaces(form);
    this.study.setRoom(room);
    this.#shown = this.study.snapshot.room;
    this.form = formOf(this.#shown, form.unit, this.speaker);
    emit(this, 'ringdown-study-change', { what: 'room', snapshot: this.study.snapshot });
  }

  #shiftPlaces(form: RoomForm): void {
    const corners = form.shape === 'plan' ? cornersOfForm(form) : null;
    if (!corners || !this.study) return;
    const { x, y } = originOf(corners);
    if (Math.abs(x) < 1e-9 && Math.abs(y) < 1e-9) return;
    for (const place of this.#places)
      this.study.movePlace(place, { x: place.at.x - x, y: place.at.y - y, z: place.at.z });
  }

  #setUnit(unit: LengthUnit): void {
    const room = this.wrong.length === 0 ? (this.snapshot?.room ?? null) : null;
    this.form = room ? formOf(room, unit, this.speaker) : { ...this.form!, unit };
    if (!room) this.wrong = readRoomForm(this.form).failures;
  }

  #setShape(shape: RoomForm['shape']): void {
    const room = this.snapshot?.room ?? null;
    const corners = room
      ? cornersOf(room).map(({ x, y }) => ({ x: this.#text(x), y: this.#text(y) }))
      : [
          { x: '0', y: '0' },
          { x: this.#text(5), y: '0' },
          { x: this.#text(5), y: this.#text(4) },
          { x: '0', y: this.#text(4) },
        ];
    this.#change({ shape, ...(shape === 'plan' && { corners }) });
  }

  #addCorner(): void {
    const shape = this.#corners;
    if (!shape) return;
    const { wall, at } = middleOfLongest(shape.corners);
    const corners = [...this.form!.corners];
    corners.splice(wall + 1, 0, { x: this.#text(at.x), y: this.#text(at.y) });
    const { walls } = this.form!;
    this.#change({ corners, walls: [...walls.slice(0, wall + 1), ...walls.slice(wall)] });
  }

  #place(index: number, at: Point): void {
    const { study, snapshot } = this;
    const place = this.#places[index];
    if (!study || !snapshot?.room) return;
    const to = withinRoom({ ...place.at, ...at }, snapshot.room);
    if (!to) return;
    study.movePlace(place, to);
    this.#placesChanged(index);
  }

  #placesChanged(index: number | null): void {
    this.wrongPlaces = new Map([...this.wrongPlaces].filter(([k]) => k !== index && index !== null));
    emit(this, 'ringdown-study-change', { what: 'places', snapshot: this.study!.snapshot });
  }

  #typePlace(index: number, axis: 'x' | 'y' | 'z', text: string): void {
    const { study } = this;
    const place = this.#places[index];
    if (!study) return;
    try {
      const to = { ...place.at, [axis]: readLength(text, this.form!.unit) };
      study.movePlace(place, to);
      this.#placesChanged(index);
    } catch (error) {
      this.wrongPlaces = new Map([...this.wrongPlaces, [index, this.describe(failed(error))]]);
    }
  }

  #addPlace(kind: StudyPlace['kind']): void {
    const { study, snapshot } = this;
    if (!study || !snapshot) return;
    const place = newPlace(kind, snapshot.room, this.#places, this.speaker);
    study.setPlaces([...snapshot.places, place]);
    this.#placesChanged(null);
  }

  #changePlaces(change: (place: StudyPlace) => StudyPlace | null, which: ShownPlace): void {
    const { study, snapshot } = this;
    if (!study || !snapshot) return;
    const same = ({ kind, name }: StudyPlace): boolean => kind === which.kind && name === which.name;
    study.setPlaces(snapshot.places.flatMap((place) => (same(place) ? (change(place) ?? []) : [place])));
    this.#placesChanged(null);
  }

  #leaveFit(): void {
    this.#fit?.abort();
    this.#fit = null;
    this.#fitted = null;
    if (this.fitting.at !== 'none') this.fitting = { at: 'none' };
  }

  async #fitSides(): Promise<void> {
    const { study, snapshot } = this;
    if (!study || !snapshot) return;
    this.#leaveFit();
    const own = new AbortController();
    this.#fit = own;
    this.#fitted = { room: snapshot.room, diagnosis: snapshot.diagnosis };
    this.fitting = { at: 'working' };
    try {
      const fit = await study.fitRoom(own.signal);
      if (this.#fit === own) this.fitting = { at: 'done', fit };
    } catch (error) {
      if (this.#fit === own) this.fitting = { at: 'refused', reason: this.describe(failed(error)) };
    }
  }

  /** Sides that the ridges say nothing on stay as typed. */
  #takeFit({ sides }: RoomFit): void {
    const [length, width, height] = sides.map(({ metres, sdMetres, typedMetres }) =>
      this.#text(sdMetres === null ? typedMetres : metres),
    );
    this.#leaveFit();
    this.#change({ length, width, height });
  }

  #handles(): Handle[] {
    const { speaker, form } = this;
    const places = this.#places;
    const shape = this.#corners;
    const seats = places.map((place, k): Handle => ({
      id: `place-${k}`,
      at: place.at,
      label: speaker.view('handle-place', {
        name: placeName(place, places, speaker),
        ...{ x: this.#text(place.at.x), y: this.#text(place.at.y) },
      }),
      moved: (at) => this.#place(k, at),
    }));
    const corners =
      form?.shape === 'plan'
        ? (shape?.corners ?? []).map((at, k): Handle => ({
            ...{ id: `corner-${k}`, at },
            label: speaker.view('handle-corner', { number: k + 1, x: this.#text(at.x), y: this.#text(at.y) }),
            moved: (to) =>
              this.#change({
                corners: form.corners.map((corner, n) =>
                  n === k ? { x: this.#text(to.x), y: this.#text(to.y) } : corner,
                ),
              }),
          }))
        : [];
    return [...corners, ...seats];
  }

  #caption(room: Room): string {
    const { speaker } = this;
    return speaker.view('room-caption', {
      room: roomName(room, speaker),
      volume: roomVolume(room),
      speed: room.speedOfSoundMetresPerSecond,
    });
  }

  protected override render(): TemplateResult {
    const { speaker, snapshot, form } = this;
    if (!form) return html``;
    const view = this.#view();
    const parts = {
      ...{ form, failures: this.wrong, speaker },
      describe: ({ failure }: FormFailure) => this.describe({ ...failure, label: null }),
      change: (change: Partial<RoomForm>) => this.#change(change),
      setUnit: (unit: LengthUnit) => this.#setUnit(unit),
      setShape: (shape: RoomForm['shape']) => this.#setShape(shape),
      addCorner: () => this.#addCorner(),
    };
    return html`<div class="base" part="base">
      ${renderForm(parts)}
      <figure>
        <div class="picture" part="picture" data-stage>
          ${
            view
              ? html`<canvas
                    role="img"
                    aria-label=${speaker.view('room-name', {
                      room: snapshot?.room ? roomName(snapshot.room, speaker) : speaker.view('this-room'),
                    })}
                    aria-describedby="help"
                  ></canvas>
                  ${renderHandles(this.#handles(), {
                    layout: () => this.#layout ?? planLayout(view.corners, this.#stage.size),
                    pointOf: (event, box) => this.#stage.pointOf(event, box),
                    hold: (handle, at) => {
                      this.held = handle === null ? null : { handle, at: at! };
                    },
                  })}`
              : html`<div class="veil" part="message">
                  <p class="sentence">${speaker.view('room-empty')}</p>
                </div>`
          }
        </div>
        ${snapshot?.room ? html`<figcaption part="caption">${this.#caption(snapshot.room)}</figcaption>` : null}
        ${
          snapshot?.room && !snapshot.room.plan && snapshot.diagnosis
            ? renderFitting({
                ...{ fitting: this.fitting, speaker },
                start: () => void this.#fitSides(),
                take: (fit) => this.#takeFit(fit),
                leave: () => this.#leaveFit(),
              })
            : null
        }
        ${snapshot?.room && view?.sound ? this.#renderSave(snapshot.room) : null}
        <p class="hint screen-only" id="help">${speaker.view('room-help')}</p>
        ${this.found.failures.map((failure) => html`<p class="wrong">${this.describe(failure)}</p>`)}
        ${renderPlaces({
          ...{ places: this.#places, unit: form.unit, speaker, wrong: this.wrongPlaces },
          add: (kind) => this.#addPlace(kind),
          remove: (which) => this.#changePlaces(() => null, which),
          rename: (which, name) => this.#changePlaces((place) => ({ ...place, name }), which),
          type: (index, axis, text) => this.#typePlace(index, axis, text),
        })}
      </figure>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-room': RingdownRoom;
  }
}
