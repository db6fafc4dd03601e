import { css } from 'lit';
import type { PropertyValues } from 'lit';
import { RingdownElement } from './element.js';

/** Told to the study, and only to it: neither leaves shadow roots nor concerns the page. */
export const dataChanged = 'ringdown-data';

/** A child of a study that shows nothing: it only says something. */
export abstract class DataElement extends RingdownElement {
  static override styles = css`
    :host {
      display: none;
    }
  `;

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    this.dispatchEvent(new Event(dataChanged, { bubbles: true }));
  }
}
