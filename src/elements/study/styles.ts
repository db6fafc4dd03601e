import { css } from 'lit';

export const studyStyles = css`
  .base {
    position: relative;
  }

  .bar {
    position: relative;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 1.25rem;
    padding-block: 0.6rem;
    font-size: 0.9em;
    border-block-end: 1px solid var(--_line);
  }

  .files {
    position: relative;
    display: inline-flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 0.75rem;
  }

  .files button {
    border-color: var(--_text);
    padding: 0.3em 0.8em;
  }

  .clear summary {
    padding: 0.3em 0.2em;
    cursor: pointer;
  }

  .clear > div {
    position: absolute;
    inset-block-start: 100%;
    inset-inline-end: 0;
    z-index: 3;
    inline-size: min(20rem, 80cqi);
    padding: 0.8rem;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    background: Canvas;
    color: var(--_text);
  }

  .clear p {
    margin: 0 0 0.6rem;
  }

  .hint,
  .chooser {
    color: var(--_faint);
  }

  .chooser {
    display: inline-flex;
    align-items: baseline;
    gap: 0.5em;
    min-inline-size: 0;
  }

  select {
    min-inline-size: 0;
    max-inline-size: min(22em, 60cqi);
    padding: 0.25em 0.4em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    color: var(--_text);
    background: Canvas;
  }

  .choices {
    padding-block: 0.45rem;
    font-size: 0.85em;
    border-block-end: 1px solid var(--_line);
  }

  .choices summary {
    inline-size: max-content;
    max-inline-size: 100%;
    cursor: pointer;
  }

  .choices small {
    margin-inline-start: 0.6em;
    font-size: 1em;
    color: var(--_faint);
  }

  .choices div {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1.1rem;
    padding-block: 0.6rem 0.3rem;
  }

  .choices label {
    display: inline-flex;
    align-items: baseline;
    gap: 0.4em;
    color: var(--_faint);
  }

  .choices input {
    inline-size: 4.5em;
    padding: 0.2em 0.4em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    color: var(--_text);
    background: transparent;
  }

  .choices .alert {
    flex-basis: 100%;
    margin: 0;
  }

  .result {
    min-block-size: 1.45em;
    margin: 0.7rem 0 0;
    text-wrap: pretty;
  }

  .progress {
    position: absolute;
    inset: auto 0 -1px;
    block-size: 2px;
    opacity: 0;
    background: linear-gradient(var(--_accent), var(--_accent)) 0 0 / calc(100% * var(--fraction)) 100%
      no-repeat;
    transition: opacity 200ms 300ms;
  }

  .progress.on {
    opacity: 1;
    transition: none;
  }

  .messages p {
    margin: 0.6rem 0 0;
    max-inline-size: 80ch;
  }

  .alert {
    padding-inline-start: 0.7em;
    border-inline-start: 3px solid var(--_alert);
    color: var(--_alert);
  }

  .notes {
    margin-block-start: 0.5rem;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .notes summary {
    inline-size: max-content;
    cursor: pointer;
  }

  .notes ul {
    margin: 0.3em 0 0;
    padding-inline-start: 1.2em;
    max-inline-size: 80ch;
  }

  .drop {
    position: absolute;
    inset: -0.5rem;
    z-index: 2;
    display: grid;
    place-content: start center;
    padding-block-start: min(6rem, 30%);
    border: 2px dashed var(--_accent);
    border-radius: 6px;
    font-weight: 600;
    color: var(--_accent);
    background: color-mix(in srgb, Canvas 82%, transparent);
    pointer-events: none;
  }

  @media print {
    /* Firefox leaves blank what does not fit one page of a container. */
    :host {
      container-type: normal;
      break-inside: auto;
    }
  }

  @media (prefers-reduced-motion: reduce) {
    .progress {
      transition: none;
    }
  }
`;
