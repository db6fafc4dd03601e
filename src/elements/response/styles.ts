import { css } from 'lit';

export const responseStyles = css`
  .tolerance {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 1rem;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .tolerance label {
    display: inline-flex;
    align-items: center;
    gap: 0.45em;
  }

  .tolerance .level {
    flex: 1 1 12em;
  }

  .tolerance .level input {
    flex: 1;
  }

  .tolerance :is(select, input[type='text']) {
    min-inline-size: 0;
    padding: 0.15em 0.35em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    color: var(--_text);
    background: Canvas;
  }

  .tolerance .share {
    flex-basis: 100%;
    color: var(--_text);
  }

  .tolerance button:disabled {
    opacity: 0.55;
    cursor: default;
  }

  .alert {
    margin: 0;
    font-size: 0.85em;
    color: var(--_alert);
  }
`;
