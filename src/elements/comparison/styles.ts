import { css } from 'lit';

export const comparisonStyles = css`
  :host {
    --_above: light-dark(oklch(0.56 0.16 45), oklch(0.74 0.15 60));
    --_below: light-dark(oklch(0.47 0.13 255), oklch(0.62 0.13 250));
  }

  .picture {
    block-size: var(--ringdown-height, 60rem);
  }

  .picture.two {
    block-size: var(--ringdown-height, 40rem);
  }

  @container (min-width: 620px) {
    .picture {
      block-size: var(--ringdown-height, clamp(36rem, 84cqi, 44rem));
    }

    .picture.two {
      block-size: var(--ringdown-height, clamp(17rem, 42cqi, 26rem));
    }
  }

  @container (min-width: 1050px) {
    .picture,
    .picture.two {
      block-size: var(--ringdown-height, clamp(25rem, 37cqi, 33rem));
    }
  }

  .plain td > .doubtful {
    display: block;
    font-size: 0.9em;
  }

  .summary {
    margin: 0.4em 0;
    font-size: 0.92em;
    max-inline-size: 88ch;
    text-wrap: pretty;
  }

  .summary.relative {
    border-inline-start: 3px solid var(--_accent);
    padding-inline-start: 0.7em;
  }

  .picture:has(> .veil),
  .picture.two:has(> .veil) {
    block-size: clamp(12rem, 30cqi, 18rem);
  }

  @media print {
    .picture {
      block-size: 16cm;
    }
  }
`;
