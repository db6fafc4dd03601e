import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { orderName } from '../../sheet/mode-name.js';
import { sameOrder } from '../../study/mode-readings.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import type { Quantity, Spot } from './chart.js';

const quantities = ['pressure', 'motion'] as const;
/** A step of the cursor, m. */
const stepMetres = 0.05;

export interface ControlParts {
  readonly snapshot: StudySnapshot;
  readonly speaker: Speaker;
  readonly quantity: Quantity;
  readonly inRoom: boolean;
  /** Null in a build that draws no room; else whether it can be drawn here. */
  readonly room: boolean | null;
  /** Null where nothing may move. */
  readonly swinging: boolean | null;
  readonly chooseMode: (index: number) => void;
  readonly chooseQuantity: (quantity: Quantity) => void;
  readonly chooseView: (view: 'plan' | 'room') => void;
  readonly toggleSwing: () => void;
}

/** The bar over the picture: view, mode, what is shown of it, and whether it swings. */
export function renderControls(parts: ControlParts): TemplateResult {
  const { snapshot, speaker, quantity, swinging } = parts;
  const { room, modes } = snapshot.prediction ?? { room: snapshot.room!, modes: [] };
  const shown = snapshot.pressure!.mode;
  return html`<div class="tools screen-only">
    ${parts.room === null ? nothing : renderViews(parts, parts.room)}
    <label
      >${speaker.view('choose-mode')}
      <select
        part="mode"
        @change=${(event: Event) => parts.chooseMode((event.target as HTMLSelectElement).selectedIndex)}
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
        @change=${(event: Event) =>
          parts.chooseQuantity(quantities[(event.target as HTMLSelectElement).selectedIndex])}
      >
        ${quantities.map(
          (one) => html`<option ?selected=${one === quantity}>${speaker.view(`quantity-${one}`)}</option>`,
        )}
      </select></label
    >
    ${
      swinging === null
        ? nothing
        : html`<button
            type="button"
            part="swing"
            aria-pressed=${swinging}
            @click=${() => parts.toggleSwing()}
          >
            ${speaker.view('swing')}
          </button>`
    }
  </div>`;
}

function renderViews({ speaker, inRoom, chooseView }: ControlParts, available: boolean): TemplateResult {
  return html`<div class="views" part="views" role="group" aria-label=${speaker.view('view-group')}>
    ${(['plan', 'room'] as const).map(
      (one) =>
        html`<button
          type="button"
          aria-pressed=${(one === 'room') === inRoom}
          ?disabled=${one === 'room' && !available}
          @click=${() => chooseView(one)}
        >
          ${speaker.view(`pressure-view-${one}`)}
        </button>`,
    )}
  </div>`;
}

/** One slider per direction for the point that is looked at. */
export function spotSliders(
  { room }: StudySnapshot,
  spot: Spot,
  move: (change: Partial<Spot>) => void,
): CursorSlider[] {
  const { lengthMetres, widthMetres, heightMetres } = room!.size;
  const slider = (axis: 'x' | 'y' | 'z', to: number): CursorSlider => ({
    axis,
    positions: Float64Array.from({ length: Math.ceil(to / stepMetres - 1e-9) + 1 }, (_, k) =>
      Math.min(to, k * stepMetres),
    ),
    value: spot[axis],
    moved: (value) => move({ [axis]: value }),
  });
  return [slider('x', lengthMetres), slider('y', widthMetres), slider('z', heightMetres)];
}
