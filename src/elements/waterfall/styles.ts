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

  @container (max-width: 40rem) {
    .picture {
      block-size: var(--ringdown-height, clamp(20rem, 108cqi, 28rem));
    }
  }
`;
