export interface OptimiseBounds {
  /** No source is turned down by more, dB (negative). Sources are only ever turned down: the loudest stays at 0 dB. */
  readonly lowestGainDb: number;
  readonly longestDelaySeconds: number;
  readonly polarity: boolean;
  /** How far the mean output level may fall below that of all sources alike, dB (negative). */
  readonly leastLevelDb: number;
}

export const defaultBounds: OptimiseBounds = {
  lowestGainDb: -6,
  longestDelaySeconds: 0.02,
  polarity: true,
  leastLevelDb: -6,
};
