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

  /* Some engines draw a select with a ground and a height of the system's, whatever is asked: drawn here, it is one
     everywhere. */
  :host select:not([multiple]):not([size]) {
    appearance: none;
    padding-inline-end: 1.7em;
    background-image:
      linear-gradient(45deg, transparent 50%, currentColor 50%),
      linear-gradient(-45deg, transparent 50%, currentColor 50%);
    background-repeat: no-repeat;
    background-size: 0.32em 0.32em;
    background-position:
      right 0.92em top 55%,
      right 0.6em top 55%;
  }

  :host(:dir(rtl)) select:not([multiple]):not([size]) {
    background-position:
      left 0.6em top 55%,
      left 0.92em top 55%;
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
