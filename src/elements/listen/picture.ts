import { html, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { HeardKind, Listened } from '../../study/listen.js';
import type { Speaker } from '../../words/index.js';
import { styleValues } from '../shared/style-values.js';

/** Levels shown, dB below the loudest. */
const rangeDb = 50;
const width = 1000;
const height = 200;

/** Line through the level of each block. */
function levelPath(blocksDb: Float32Array): string {
  const step = width / Math.max(1, blocksDb.length - 1);
  const y = (db: number): string => (height * Math.min(1, Math.max(0, -db / rangeDb))).toFixed(1);
  return `M${[...blocksDb].map((db, k) => `${(k * step).toFixed(1)},${y(db)}`).join('L')}`;
}

/** Level over time of every sound, the one that is heard in front; bars below show when a note is played. */
export function renderPicture(listened: Listened, chosen: HeardKind, speaker: Speaker): TemplateResult {
  const { seconds, notes, heard } = listened;
  const sorted = [...heard].sort((a, b) => Number(a.kind === chosen) - Number(b.kind === chosen));
  const x = (time: number): number => (width * time) / seconds;
  const lines = [10, 20, 30, 40];
  return html`<div class="levels" part="picture">
    <svg
      viewBox="0 0 ${width} ${height + 14}"
      preserveAspectRatio="none"
      role="img"
      aria-label=${speaker.view('listen-picture', { heard: speaker.view(`heard-${chosen}`) })}
    >
      ${lines.map((db) => svg`<path class="grid" d="M0,${(height * db) / rangeDb}H${width}" />`)}
      ${notes.map(
        ({ startSeconds, seconds: length }) =>
          svg`<rect class="note" x=${x(startSeconds)} y=${height + 4} width=${x(length)} height="8" />`,
      )}
      ${sorted.map(
        ({ kind, blocksDb }) =>
          svg`<path class=${kind === chosen ? 'level chosen' : `level ${kind}`} d=${levelPath(blocksDb)} />`,
      )}
      <path class="playhead" d="M0,0V${height + 14}" visibility="hidden" />
    </svg>
    <div class="scale" aria-hidden="true">
      ${[0, ...lines].map(
        (db) => html`<span style=${styleValues({ '--at': db / rangeDb })}>${speaker.n.decibels(-db)}</span>`,
      )}
    </div>
  </div>`;
}

/** Puts the playhead of a rendered picture to a time; null hides it. */
export function movePlayhead(root: ParentNode, position: number | null, seconds: number): void {
  const line = root.querySelector('.playhead');
  line?.setAttribute('visibility', position === null ? 'hidden' : 'visible');
  if (position !== null) line?.setAttribute('transform', `translate(${(width * position) / seconds})`);
}
