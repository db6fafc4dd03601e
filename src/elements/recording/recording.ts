import { property } from 'lit/decorators.js';
import { DataElement } from '../shared/data-element.js';
import type { PageFile, PageSource } from '../shared/page-files.js';
import { credentialsOf } from '../shared/settings.js';
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
  /** "use-credentials" where files of another origin are to be fetched with the user's cookies; else they stay at home. */
  @property({ attribute: 'crossorigin' }) crossOrigin: string | null = null;
  /** What it is called; the file's name where not given. */
  @property() label: string | null = null;
  /** Name of a ringdown-place, or "x y z" in metres. */
  @property() seat: Given = null;
  /** Name of a ringdown-place, or "x y z" in metres. */
  @property() source: Given = null;
  /** "before", "after", or any text. */
  @property() stage: Given = null;
  /**
   * Present where it was made close to its source: evidence of whether the source itself rings, and no seat. Its value is the
   * distance in metres to a port or the middle of a cone (half the radius of the cone where that is more), 0.05 without one.
   */
  @property({ attribute: 'near-field' }) nearField: Given = null;
  /** Counted from 1; the only live one or the first where not given. */
  @property() channel: Given = null;
  /** Sample rate, Hz, of a text file that holds no times. */
  @property() rate: Given = null;
  /** Which measurement of an AES69 (SOFA) file, counted from 1; the first where not given. */
  @property() measurement: Given = null;
  /** Address of the sweep that was played; `src` is then the recording of it, and its impulse response is worked out. */
  @property() sweep: string | null = null;
  /** Address of the text file with the response of the microphone (frequency in Hz and dB per line), which is taken off. */
  @property() microphone: string | null = null;
  /** Level calibration: sound pressure level, dB re 20 µPa, of a sine that reaches full scale. */
  @property() calibration: Given = null;
  /** "common" where one clock (a loopback, or one device) timed this recording and the others; else nothing. */
  @property() clock: string | null = null;
  /** The file's bytes, from a script, in place of `src`. */
  @property({ attribute: false }) data: Blob | ArrayBuffer | null = null;
  /** The same of the sweep, in place of `sweep`. */
  @property({ attribute: false }) sweepData: Blob | ArrayBuffer | null = null;
  /** The same of the microphone, in place of `microphone`. */
  @property({ attribute: false }) microphoneData: Blob | ArrayBuffer | null = null;

  /**
   * What the study is to read.
   * @internal
   */
  get pageSource(): PageSource {
    const { src, data, label, seat, source, stage, channel, rate, measurement, calibration } = this;
    const { clock, nearField } = this;
    return {
      id: this,
      ...this.#file(src, data),
      sweep: this.#file(this.sweep, this.sweepData),
      microphone: this.#file(this.microphone, this.microphoneData),
      settings: { label, seat, source, stage, channel, rate, measurement, calibration, clock, nearField },
    };
  }

  #file(address: string | null, data: Blob | ArrayBuffer | null): PageFile {
    const credentials = credentialsOf(this.crossOrigin);
    return { url: address === null || data ? null : this.#resolved(address), data, credentials };
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
