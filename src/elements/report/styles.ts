import { css } from 'lit';

export const reportStyles = css`
  .form {
    display: grid;
    gap: 0.9rem 1.25rem;
    grid-template-columns: repeat(auto-fit, minmax(min(14rem, 100%), 1fr));
    align-items: end;
  }

  .form label,
  .decision label {
    display: grid;
    gap: 0.2rem;
    min-inline-size: 0;
    color: var(--_faint);
    font-size: 0.9em;
  }

  .form .wide-field {
    grid-column: 1 / -1;
  }

  :is(input, select, textarea) {
    inline-size: 100%;
    min-inline-size: 0;
    padding: 0.35em 0.5em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    color: var(--_text);
    background: Canvas;
    font: inherit;
  }

  textarea {
    min-block-size: 4.2em;
    resize: vertical;
  }

  .hint {
    margin: 0.5rem 0 0;
    color: var(--_faint);
    font-size: 0.85em;
    max-inline-size: 80ch;
  }

  .decisions {
    margin-block-start: 1rem;
  }

  .decisions summary {
    inline-size: max-content;
    max-inline-size: 100%;
    cursor: pointer;
  }

  .decision {
    display: grid;
    grid-template-columns: minmax(9rem, 1fr) minmax(9rem, 1fr) minmax(0, 3fr);
    gap: 0.4rem 0.9rem;
    align-items: end;
    margin: 0;
    padding-block: 0.55rem;
    border: 0;
    border-block-end: 1px solid var(--_line);
  }

  .decision p {
    margin: 0;
  }

  .decision small {
    color: var(--_faint);
  }

  .actions {
    display: flex;
    flex-wrap: wrap;
    gap: 0.6rem;
    align-items: center;
    margin-block: 1.1rem;
  }

  .actions button {
    padding: 0.35em 0.9em;
    border-color: var(--_text);
  }

  .save {
    margin-block-end: 1.1rem;
  }

  .save summary {
    inline-size: max-content;
    cursor: pointer;
  }

  .save > div {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin-block-start: 0.5rem;
  }

  .desk {
    border: 1px solid var(--_line);
    background: #fff;
    overflow: clip;
  }

  iframe {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    border: 0;
    opacity: 0;
    pointer-events: none;
  }

  .wrong {
    margin: 0;
    color: var(--_alert);
  }

  @container (inline-size < 34rem) {
    .decision {
      grid-template-columns: minmax(0, 1fr);
    }
  }

  @media print {
    :host {
      break-inside: auto;
      container-type: normal;
    }

    .desk {
      border: 0;
      overflow: visible;
    }
  }
`;
