import { css } from 'lit';

export const pressureStyles = css`
  .picture {
    block-size: var(--ringdown-height, clamp(22rem, 72cqi, 42rem));
  }

  .picture canvas.colours {
    z-index: -1;
  }

  .picture {
    isolation: isolate;
  }

  canvas.turned {
    cursor: grab;
    touch-action: pan-y;
  }

  canvas.turned:active {
    cursor: grabbing;
  }

  .cursor[data-sliders='3'] {
    grid-template-columns: repeat(3, minmax(0, 1fr));
  }

  .cursor[data-sliders='3'] .readout {
    grid-column: 1 / -1;
    text-align: start;
  }

  .twin table + table {
    margin-block-start: 1rem;
  }

  .twin caption:not(.unseen) {
    padding-block-end: 0.3em;
    color: var(--_faint);
    text-align: start;
  }

  :host {
    --_above: light-dark(oklch(0.56 0.16 45), oklch(0.74 0.15 60));
    --_below: light-dark(oklch(0.47 0.13 255), oklch(0.62 0.13 250));
  }

  @container (max-width: 40rem) {
    .cursor[data-sliders='3'] {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
