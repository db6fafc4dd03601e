import type { Progress } from '../signal/index.js';

/** One piece of work under way. */
export interface Piece {
  report(progress: Progress): void;
  /** Done, failed or stopped: it counts as done. */
  end(): void;
}

/**
 * All the work from one rest to the next as one progress that never falls, though pieces are added on the way.
 */
export interface Round {
  readonly progress: Progress | null;
  begin(stage: string, weight: number): Piece;
}

export function createRound(onChange: () => void): Round {
  const pieces = new Map<Piece, { weight: number; fraction: number }>();
  let finished = 0;
  let highest = 0;
  let stage = '';

  const fraction = (): number => {
    let done = finished;
    let all = finished;
    for (const piece of pieces.values()) {
      done += piece.weight * piece.fraction;
      all += piece.weight;
    }
    return all > 0 ? done / all : 0;
  };

  return {
    get progress() {
      return pieces.size === 0 ? null : { stage, fraction: highest };
    },
    begin(first, weight) {
      const state = { weight, fraction: 0 };
      stage = first;
      const piece: Piece = {
        report: (progress) => {
          if (!pieces.has(piece)) return;
          state.fraction = Math.max(state.fraction, Math.min(1, progress.fraction));
          stage = progress.stage;
          highest = Math.max(highest, fraction());
          onChange();
        },
        end: () => {
          if (!pieces.delete(piece)) return;
          finished += weight;
          highest = Math.max(highest, fraction());
          if (pieces.size === 0) finished = highest = 0;
        },
      };
      pieces.set(piece, state);
      return piece;
    },
  };
}
