import { css } from 'lit';

export const recordingsStyles = css`
  :host {
    display: grid;
    gap: 1rem;
  }

  .picture {
    block-size: var(--ringdown-height, clamp(20rem, 38cqi, 28rem));
  }

  canvas {
    cursor: crosshair;
    touch-action: pan-y pinch-zoom;
  }

  .list {
    inline-size: 100%;
    border-collapse: collapse;
    font-size: 0.9em;
  }

  .list th,
  .list td {
    padding: 0.45em 0;
    padding-inline-end: 0.9em;
    vertical-align: middle;
    font-weight: 400;
    white-space: nowrap;
  }

  .list thead th {
    padding-block: 0 0.4em;
    font-size: 0.86em;
    color: var(--_faint);
    border-block-end: 1px solid var(--_text);
  }

  .list tbody tr {
    border-block-end: 1px solid var(--_line);
  }

  .list tbody th {
    white-space: normal;
    overflow-wrap: anywhere;
  }

  .list button {
    margin-inline-start: 0.4em;
    padding: 0.1em 0.45em;
    border-color: transparent;
    font-weight: 600;
    text-align: start;
  }

  .list thead .label {
    padding-inline-start: 0.9em;
  }

  .spark {
    display: block;
    inline-size: 7.5em;
    block-size: 1.6em;
    overflow: visible;
  }

  .spark polyline {
    fill: none;
    vector-effect: non-scaling-stroke;
    stroke-linejoin: round;
  }

  .spark .whole {
    stroke: var(--_line);
    stroke-width: 1.25;
  }

  .spark .usable {
    stroke: var(--_accent);
    stroke-width: 1.75;
  }

  .verdict span {
    display: inline-flex;
    align-items: baseline;
    gap: 0.5em;
  }

  .verdict span::before {
    content: '';
    inline-size: 0.55em;
    block-size: 0.55em;
    border: 1.5px solid currentColor;
    border-radius: 50%;
  }

  .verdict .fit::before {
    background: currentColor;
  }

  .verdict .care::before {
    background: linear-gradient(to right, currentColor 50%, transparent 50%);
  }

  .verdict .unfit {
    color: var(--_alert);
    font-weight: 600;
  }

  .verdict .unfit::before {
    border-radius: 0;
  }

  .notes {
    font-size: 0.9em;
    max-inline-size: 82ch;
  }

  .notes h3 {
    margin: 0 0 0.3em;
    font-size: 1em;
    font-weight: 600;
  }

  .notes p {
    margin: 0;
  }

  .notes ul {
    margin: 0;
    padding-inline-start: 1.2em;
    text-wrap: pretty;
  }

  .notes li + li {
    margin-block-start: 0.35em;
  }

  .notes summary {
    inline-size: max-content;
    cursor: pointer;
    color: var(--_faint);
  }

  .notes details ul {
    margin-block-start: 0.35em;
  }

  @container (max-width: 46rem) {
    .picture {
      block-size: var(--ringdown-height, 33rem);
    }

    .list,
    .list tbody {
      display: block;
    }

    .list thead {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }

    .list tbody {
      border-block-start: 1px solid var(--_text);
    }

    .list tbody tr {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(7em, 1fr));
      gap: 0.5em 0.9em;
      padding: 0.6em 0.7em 0.7em;
    }

    .list tbody :is(th, td) {
      padding: 0;
    }

    .list tbody :is(th, .verdict) {
      grid-column: 1 / -1;
    }

    .list tbody th button {
      margin-inline-start: -0.45em;
    }

    .list tbody td::before {
      content: attr(data-label);
      display: block;
      font-size: 0.84em;
      color: var(--_faint);
    }

    .list tbody .verdict::before {
      content: none;
    }

    .spark {
      inline-size: 100%;
    }
  }

  @media print {
    .picture {
      block-size: 8cm;
    }
  }
`;
