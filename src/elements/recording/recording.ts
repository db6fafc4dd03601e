import { property } from 'lit/decorators.js';
import { DataElement } from '../shared/data-element.js';
import type { PageSource } from '../shared/feed.js';
import type { Given } from '../shared/settings.js';

/**
 * One impulse response of the study.
 *
 * @summary One impulse response, inside a ringdown-study.
 * @tag ringdown-recording
 */
export class RingdownRecording extends DataElement {
  /** Address of the file (WAV, FLAC, AES69 or text). */
  @property() src: string | null = null;
  /** What it is called; the file's name where not given. */
  @property() label: string | null = null;
  /** Name of a ringdown-place, or "x y z" in metres. */
  @property() seat: Given = null;
  /** Name of a ringdown-place, or "x y z" in metres. */
  @property() source: Given = null;
  /** "before", "after", or any text. */
  @property() stage: Given = null;
  /** Counted from 1; the only live one or the first where not given. */
  @property() channel: Given = null;
  /** Sample rate, Hz, of a text file that holds no times. */
  @property() rate: Given = null;
  /** Which measurement of an AES69 (SOFA) file, counted from 1; the first where not given. */
  @property() measurement: Given = null;
  /** The file's bytes, from a script, in place of `src`. */
  @property({ attribute: false }) data: Blob | ArrayBuffer | null = null;

  /**
   * What the study is to read.
   * @internal
   */
  get pageSource(): PageSource {
    const { src, data, label, seat, source, stage, channel, rate, measurement } = this;
    return {
      id: this,
      url: src === null || data ? null : this.#resolved(src),
      data,
      settings: { label, seat, source, stage, channel, rate, measurement },
    };
  }

  #resolved(src: string): string {
    try {
      return new URL(src, this.ownerDocument.baseURI).href;
    } catch {
      return src;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-recording': RingdownRecording;
  }
}
