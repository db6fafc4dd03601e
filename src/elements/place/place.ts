import { property } from 'lit/decorators.js';
import { DataElement } from '../shared/data-element.js';

/**
 * A seat or a source of the study, by name: recordings then say `seat="console"` instead of three distances.
 *
 * @summary A named place in the room, inside a ringdown-study.
 * @tag ringdown-place
 */
export class RingdownPlace extends DataElement {
  /** "seat" or "source". */
  @property({ reflect: true }) kind: 'seat' | 'source' = 'seat';
  /** What recordings call it. */
  @property({ reflect: true }) name = '';
  /** "x y z" in metres from one low corner of the room. */
  @property() at: string | null = null;
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-place': RingdownPlace;
  }
}
