import { css } from 'lit';

export const remedyStyles = css`
  .picture {
    block-size: var(--ringdown-height, clamp(30rem, 74cqi, 42rem));
    overflow: visible;
  }

  .after {
    position: relative;
    direction: ltr;
    block-size: var(--ringdown-pair-height, 40rem);
    overflow: hidden;
  }

  .after canvas {
    position: absolute;
    inset: 0;
    display: block;
    inline-size: 100%;
    block-size: 100%;
    cursor: default;
  }

  @container (min-width: 620px) {
    .after {
      block-size: var(--ringdown-pair-height, clamp(17rem, 38cqi, 26rem));
    }
  }

  .handle {
    position: absolute;
    inset-inline-start: var(--x, 0);
    inset-block-start: var(--y, 0);
    display: grid;
    place-content: center;
    inline-size: 24px;
    block-size: 24px;
    margin: -12px;
    padding: 0;
    border: 2px solid var(--_accent);
    border-radius: 50%;
    background: Canvas;
    color: var(--_text);
    font-size: 11px;
    line-height: 1;
    cursor: grab;
    touch-action: none;
  }

  .handle.matched {
    border-radius: 5px;
    cursor: ns-resize;
  }

  .handle:active {
    cursor: grabbing;
  }

  h3 {
    margin: 0.8em 0 0.3em;
    font-size: 0.9em;
  }

  h4 {
    margin: 0.6em 0 0.2em;
    font-size: 0.82em;
  }

  section > ul,
  section [role='status'] > ul,
  section details > ul {
    margin: 0 0 0.5em;
    padding-inline-start: 1.2em;
    font-size: 0.85em;
  }

  section p {
    margin: 0.3em 0;
    font-size: 0.88em;
    max-inline-size: 88ch;
    text-wrap: pretty;
  }

  section p:empty {
    display: none;
  }

  section .tools {
    padding-block: 0.35rem;
  }

  section .tools input[type='number'] {
    inline-size: 7em;
  }

  :is([part='skipped'], [part='hangs']) summary {
    inline-size: fit-content;
    cursor: pointer;
    color: var(--_faint);
    font-size: 0.85em;
  }

  .bands td input {
    inline-size: 5.5em;
  }

  .bands select {
    padding: 0.15em 0.35em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    background: transparent;
  }

  .plain td > .doubtful {
    display: block;
    font-size: 0.9em;
  }

  .options {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
    gap: 0.5rem 1.5rem;
    margin: 0;
  }

  .option {
    padding-block: 0.4rem;
    border-block-start: 1px solid var(--_line);
  }

  .option.first {
    border-block-start: 2px solid var(--_accent);
  }

  .option dt {
    display: flex;
    justify-content: space-between;
    gap: 1em;
    font-weight: 600;
    font-size: 0.9em;
  }

  .option dt small {
    font-weight: 400;
    color: var(--_faint);
  }

  .option.first dt small {
    color: var(--_accent);
  }

  .option.unlikely dt {
    font-weight: 400;
  }

  .option dd {
    margin: 0;
  }

  .option p {
    margin: 0.25em 0;
    font-size: 0.84em;
  }

  .option b {
    font-weight: 600;
  }

  .cautions {
    color: var(--_faint);
  }

  @media (forced-colors: active) {
    .handle {
      forced-color-adjust: none;
      background: Canvas;
      color: CanvasText;
      border-color: Highlight;
    }
  }

  .picture:has(> .veil),
  .picture.two:has(> .veil) {
    block-size: clamp(12rem, 30cqi, 18rem);
  }

  @media print {
    .handle {
      border-color: #111;
    }
  }
`;
