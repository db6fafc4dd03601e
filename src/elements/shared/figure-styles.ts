import { css } from 'lit';

/** Pictures with their controls and caption. */
export const figureStyles = css`
  figure {
    margin: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.5rem;
  }

  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0.3rem 1.5rem;
  }

  .title {
    font-weight: 600;
    font-size: 0.95em;
    overflow-wrap: anywhere;
  }

  .title small {
    display: inline-block;
    margin-inline-start: 0.6em;
    font-size: 0.92em;
    font-weight: 400;
    color: var(--_faint);
  }

  .picture {
    position: relative;
    direction: ltr;
    block-size: var(--ringdown-height, clamp(18rem, 54cqi, 34rem));
    overflow: hidden;
  }

  .picture canvas {
    position: absolute;
    inset: 0;
    display: block;
    inline-size: 100%;
    block-size: 100%;
  }

  .veil {
    position: absolute;
    inset: 0;
    display: grid;
    place-content: center;
    justify-items: center;
    gap: 0.6rem;
    padding: 1rem;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    text-align: center;
    text-wrap: balance;
    color: var(--_faint);
  }

  .veil.error {
    color: var(--_alert);
  }

  .veil .sentence {
    max-inline-size: 44ch;
    margin: 0;
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

  .cursor {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) minmax(13em, max-content);
    align-items: center;
    gap: 0.25rem 1.25rem;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .cursor label {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    align-items: center;
    gap: 0.6em;
  }

  .readout {
    color: var(--_text);
    text-align: end;
    white-space: nowrap;
  }

  .cursor[data-sliders='1'] {
    grid-template-columns: minmax(0, 1fr) minmax(13em, max-content);
  }

  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 0.9rem;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .tools label {
    display: inline-flex;
    align-items: center;
    gap: 0.45em;
  }

  .tools select,
  .tools input:not([type='range']) {
    min-inline-size: 0;
    max-inline-size: min(16em, 60cqi);
    padding: 0.15em 0.35em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    color: var(--_text);
    background: Canvas;
  }

  .twin {
    font-size: 0.85em;
  }

  .twin summary {
    inline-size: max-content;
    cursor: pointer;
    color: var(--_faint);
  }

  .twin .scroll {
    max-block-size: 26rem;
    margin-block-start: 0.4rem;
    overflow: auto;
  }

  .twin table {
    border-collapse: collapse;
    inline-size: 100%;
  }

  .twin th,
  .twin td {
    padding: 0.3em 0;
    padding-inline-end: 1em;
    vertical-align: baseline;
    font-weight: 400;
    border-block-end: 1px solid var(--_line);
    white-space: nowrap;
  }

  .twin thead th {
    color: var(--_faint);
    font-size: 0.92em;
    border-block-end-color: var(--_text);
    white-space: normal;
    vertical-align: bottom;
  }

  .twin .doubtful {
    color: var(--_faint);
    font-style: italic;
  }

  .twin button {
    margin-inline-start: -0.45em;
    padding: 0.05em 0.4em;
    border-color: transparent;
  }

  tr.selected {
    box-shadow: inset 3px 0 0 var(--_accent);
    background: var(--_wash);
  }

  :host(:dir(rtl)) tr.selected {
    box-shadow: inset -3px 0 0 var(--_accent);
  }

  figcaption {
    font-size: 0.8em;
    line-height: 1.5;
    color: var(--_faint);
    max-inline-size: 92ch;
    text-wrap: pretty;
  }

  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.15rem 1.25em;
    margin: 0 0 0.5em;
    padding: 0;
    list-style: none;
  }

  .key li {
    display: inline-flex;
    align-items: center;
    gap: 0.5em;
  }

  .key svg {
    flex: none;
    color: var(--_text);
    overflow: hidden;
    direction: ltr;
  }

  .hand {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.2rem 1.5rem;
  }

  .hand > [open],
  .hand > :has(input[type='text']) {
    flex: 1 0 100%;
  }

  .save,
  .turning {
    font-size: 0.85em;
    color: var(--_faint);
  }

  :is(.save, .turning) summary {
    inline-size: max-content;
    cursor: pointer;
  }

  .save div {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem 0.75rem;
    padding-block: 0.5rem;
    color: var(--_text);
  }

  .link {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 0.75rem;
    padding-block: 0.3rem;
    font-size: 0.85em;
    color: var(--_faint);
  }

  .link input {
    flex: 1 1 16em;
    min-inline-size: 0;
    padding: 0.2em 0.4em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    font: inherit;
    color: var(--_text);
    background: transparent;
  }

  .save label {
    display: inline-flex;
    align-items: center;
    gap: 0.5em;
  }

  .save select {
    padding: 0.1em 0.3em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    background: transparent;
  }

  @container (max-width: 40rem) {
    .cursor,
    .cursor[data-sliders] {
      grid-template-columns: minmax(0, 1fr);
    }
    .cursor label {
      grid-template-columns: 7.5em minmax(0, 1fr);
    }
    .readout {
      order: -1;
      text-align: start;
      white-space: normal;
    }
  }

  @media print {
    .picture {
      block-size: 9cm;
    }
    /* Drawn for the screen's width before the paper's is known: smaller rather than squeezed. */
    .picture canvas {
      object-fit: contain;
      object-position: left top;
    }
  }
`;
