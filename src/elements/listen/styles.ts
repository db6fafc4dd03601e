import { css } from 'lit';

export const listenStyles = css`
  .listen {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.6rem;
  }

  fieldset {
    display: flex;
    flex-wrap: wrap;
    gap: 0.35rem;
    margin: 0;
    padding: 0;
    border: 0;
    min-inline-size: 0;
  }

  legend {
    padding: 0 0 0.3em;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .choice {
    position: relative;
    display: inline-flex;
    align-items: center;
    min-block-size: 2.2em;
    padding: 0.2em 0.8em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    cursor: pointer;
  }

  .choice input {
    position: absolute;
    inset: 0;
    margin: 0;
    opacity: 0;
    cursor: inherit;
  }

  .choice:has(:checked) {
    border-color: var(--_accent);
    color: var(--_accent);
    box-shadow: inset 0 -2px 0 var(--_accent);
  }

  .choice:has(:focus-visible) {
    outline: 2px solid var(--_accent);
    outline-offset: 2px;
  }

  .choice:has(:disabled) {
    color: var(--_faint);
    border-style: dashed;
    cursor: default;
  }

  .transport {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 0.9rem;
  }

  .transport button {
    min-inline-size: 5.5em;
    min-block-size: 2.4em;
  }

  .transport label {
    display: inline-flex;
    flex: 1 1 12rem;
    align-items: center;
    gap: 0.6em;
    max-inline-size: 24rem;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .transport input[type='range'] {
    flex: 1;
  }

  .says {
    margin: 0;
    min-block-size: 1.45em;
    text-wrap: pretty;
  }

  .says.wrong {
    color: var(--_alert);
  }

  .picture {
    block-size: var(--ringdown-height, clamp(12rem, 26cqi, 16rem));
  }

  .playhead {
    position: absolute;
    inset-block-start: 0;
    left: 0;
    inline-size: 1px;
    background: var(--_text);
    pointer-events: none;
  }

  .key {
    margin: 0;
    font-size: 0.8em;
    color: var(--_faint);
  }

  .why {
    margin: 0;
    padding: 0.5rem 0.8rem;
    border-inline-start: 2px solid var(--_alert);
    font-size: 0.85em;
    list-style: none;
    display: grid;
    gap: 0.3em;
    max-inline-size: 80ch;
    text-wrap: pretty;
  }

  .quiet {
    margin: 0;
    font-size: 0.8em;
    color: var(--_faint);
    max-inline-size: 92ch;
    text-wrap: pretty;
  }

  .veil {
    position: static;
    min-block-size: 7rem;
  }
`;
