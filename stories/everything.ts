import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { roomSize } from './recordings.js';

/** Every element that shows something, about one study. */
export const everything = (recordings: TemplateResult | null, noFiles = true): TemplateResult =>
  html`<ringdown-study room=${roomSize} ?no-files=${noFiles}>
    <ringdown-place kind="seat" name="console" at="3.7 1.4 1.2"></ringdown-place>
    <ringdown-place kind="source" name="corner" at="0.4 0.5 0.4"></ringdown-place>
    ${recordings}
    <ringdown-recordings></ringdown-recordings>
    <ringdown-waterfall></ringdown-waterfall>
    <ringdown-spectrogram></ringdown-spectrogram>
    <ringdown-response></ringdown-response>
    <ringdown-decay-times></ringdown-decay-times>
    <ringdown-fit></ringdown-fit>
    <ringdown-ridges></ringdown-ridges>
    <ringdown-modes></ringdown-modes>
    <ringdown-room></ringdown-room>
    <ringdown-pressure-map></ringdown-pressure-map>
    <ringdown-seats></ringdown-seats>
    <ringdown-sources></ringdown-sources>
    <ringdown-remedy></ringdown-remedy>
    <ringdown-comparison></ringdown-comparison>
    <ringdown-listen></ringdown-listen>
    <ringdown-report></ringdown-report>
  </ringdown-study>`;

/** One recording at the place of that study. */
export const recorded = (src: string, label: string): TemplateResult =>
  html`<ringdown-recording
    src=${src}
    label=${label}
    seat="console"
    source="corner"
    clock="common"
  ></ringdown-recording>`;
