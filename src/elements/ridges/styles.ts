/** Long because the table has two forms, as rows where it is wide and as cards where it is narrow. */
import { css } from 'lit';

export const ridgesStyles = css`
  .base {
    position: relative;
  }

  .veil {
    display: grid;
    justify-items: center;
    gap: 0.6rem;
    padding: 1.5rem 1rem;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    text-align: center;
    text-wrap: balance;
    color: var(--_faint);
  }

  .veil p {
    margin: 0;
    max-inline-size: 48ch;
  }

  .veil.error,
  .alert {
    color: var(--_alert);
  }

  .bar {
    inline-size: min(14rem, 60cqi);
    block-size: 2px;
    background: var(--_line);
  }

  .bar i {
    display: block;
    block-size: 100%;
    inline-size: calc(100% * var(--fraction, 0));
    background: var(--_accent);
  }

  .empty p {
    margin: 0 0 0.4em;
    max-inline-size: 68ch;
  }

  .title,
  caption {
    font-weight: 600;
    font-size: 0.95em;
    overflow-wrap: anywhere;
  }

  caption {
    padding-block-end: 0.5rem;
  }

  .faint {
    color: var(--_faint);
  }

  table {
    inline-size: 100%;
    border-collapse: collapse;
    font-size: 0.9em;
  }

  th,
  td {
    padding: 0.55em 0;
    padding-inline-end: 0.9em;
    vertical-align: baseline;
    font-weight: 400;
  }

  thead th {
    padding-block: 0 0.4em;
    font-size: 0.86em;
    color: var(--_faint);
    border-block-end: 1px solid var(--_text);
    vertical-align: bottom;
  }

  tbody tr {
    border-block-end: 1px solid var(--_line);
    cursor: pointer;
  }

  tbody tr:hover {
    background: var(--_wash);
  }

  tbody tr.selected {
    box-shadow: inset 3px 0 0 var(--_accent);
    background: var(--_wash);
  }

  tbody th button {
    margin: -0.15em 0 -0.15em 0.4em;
    padding: 0.1em 0.45em;
    border-color: transparent;
    font-weight: 600;
    white-space: nowrap;
    text-align: start;
  }

  tbody th .faint {
    display: block;
    padding-inline-start: 0.9em;
    font-size: 0.88em;
    max-inline-size: 16em;
  }

  tbody th button[aria-pressed='true'] {
    border-color: transparent;
  }

  thead th.frequency {
    padding-inline-start: 0.9em;
  }

  .decayTime,
  .q,
  .excess {
    white-space: nowrap;
  }

  :is(.limit, .excess) .faint {
    display: block;
    font-size: 0.88em;
    font-weight: 400;
  }

  td.excess strong {
    font-weight: 600;
    color: var(--_alert);
  }

  .decay {
    position: relative;
    display: block;
    inline-size: 7.5em;
    block-size: 5px;
    margin-block-start: 0.45em;
    background: var(--_wash);
  }

  .decay i {
    position: absolute;
    inset: 0 auto 0 0;
    inline-size: calc(100% * var(--decay));
    background: linear-gradient(
      to right,
      var(--_accent) calc(100% * var(--limit) / var(--decay)),
      var(--_alert) 0
    );
    forced-color-adjust: none;
  }

  .decay b {
    position: absolute;
    inset-block: -3px;
    inset-inline-start: calc(100% * var(--limit) - 1px);
    inline-size: 2px;
    background: var(--_text);
  }

  .some {
    display: inline;
    margin: 0;
    padding: 0;
    list-style: none;
  }

  .some li {
    display: inline;
    margin-inline-end: 0.6em;
    white-space: nowrap;
  }

  .first {
    inline-size: auto;
    margin-block-start: 0.8rem;
  }

  .first tbody tr {
    cursor: default;
  }

  .first :is(th, td) {
    text-align: start;
    padding-inline-end: 1.6em;
  }

  .cause {
    margin-inline-end: 0.6em;
  }

  .cause::after {
    content: ':';
  }

  .cause:only-child::after {
    content: none;
  }

  td.candidates {
    inline-size: 40%;
  }

  .all {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(17em, 1fr));
    gap: 0.25em 1.5em;
    margin: 0.4em 0 0.6em;
    padding: 0;
    list-style: none;
    font-size: 0.94em;
  }

  .all li {
    padding-block-end: 3px;
    background: linear-gradient(var(--_accent), var(--_accent)) 0 100% / calc(100% * var(--share, 0)) 2px
      no-repeat;
  }

  .more {
    margin-block-start: 0.8rem;
    font-size: 0.88em;
  }

  details {
    margin-block-start: 0.25em;
    cursor: auto;
  }

  summary {
    inline-size: max-content;
    cursor: pointer;
    color: var(--_faint);
    font-size: 0.92em;
  }

  .remedies {
    margin: 0.4em 0 0.3em;
    padding-inline-start: 1.1em;
    max-inline-size: 52ch;
    font-size: 0.94em;
    text-wrap: pretty;
  }

  .remedies li + li {
    margin-block-start: 0.4em;
  }

  .foot {
    margin: 0.8rem 0 0;
    max-inline-size: 92ch;
    font-size: 0.8em;
    line-height: 1.5;
    color: var(--_faint);
    text-wrap: pretty;
  }

  /* Where eight columns do not fit, each ridge is a card: its name, then pairs of label and value. */
  @container (max-width: 52rem) {
    table,
    caption,
    tbody {
      display: block;
    }

    thead {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }

    tbody {
      border-block-start: 1px solid var(--_text);
    }

    tbody tr {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(8.5em, 1fr));
      gap: 0.7em 1em;
      padding: 0.8em 0.7em 0.9em;
    }

    tbody th,
    tbody td {
      padding: 0;
      min-inline-size: 0;
    }

    tbody td::before {
      content: attr(data-label);
      display: block;
      font-size: 0.84em;
      font-weight: 400;
      color: var(--_faint);
    }

    tbody th,
    tbody td.candidates {
      grid-column: 1 / -1;
      inline-size: auto;
    }

    tbody th {
      font-size: 1.08em;
    }

    tbody th button {
      margin-inline-start: -0.45em;
    }

    tbody th .faint {
      display: inline;
      padding: 0;
    }

    :is(.limit, .excess) .faint {
      display: inline;
      white-space: normal;
    }
  }

  @media print {
    /* Firefox leaves a container blank that is broken across pages; on paper the table has room for its columns. */
    :host {
      container-type: normal;
      break-inside: auto;
    }
    table {
      font-size: 0.8em;
    }
    details:not([open]),
    .more {
      display: none;
    }
    tr {
      break-inside: avoid;
    }
  }
`;
