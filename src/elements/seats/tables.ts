import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { seatRidges, spreadsOf } from '../../study/system-readings.js';
import type { System, SystemSnapshot } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';
import { seatNames } from '../../sheet/point-name.js';
import {
  frequenciesShown,
  levelsOfSeat,
  pointGrid,
  spreadShown,
  stageName,
  stagesShown,
} from '../../sheet/seats-chart.js';
import type { Shown } from '../../sheet/seats-chart.js';

/** What the spread comes to, for every stage beside each other. */
export function renderFigures(system: SystemSnapshot, speaker: Speaker): TemplateResult {
  const { n } = speaker;
  const heads = ['stage-column', 'variance-column', 'output-column', 'within-3', 'within-5'];
  return html`<div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('spread-figures')}>
    <table class="plain">
      <caption>
        ${speaker.view('spread-figures')}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${stagesShown(system).map((shown) => {
          const spread = spreadShown(system, shown)!;
          return html`<tr>
            <th scope="row">${stageName(system, shown, speaker)}</th>
            <td>${speaker.view('variance', { variance: spread.meanSpatialVariance })}</td>
            <td>${n.decibels(spread.meanOutputLevelDb, 1)}</td>
            <td>${n.percent(spread.within3Db, 0)}</td>
            <td>${n.percent(spread.within5Db, 0)}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}

/** Each seat: its weight, its level and how far it lies from the others. */
export function renderSeats(system: System, speaker: Speaker, changed: () => void): TemplateResult {
  const { snapshot } = system;
  const { n } = speaker;
  const { arrangement, grid, design } = snapshot;
  const { before, designed } = spreadsOf(snapshot)!;
  const names = seatNames(snapshot, speaker);
  const both = stagesShown(snapshot).includes('designed');
  const heads = ['seat-column', 'weight-column', 'level-of-seat', 'off-others'];
  return html`<div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('seats-heading')}>
    <table class="plain" part="weights">
      <caption>
        ${speaker.view('seats-heading')}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
          ${both ? html`<th scope="col">${speaker.view('off-others-designed')}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${grid.seats.map((seat, k) => {
          const { key } = arrangement.seats[seat];
          return html`<tr>
            <th scope="row">${names[k]}</th>
            <td>
              <input
                type="number"
                min="0"
                max="10"
                step="0.5"
                aria-label=${speaker.view('weight-of', { name: names[k] })}
                .value=${String(design.weights[key] ?? 1)}
                @change=${(event: Event) => {
                  const field = event.target as HTMLInputElement;
                  const typed = field.valueAsNumber;
                  const weight = typed >= 0 ? Math.min(1000, typed) : (design.weights[key] ?? 1);
                  field.value = String(weight);
                  system.setWeight(key, weight);
                  changed();
                }}
              />
            </td>
            <td>${n.decibels(before.seatLevelDb[k], 1)}</td>
            <td>${n.decibels(before.seatDeviationDb[k], 1)}</td>
            ${both ? html`<td>${n.decibels(designed.seatDeviationDb[k], 1)}</td>` : nothing}
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}

/** Ridges by seats: which hang everywhere, and which at some. */
export function renderRidges(snapshot: SystemSnapshot, speaker: Speaker): TemplateResult | typeof nothing {
  const { n } = speaker;
  const { before, progress } = snapshot;
  if (!before) return progress ? html`<p class="hint">${speaker.stage(progress.stage)}</p>` : nothing;
  const rows = seatRidges(before.diagnosis);
  const names = seatNames(snapshot, speaker);
  if (rows.length === 0) return html`<p>${speaker.view('no-shared-ridges')}</p>`;
  return html`<div class="scroll tall" tabindex="0" role="group" aria-label=${speaker.view('ridges-by-seat')}>
    <table class="plain" part="ridges">
      <caption>
        ${speaker.view('ridges-by-seat')}
      </caption>
      <thead>
        <tr>
          <th scope="col">${speaker.label('frequency')}</th>
          <th scope="col">${speaker.label('decayTime')}</th>
          <th scope="col">${speaker.view('where-column')}</th>
          ${names.map((name) => html`<th scope="col">${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ({ ridge, hangSeconds, heard, where }) =>
            html`<tr>
              <th scope="row">${n.hertz(ridge.frequencyHz)}</th>
              <td>${n.plusMinus(ridge.decayTimeSeconds, ridge.decayTimeSdSeconds, 's')}</td>
              <td>${speaker.view(`where-${where}`)}</td>
              ${hangSeconds.map(
                (seconds, seat) =>
                  html`<td class=${heard[seat] ? '' : 'doubtful'}>
                    ${heard[seat] ? (seconds === null ? '–' : n.seconds(seconds)) : speaker.view('not-heard')}
                  </td>`,
              )}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** Which points were measured, which are missing, and which more than once. */
export function renderGrid(snapshot: SystemSnapshot, speaker: Speaker): TemplateResult {
  const { seats, sources } = pointGrid(snapshot, speaker);
  return html`<div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('points-heading')}>
    <table class="plain" part="grid">
      <caption>
        ${speaker.view('points-heading')}
      </caption>
      <thead>
        <tr>
          <td></td>
          ${seats.map((name) => html`<th scope="col">${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${sources.map(
          ({ name, counts }) =>
            html`<tr>
              <th scope="row">${name}</th>
              ${seats.map((_, seat) => {
                const count = counts[seat] ?? 0;
                return html`<td class=${count === 0 ? 'missing' : ''}>
                  ${speaker.view(count === 0 ? 'point-missing' : count === 1 ? 'point-there' : 'point-repeated', { count })}
                </td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** Sixth-octaves: fine enough to read, short enough to go through. */
const rowsPerOctave = 6;

/** The picture as a table. */
export function renderLevels(system: SystemSnapshot, shown: Shown, speaker: Speaker): TemplateResult {
  const { n } = speaker;
  const spread = spreadShown(system, shown)!;
  const frequencies = frequenciesShown(system, shown);
  const names = seatNames(system, speaker);
  const seats = spread.seatLevelDb.map(
    (_, seat) => names[seat] ?? speaker.view('seat-number', { number: seat + 1 }),
  );
  const [first, last] = [frequencies[0], frequencies[frequencies.length - 1]];
  const count = Math.floor(Math.log2(last / first) * rowsPerOctave);
  const rows = Array.from({ length: count + 1 }, (_, k) => {
    const wanted = first * 2 ** (k / rowsPerOctave);
    let at = 0;
    frequencies.forEach((f, i) => {
      if (Math.abs(Math.log(f / wanted)) < Math.abs(Math.log(frequencies[at] / wanted))) at = i;
    });
    return at;
  });
  return html`<table>
    <caption class="unseen">
      ${speaker.view('seats-table')}
    </caption>
    <thead>
      <tr>
        <th scope="col">${speaker.label('frequency')}</th>
        <th scope="col">${speaker.view('mean')}</th>
        <th scope="col">${speaker.view('deviation-column')}</th>
        ${seats.map((name) => html`<th scope="col">${name}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (at) =>
          html`<tr>
            <th scope="row">${n.hertz(frequencies[at])}</th>
            <td>${n.decibels(spread.meanDb[at], 1)}</td>
            <td>${n.decibels(spread.deviationDb[at], 1)}</td>
            ${seats.map((_, seat) => html`<td>${n.decibels(levelsOfSeat(spread, seat)[at], 1)}</td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}
