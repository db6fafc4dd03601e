import { css } from 'lit';

export const roomStyles = css`
  .base {
    display: grid;
    grid-template-columns: minmax(15rem, 22rem) minmax(0, 1fr);
    gap: 1rem 2rem;
    align-items: start;
  }

  form {
    display: grid;
    gap: 0.8rem;
    font-size: 0.9em;
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.9rem;
  }

  .row > * {
    flex: 1 1 5.5em;
    min-inline-size: 0;
  }

  .row > button {
    flex: none;
  }

  label {
    display: grid;
    gap: 0.15rem;
  }

  label > span,
  legend {
    color: var(--_faint);
    font-size: 0.92em;
  }

  input,
  select {
    inline-size: 100%;
    min-inline-size: 0;
    padding: 0.25em 0.4em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    background: transparent;
  }

  select {
    background: Canvas;
  }

  input[aria-invalid='true'] {
    border-color: var(--_alert);
    box-shadow: inset 0 -2px 0 var(--_alert);
  }

  .wrong {
    margin: 0.2rem 0 0;
    color: var(--_alert);
    font-size: 0.92em;
    text-wrap: pretty;
  }

  .hint {
    margin: 0;
    color: var(--_faint);
    font-size: 0.85em;
    text-wrap: pretty;
  }

  fieldset {
    display: grid;
    gap: 0.4rem;
    margin: 0;
    padding: 0;
    border: 0;
    min-inline-size: 0;
  }

  legend {
    padding: 0;
  }

  details summary {
    inline-size: max-content;
    cursor: pointer;
    color: var(--_faint);
  }

  .save {
    color: inherit;
  }

  .scroll {
    overflow-x: auto;
  }

  [part='walls'] {
    grid-template-columns: minmax(0, 1fr);
  }

  [part='walls'] label,
  [part='walls'] select {
    min-inline-size: 0;
    max-inline-size: 100%;
  }

  [part='constructions'] table {
    margin-block-start: 0.4rem;
    border-collapse: collapse;
    font-size: 0.85em;
  }

  [part='constructions'] :is(th, td) {
    padding: 0.15rem 0.7rem 0.15rem 0;
    font-weight: 400;
    text-align: start;
    vertical-align: baseline;
  }

  [part='constructions'] td {
    white-space: nowrap;
  }

  [part='constructions'] small {
    display: block;
    color: var(--_faint);
  }

  [part='constructions'] thead th {
    color: var(--_faint);
  }

  [part='constructions'] tbody tr {
    border-block-start: 1px solid var(--_line);
  }

  .walls {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(9.5em, 1fr));
    gap: 0.4rem 0.9rem;
    padding-block-start: 0.4rem;
  }

  ol {
    display: grid;
    gap: 0.25rem;
    margin: 0;
    padding-inline-start: 1.6em;
  }

  ol li > span {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) max-content;
    gap: 0.4rem;
  }

  .picture {
    block-size: var(--ringdown-height, clamp(16rem, 44cqi, 28rem));
  }

  .handle {
    position: absolute;
    inset-block-start: 0;
    left: 0;
    inline-size: 28px;
    block-size: 28px;
    margin: -14px 0 0 -14px;
    padding: 0;
    border: 0;
    border-radius: 50%;
    background: transparent;
    cursor: grab;
    touch-action: none;
  }

  .handle:active {
    cursor: grabbing;
  }

  .handle:hover {
    background: color-mix(in oklab, var(--_accent) 16%, transparent);
  }

  .handle.corner::after {
    content: '';
    position: absolute;
    inset: 9px;
    border: 2px solid var(--_text);
    background: Canvas;
    transform: rotate(45deg);
  }

  .places {
    display: grid;
    gap: 0.5rem;
    font-size: 0.9em;
  }

  .fitting {
    display: grid;
    gap: 0.5rem;
    justify-items: start;
    font-size: 0.9em;
  }

  .fitting:empty {
    display: none;
  }

  .fitting h3,
  .fitting p {
    margin: 0;
    text-wrap: pretty;
  }

  .fitting h3 {
    font-size: 1em;
  }

  .fitting p {
    max-inline-size: 46em;
  }

  .fitting .scroll {
    max-inline-size: 100%;
    overflow-x: auto;
  }

  .fitting table {
    inline-size: auto;
  }

  .fitting th,
  .fitting td {
    text-align: start;
    font-variant-numeric: tabular-nums;
  }

  .places .scroll {
    overflow-x: auto;
  }

  table {
    border-collapse: collapse;
    inline-size: 100%;
  }

  th,
  td {
    padding: 0.2em 0;
    padding-inline-end: 0.6em;
    font-weight: 400;
    vertical-align: baseline;
  }

  thead th {
    color: var(--_faint);
    font-size: 0.92em;
  }

  td input {
    inline-size: 100%;
    min-inline-size: 4.2em;
  }

  td input.length {
    max-inline-size: 8em;
  }

  /* Each place in two lines: what it is, and where, with its button. */
  @container (max-width: 30rem) {
    .places table,
    .places :is(tbody, .refusal, .refusal td) {
      display: block;
    }

    .places thead {
      display: none;
    }

    .places tbody tr:not(.refusal) {
      display: grid;
      grid-template-columns: repeat(3, minmax(0, 1fr)) 2.2em;
      align-items: end;
      gap: 0.3em 0.6em;
      padding-block: 0.5em;
      border-block-start: 1px solid var(--_line);
    }

    /* Feet and inches are too long for three in a line. */
    .places.feet tbody tr:not(.refusal) {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }

    .places tr > :is(th, td) {
      padding: 0;
    }

    .places th {
      align-self: center;
      text-align: start;
    }

    .places th + td {
      grid-column: 2 / -1;
      overflow-wrap: anywhere;
    }

    .places td[data-axis]::before {
      content: attr(data-axis);
      display: block;
      color: var(--_faint);
      font-size: 0.92em;
    }

    .places td input {
      min-inline-size: 0;
    }

    .places td button {
      inline-size: 2.2em;
    }
  }

  @container (max-width: 46rem) {
    .base {
      grid-template-columns: minmax(0, 1fr);
    }
  }

  @media print {
    .base {
      grid-template-columns: minmax(0, 1fr);
    }
    .handle {
      display: none;
    }
    input {
      border-color: transparent;
    }
  }
`;
