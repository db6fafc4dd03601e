import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import {
  constructions,
  cornersOf,
  isOwnWall,
  keptOf,
  wallNames,
  wallsOfRoom,
} from '../../study/room-form.js';
import type { FormFailure, LengthUnit, RoomForm } from '../../study/room-form.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';

type Room = NonNullable<StudySnapshot['room']>;

/** A length as it stands in a field, and can be read again. */
export function lengthText(metres: number, unit: LengthUnit, speaker: Speaker): string {
  const plain = (value: number, digits: number): string => {
    const written = speaker.n
      .number(value, digits)
      .replace(/([.,]\d*?)0+$/, '$1')
      .replace(/[.,]$/, '');
    // Figures of another script are shown elsewhere; a field must be readable to the machine too.
    return /^-?\d+([.,]\d+)?$/.test(written) ? written : String(Number(value.toFixed(digits)));
  };
  if (unit === 'm') return plain(metres, 3);
  const inches = Math.round((metres / 0.0254) * 10) / 10;
  const feet = Math.floor(inches / 12 + 1e-9);
  const rest = inches - 12 * feet;
  return speaker.view('feet-inches', { feet, inches: plain(rest, 1) });
}

/** The form of a room; that of none is empty. */
export function formOf(room: Room | null, unit: LengthUnit, speaker: Speaker): RoomForm {
  const text = (metres: number): string => lengthText(metres, unit, speaker);
  const air = (value: number | null): string => (value === null ? '' : speaker.n.significant(value, 4));
  if (!room) {
    const empty = { length: '', width: '', height: '', temperature: '20', humidity: '' };
    const walls = Array.from({ length: 6 }, () => '');
    return { ...empty, shape: 'box', unit, corners: [], walls, kept: keptOf(null) };
  }
  return {
    shape: room.plan ? 'plan' : 'box',
    unit,
    length: text(room.size.lengthMetres),
    width: text(room.size.widthMetres),
    height: text(room.size.heightMetres),
    corners: cornersOf(room).map(({ x, y }) => ({ x: text(x), y: text(y) })),
    temperature: air(room.temperatureCelsius),
    humidity: air(room.humidityPercent),
    walls: wallsOfRoom(room),
    kept: keptOf(room),
  };
}

export interface FormParts {
  readonly form: RoomForm;
  readonly failures: readonly FormFailure[];
  readonly speaker: Speaker;
  readonly describe: (failure: FormFailure) => string;
  readonly change: (change: Partial<RoomForm>) => void;
  readonly setUnit: (unit: LengthUnit) => void;
  readonly setShape: (shape: RoomForm['shape']) => void;
  readonly addCorner: () => void;
}

type TextField = 'length' | 'width' | 'height' | 'temperature' | 'humidity';

function field(parts: FormParts, name: TextField): TemplateResult {
  const { form, failures, speaker, describe } = parts;
  const failed = failures.find((one) => one.field === name);
  return html`<div class="field">
    <label
      ><span>${speaker.view(`room-${name}`)}</span>
      <input
        part=${name}
        inputmode=${form.unit === 'm' ? 'decimal' : 'text'}
        autocomplete="off"
        .value=${form[name]}
        aria-invalid=${failed ? 'true' : nothing}
        aria-describedby=${failed ? `wrong-${name}` : nothing}
        @change=${(event: Event) => parts.change({ [name]: (event.target as HTMLInputElement).value })}
      />
    </label>
    ${failed ? html`<p class="wrong" id=${`wrong-${name}`} role="alert">${describe(failed)}</p>` : nothing}
  </div>`;
}

const chosen = (event: Event): string => (event.target as HTMLSelectElement).value;

export function renderForm(parts: FormParts): TemplateResult {
  const { form, speaker } = parts;
  const { shape, unit } = form;
  return html`<form class="screen-only" part="form" @submit=${(event: Event) => event.preventDefault()}>
    <div class="row">
      <label
        ><span>${speaker.view('room-shape')}</span>
        <select part="shape" @change=${(event: Event) => parts.setShape(chosen(event) as RoomForm['shape'])}>
          ${(['box', 'plan'] as const).map(
            (one) =>
              html`<option value=${one} ?selected=${one === shape}>${speaker.view(`shape-${one}`)}</option>`,
          )}
        </select></label
      >
      <label
        ><span>${speaker.view('room-unit')}</span>
        <select part="unit" @change=${(event: Event) => parts.setUnit(chosen(event) as LengthUnit)}>
          ${(['m', 'ft'] as const).map(
            (one) =>
              html`<option value=${one} ?selected=${one === unit}>${speaker.view(`unit-${one}`)}</option>`,
          )}
        </select></label
      >
    </div>
    ${
      shape === 'box'
        ? html`<div class="row">
            ${field(parts, 'length')} ${field(parts, 'width')} ${field(parts, 'height')}
          </div>`
        : html`<div class="row">${field(parts, 'height')}</div>
            ${renderCorners(parts)}`
    }
    <div class="row">${field(parts, 'temperature')} ${field(parts, 'humidity')}</div>
    ${renderWalls(parts)}
  </form>`;
}

function renderCorners(parts: FormParts): TemplateResult {
  const { form, failures, speaker, describe, change } = parts;
  const failed = failures.find((one) => one.field === 'corners');
  const set = (index: number, axis: 'x' | 'y') => (event: Event) =>
    change({
      corners: form.corners.map((corner, k) =>
        k === index ? { ...corner, [axis]: (event.target as HTMLInputElement).value } : corner,
      ),
    });
  return html`<fieldset part="corners">
    <legend>${speaker.view('room-corners')}</legend>
    <ol>
      ${form.corners.map(
        (corner, index) =>
          html`<li>
            <span>
              ${(['x', 'y'] as const).map(
                (axis) =>
                  html`<input
                    aria-label=${speaker.view('corner-axis', { number: index + 1, axis })}
                    aria-invalid=${failed ? 'true' : nothing}
                    aria-describedby=${failed ? 'wrong-corners' : nothing}
                    autocomplete="off"
                    .value=${corner[axis]}
                    @change=${set(index, axis)}
                  />`,
              )}
              <button
                type="button"
                aria-label=${speaker.view('corner-remove', { number: index + 1 })}
                ?disabled=${form.corners.length <= 3}
                @click=${() => change({ corners: form.corners.filter((_, k) => k !== index) })}
              >
                ×
              </button>
            </span>
          </li>`,
      )}
    </ol>
    <div class="row">
      <button type="button" part="add-corner" @click=${() => parts.addCorner()}>
        ${speaker.view('add-corner')}
      </button>
    </div>
    ${failed ? html`<p class="wrong" id="wrong-corners" role="alert">${describe(failed)}</p>` : nothing}
  </fieldset>`;
}

/** What stands in the field of a coefficient of one's own before anything is typed. */
const firstOwn = '0.1';

/** A decimal comma is a decimal sign; an empty field is what stood there. */
const ownWall = (text: string, before: string): string => text.trim().replace(',', '.') || before;

/** One for all, or walls, floor and ceiling one by one. */
function renderWalls(parts: FormParts): TemplateResult {
  const { form, failures, speaker, describe, change } = parts;
  const { walls } = form;
  const failed = failures.find((one) => one.field === 'walls');
  const same = walls.every((name) => name === walls[0]);
  const select = (value: string, label: string, set: (name: string) => void): TemplateResult =>
    html`<label
      ><span>${label}</span>
      <select @change=${(event: Event) => set(chosen(event))}>
        <option value="" ?selected=${value === ''}>
          ${speaker.view(form.kept.absorption ? 'wall-given' : 'wall-unknown')}
        </option>
        ${wallNames.map(
          (name) =>
            html`<option value=${name} ?selected=${name === value}>
              ${speaker.term('constructions', name)}
            </option>`,
        )}
        <option value=${firstOwn} ?selected=${isOwnWall(value)}>${speaker.view('wall-own')}</option>
      </select>
      ${
        isOwnWall(value)
          ? html`<input
              part="own-wall"
              inputmode="decimal"
              autocomplete="off"
              aria-label=${speaker.view('wall-own-of', { wall: label })}
              .value=${Number.isNaN(Number(value)) ? value : speaker.n.number(Number(value), 2)}
              @change=${(event: Event) => set(ownWall((event.target as HTMLInputElement).value, value))}
            />`
          : nothing
      }</label
    >`;
  const count = walls.length;
  return html`<fieldset part="walls">
    <legend>${speaker.view('room-walls')}</legend>
    <div class="row">
      ${select(same ? walls[0] : '', speaker.view('walls-all'), (name) =>
        change({ walls: walls.map(() => name) }),
      )}
    </div>
    <details>
      <summary>${speaker.view(same ? 'walls-each' : 'walls-each-differ')}</summary>
      <div class="walls">
        ${walls.map((value, wall) =>
          select(value, wallLabel(wall, count, form.shape, speaker), (name) =>
            change({ walls: walls.map((one, k) => (k === wall ? name : one)) }),
          ),
        )}
      </div>
    </details>
    <p class="hint">${speaker.view('walls-hint')}</p>
    ${renderConstructions(speaker)}
    ${failed ? html`<p class="wrong" role="alert">${describe(failed)}</p>` : nothing}
  </fieldset>`;
}

/** What each construction is taken to absorb, how far that may be off, and where it is from. */
function renderConstructions(speaker: Speaker): TemplateResult {
  const { n } = speaker;
  return html`<details part="constructions">
    <summary>${speaker.view('constructions-table')}</summary>
    <div class="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">${speaker.view('construction-column')}</th>
            ${[125, 250, 500].map((hertz) => html`<th scope="col">${n.hertz(hertz, 0)}</th>`)}
            <th scope="col">${speaker.view('construction-spread', { frequencyHz: 125 })}</th>
          </tr>
        </thead>
        <tbody>
          ${constructions.map(
            ({ name, octaves, spread, source }) =>
              html`<tr>
                <th scope="row">
                  ${speaker.term('constructions', name)}
                  <small>${speaker.view(`construction-source-${source}`)}</small>
                </th>
                ${octaves.map((value) => html`<td>${n.number(value, 2)}</td>`)}
                <td>
                  ${speaker.view('construction-from-to', { from: n.number(spread[0], 2), to: n.number(spread[1], 2) })}
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p class="hint">${speaker.view('construction-sources')}</p>
  </details>`;
}

function wallLabel(wall: number, count: number, shape: RoomForm['shape'], speaker: Speaker): string {
  if (wall >= count - 2) return speaker.view(wall === count - 1 ? 'wall-ceiling' : 'wall-floor');
  return shape === 'box' ? speaker.view(`wall-${wall}`) : speaker.view('wall-number', { number: wall + 1 });
}
