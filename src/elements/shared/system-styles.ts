import { css } from 'lit';

/** Tables that stand open under a chart of sources and seats. */
export const systemStyles = css`
  .scroll {
    overflow-x: auto;
  }

  .tall {
    max-block-size: 24rem;
    overflow-y: auto;
  }

  .plain {
    border-collapse: collapse;
    min-inline-size: min(100%, 34rem);
    font-size: 0.85em;
  }

  .plain caption {
    padding-block: 0.6em 0.2em;
    font-weight: 600;
    text-align: start;
  }

  .plain th,
  .plain td {
    padding: 0.28em 0;
    padding-inline-end: 1.2em;
    font-weight: 400;
    vertical-align: baseline;
    border-block-end: 1px solid var(--_line);
    white-space: nowrap;
  }

  .plain thead th {
    color: var(--_faint);
    font-size: 0.92em;
    border-block-end-color: var(--_text);
    white-space: normal;
    vertical-align: bottom;
  }

  .plain .doubtful {
    color: var(--_faint);
  }

  .plain .missing {
    color: var(--_alert);
  }

  .plain input {
    inline-size: 100%;
    min-inline-size: 4.5em;
    max-inline-size: 10em;
    padding: 0.15em 0.35em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    background: transparent;
  }

  .plain input[type='checkbox'] {
    min-inline-size: 0;
    inline-size: auto;
  }

  .points {
    font-size: 0.95em;
  }

  .points summary {
    inline-size: max-content;
    cursor: pointer;
    color: var(--_faint);
    font-size: 0.9em;
  }

  .points .tools {
    padding-block: 0.5rem;
  }

  .hint {
    margin: 0;
    color: var(--_faint);
    font-size: 0.85em;
    max-inline-size: 80ch;
    text-wrap: pretty;
  }

  .wrong {
    margin: 0;
    color: var(--_alert);
    font-size: 0.9em;
    text-wrap: pretty;
  }

  @media print {
    .tall {
      max-block-size: none;
    }
    .plain input {
      border-color: transparent;
    }
  }
`;
