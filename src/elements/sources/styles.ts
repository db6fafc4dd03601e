import { css } from 'lit';

export const sourcesStyles = css`
  .picture {
    block-size: var(--ringdown-height, clamp(20rem, 52cqi, 30rem));
  }

  .filters td {
    border-block-end: 1px solid var(--_line);
  }

  .filters summary {
    inline-size: max-content;
    cursor: pointer;
    color: var(--_faint);
  }

  .plain tr:has(+ .filters) > * {
    border-block-end: 0;
  }

  .band {
    padding-block: 0.3rem;
  }

  .proposal h3 {
    margin: 0.6em 0 0.3em;
    font-size: 0.85em;
  }

  .proposal ul {
    margin: 0 0 0.5em;
    padding-inline-start: 1.2em;
    font-size: 0.9em;
  }

  .proposal p {
    margin: 0.4em 0;
    font-size: 0.9em;
    max-inline-size: 80ch;
  }

  .proposal .tools {
    padding-block: 0.25rem;
  }

  .proposal input[type='number'] {
    inline-size: 5em;
  }

  .bar {
    display: inline-block;
    inline-size: 8rem;
  }
`;
