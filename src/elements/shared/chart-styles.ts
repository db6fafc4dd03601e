import { css } from 'lit';

/** A chart that is read across, and needs less height than a surface. */
export const chartStyles = css`
  .picture {
    block-size: var(--ringdown-height, clamp(16rem, 40cqi, 24rem));
  }

  canvas {
    cursor: crosshair;
    touch-action: pan-y pinch-zoom;
  }

  canvas.on-ridge {
    cursor: pointer;
  }

  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.15rem 1.25em;
    margin: 0;
    padding: 0;
    list-style: none;
    font-size: 0.8em;
    color: var(--_faint);
  }

  .key li {
    display: inline-flex;
    align-items: center;
    gap: 0.5em;
  }

  .key svg {
    flex: none;
    overflow: hidden;
    direction: ltr;
    color: var(--_text);
  }
`;
