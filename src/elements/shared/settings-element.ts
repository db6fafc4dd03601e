import { property } from 'lit/decorators.js';
import { choiceNames } from '../../study/choices.js';
import type { StudyFailure } from '../../study/types.js';
import { RingdownElement } from './element.js';
import { onceSaid, saidOf } from './late-words.js';
import type { PageSource } from './page-files.js';
import { credentialsOf } from './settings.js';
import type { Given, Settings } from './settings.js';

/** Attributes that an element shares with every other that can hold a study. Text is read as people type numbers. */
export abstract class SettingsElement extends RingdownElement {
  /** Address of one impulse response (WAV, FLAC, AES69 or text), or of a saved study. */
  @property() src: string | null = null;
  /** "use-credentials" where a file of another origin is to be fetched with the user's cookies; else they stay at home. */
  @property({ attribute: 'crossorigin' }) crossOrigin: string | null = null;
  /** What the recording is called; the file's name where not given. */
  @property() label: string | null = null;
  /** Which channel of the file, counted from 1; the only live one or the first where not given. */
  @property() channel: Given = null;
  /** Sample rate, Hz, of a text file that holds no times. */
  @property() rate: Given = null;
  /** Which measurement of an AES69 (SOFA) file, counted from 1; the first where not given. */
  @property() measurement: Given = null;
  /** Where it was measured, "x y z" in metres. */
  @property() seat: Given = null;
  /** Where the source stood, "x y z" in metres. */
  @property() source: Given = null;
  /** "before", "after", or any text. */
  @property() stage: Given = null;
  /** Length, width and height of the room, for example "5.3x4.1x2.7" (m) or "16x12x8 ft". */
  @property() room: Given = null;
  /** Instead of `room`: corners of the floor plan in turn, m, for example "0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5". */
  @property() plan: Given = null;
  /** Height of a room given by a plan. */
  @property() height: Given = null;
  /** What the walls are made of: one name for all, or one each (two ends, two sides, floor, ceiling), with commas. */
  @property() walls: Given = null;
  /** Of the air, °C; 20 where not given. */
  @property() temperature: Given = null;
  /** Relative humidity, %. */
  @property() humidity: Given = null;
  /** Speed of sound, m/s; from the air where not given. */
  @property() speed: Given = null;
  /** Absorption coefficient of the walls: one, or six (two ends, two sides, floor, ceiling). */
  @property() absorption: Given = null;
  /** Lowest frequency, Hz. */
  @property({ attribute: 'from' }) fromHz: Given = null;
  /** Highest frequency, Hz. */
  @property({ attribute: 'to' }) toHz: Given = null;
  /** "sliding", "cumulative" or "constant-q". */
  @property() method: Given = null;
  /** Length of the window, s. */
  @property({ attribute: 'window' }) windowSeconds: Given = null;
  /** Time between two slices, s. */
  @property({ attribute: 'step' }) stepSeconds: Given = null;
  /** Time shown, s from the onset. */
  @property({ attribute: 'span' }) spanSeconds: Given = null;
  /** What a decay is held against: "audibility", "target" or "neighbours". */
  @property() limit: Given = null;
  /** Range of levels shown, dB. */
  @property({ attribute: 'range' }) rangeDb: Given = null;

  /** Scale of the frequency axis: "log" or "linear". */
  @property() axis: Given = null;
  /** Of the response: "none", "1/48" to "1/1" (of an octave), or "erb", the width of the ear's filters. */
  @property() smoothing: Given = null;
  /**
   * Colours of level in every picture: "dusk" (night blue to ivory), "dawn" (paper to ink), "clear" (blue to yellow, for a
   * deficiency of colour vision); "auto" where not given, which is as the page's look and `--ringdown-scale` have it.
   */
  @property() scale: Given = null;

  /**
   * Takes what is shown from the page's address, after "#ringdown=" (with an id "#ringdown.<id>="), and offers a link to
   * it beside each picture.
   */
  @property({ type: Boolean }) linked = false;

  /** @internal */
  ownSettings(): Settings {
    const { room, plan, height, walls, temperature, humidity, speed, absorption } = this;
    const choices = Object.entries(choiceNames).map(([name, key]) => [name, this[key]] as const);
    return {
      ...{ room, plan, height, walls, temperature, humidity, speed, absorption },
      ...(Object.fromEntries(choices) as Record<keyof typeof choiceNames, Given>),
    };
  }

  /** @internal */
  ownSource(): PageSource | null {
    const { src, label, seat, source, stage, channel, rate, measurement } = this;
    if (!src) return null;
    return {
      id: this,
      url: this.#resolved(src),
      data: null,
      credentials: credentialsOf(this.crossOrigin),
      settings: { label, seat, source, stage, channel, rate, measurement },
    };
  }

  /** Against the page's base, as images are. */
  #resolved(src: string): string {
    try {
      return new URL(src, this.ownerDocument.baseURI).href;
    } catch {
      return src;
    }
  }

  /**
   * A failure as the sentence that is shown, with the recording's name where there is one.
   * @internal
   */
  describe(failure: StudyFailure): string {
    const sentence = saidOf(this.speaker, failure);
    return failure.label ? this.speaker.view('failure-of', { label: failure.label, sentence }) : sentence;
  }

  /** @internal */
  whenSaid(failure: StudyFailure, then: () => void): void {
    onceSaid(this.speaker, failure, then);
  }
}
