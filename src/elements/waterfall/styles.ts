import { css } from 'lit';

export const waterfallStyles = css`
  .picture {
    block-size: var(--ringdown-height, clamp(20rem, 58cqi, 38rem));
  }

  canvas {
    cursor: grab;
    touch-action: pan-y;
  }

  canvas:active {
    cursor: grabbing;
  }

  canvas.on-ridge {
    cursor: pointer;
  }

  .views {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 0.25rem;
    font-size: 0.82em;
  }

  .views button {
    padding: 0.15em 0.65em;
  }

  .turning div {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
    gap: 0.25rem 1.25rem;
    padding-block: 0.5rem;
  }

  .turning label {
    display: grid;
    grid-template-columns: 5.5em minmax(0, 1fr);
    align-items: center;
    gap: 0.6em;
  }

  .flat {
    margin: 0;
    font-size: 0.8em;
    color: var(--_faint);
  }

  @container (max-width: 40rem) {
    .picture {
      block-size: var(--ringdown-height, clamp(20rem, 108cqi, 28rem));
    }
  }
`;
