import { css } from 'lit';

export const spectrogramStyles = css`
  canvas {
    cursor: crosshair;
    touch-action: pan-y pinch-zoom;
  }

  canvas.on-ridge {
    cursor: pointer;
  }
`;
