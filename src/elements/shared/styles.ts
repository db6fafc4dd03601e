import { css } from 'lit';

/**
 * Tokens and the few common parts. Text and font are the page's; greys are mixtures of the text's colour with what is
 * behind, so that they belong to any page; only the accents are ours.
 */
export const tokens = css`
  :host {
    --_text: var(--ringdown-text, currentColor);
    --_faint: var(--ringdown-faint, color-mix(in oklab, var(--_text) 72%, transparent));
    --_line: var(--ringdown-line, color-mix(in oklab, var(--_text) 20%, transparent));
    --_wash: color-mix(in oklab, var(--_text) 5%, transparent);
    --_accent: var(--ringdown-accent, light-dark(#00637c, #7cc9dc));
    --_alert: var(--ringdown-alert, light-dark(#9c3a12, #f2a375));
    --_radius: var(--ringdown-radius, 3px);

    display: block;
    box-sizing: border-box;
    container-type: inline-size;
    color: var(--_text);
    background: var(--ringdown-background, transparent);
    color-scheme: light;
    font-variant-numeric: tabular-nums lining-nums;
    line-height: 1.45;
    text-align: start;
  }

  :host(:state(dark)) {
    color-scheme: dark;
  }

  :host([hidden]) {
    display: none;
  }

  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }

  /* A sentence runs as its own language does, and stands where the page's begins. */
  :is(td, th, caption, p, li, figcaption, output, label > span) {
    unicode-bidi: plaintext;
    text-align: -webkit-match-parent;
    text-align: match-parent;
  }

  .unseen {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }

  button,
  select,
  input {
    font: inherit;
    color: inherit;
  }

  button {
    padding: 0.2em 0.6em;
    border: 1px solid var(--_line);
    border-radius: var(--_radius);
    background: transparent;
    cursor: pointer;
  }

  button:hover {
    background: var(--_wash);
  }

  button[aria-pressed='true'] {
    border-color: var(--_accent);
    color: var(--_accent);
  }

  :focus-visible {
    outline: 2px solid var(--_accent);
    outline-offset: 2px;
  }

  input[type='range'] {
    accent-color: var(--_accent);
    min-inline-size: 0;
    margin: 0;
  }

  @media (forced-colors: active) {
    :host {
      --_text: CanvasText;
      --_faint: CanvasText;
      --_line: CanvasText;
      --_wash: Canvas;
      --_accent: Highlight;
      --_alert: CanvasText;
      forced-color-adjust: auto;
    }
    canvas {
      forced-color-adjust: none;
    }
  }

  @media print {
    :host {
      color: #111;
      color-scheme: light;
      background: none;
      break-inside: avoid;
    }
    .screen-only {
      display: none !important;
    }
  }
`;
