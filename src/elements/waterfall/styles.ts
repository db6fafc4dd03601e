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

  .turning {
    font-size: 0.85em;
    color: var(--_faint);
  }

  .turning summary {
    inline-size: max-content;
    cursor: pointer;
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
    overflow: hidden;
    direction: ltr;
  }

  .key path,
  .key .edge {
    fill: none;
    stroke: currentColor;
    stroke-opacity: 0.55;
  }

  .key .ridge,
  .key .stroke {
    stroke: var(--_text);
    stroke-opacity: 1;
    stroke-width: 1.5;
  }

  .key circle {
    fill: var(--_text);
  }

  .key .noise {
    fill: var(--_text);
    fill-opacity: 0.2;
  }

  .key .sheet {
    fill: var(--_text);
    fill-opacity: 0.14;
  }

  @container (max-width: 40rem) {
    .picture {
      block-size: var(--ringdown-height, clamp(20rem, 108cqi, 28rem));
    }
  }
`;
