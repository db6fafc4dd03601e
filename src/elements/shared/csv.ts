import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { csvText } from '../../study/tables.js';
import type { Table } from '../../study/tables.js';
import type { Speaker } from '../../words/index.js';
import type { Scope } from '../scope.js';
import { fileNameOf } from '../../sheet/figure-words.js';
import { download } from './save.js';

/** One button per table: the same figures for other programs, with a point for decimals and units in the heads. */
export function csvControls(
  tables: () => readonly (Table | null)[],
  names: readonly string[],
  scope: () => Scope | null,
  label: string,
  speaker: Speaker,
): TemplateResult {
  return html`<details class="save screen-only" part="csv">
    <summary>${speaker.view('save-tables')}</summary>
    <div>
      ${names.map(
        (name) =>
          html`<button
            type="button"
            @click=${() => {
              const table = tables().find((one) => one?.name === name);
              const owner = scope();
              if (table && owner)
                download(
                  owner,
                  new Blob([csvText(table)], { type: 'text/csv' }),
                  fileNameOf(label, name, 'csv'),
                );
            }}
          >
            ${speaker.view(`csv-${name}`)}
          </button>`,
      )}
    </div>
  </details>`;
}
