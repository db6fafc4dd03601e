import type { Speaker } from './speaker.js';

/** The fields of a grid that its caption tells; a Grid of the engine fits. */
export interface CaptionedGrid {
  readonly method: string;
  readonly windowSeconds: number;
  readonly referenceDbFs: number;
  readonly limits: {
    readonly windowDecaySeconds: number;
    readonly resolutionHz: ArrayLike<number>;
    readonly dataEndSeconds: number;
  };
}

/** Where a constant-Q window has the length that is told, Hz, as in the engine. */
const atHz = 63;

/** What was given beside a recording; a Recording of the engine fits. */
export interface CaptionedRecording {
  readonly microphone?: { readonly label: string };
  readonly fullScaleDb?: number;
  readonly sweep?: { readonly label: string };
}

/** What was done to the samples of a file before anything was read from them. */
export const givenCaptions = (speaker: Speaker, { microphone, sweep }: CaptionedRecording): string[] => [
  ...(sweep ? [speaker.caption('swept', { label: sweep.label })] : []),
  ...(microphone ? [speaker.caption('microphone', { label: microphone.label })] : []),
];

/** One sentence under a picture: method, window, true resolution, definition of time, reference of level, range. */
export function gridCaption(
  speaker: Speaker,
  grid: CaptionedGrid,
  rangeDb?: number,
  recording: CaptionedRecording = {},
): string {
  const { resolutionHz, windowDecaySeconds, dataEndSeconds } = grid.limits;
  let lowestHz = Infinity;
  let highestHz = 0;
  for (let i = 0; i < resolutionHz.length; i++) {
    lowestHz = Math.min(lowestHz, resolutionHz[i]);
    highestHz = Math.max(highestHz, resolutionHz[i]);
  }
  const { method, windowSeconds, referenceDbFs } = grid;
  const parts = [
    speaker.caption('method', { method, windowSeconds, atHz }),
    speaker.caption('resolution', { lowestHz, highestHz }),
    ...(method === 'cumulative'
      ? []
      : [speaker.caption('window-decay', { method, windowDecaySeconds, atHz })]),
    speaker.caption('time', { method }),
    speaker.caption('level', { referenceDbFs, fullScaleDb: recording.fullScaleDb }),
    ...givenCaptions(speaker, recording),
    ...(rangeDb === undefined ? [] : [speaker.caption('range', { rangeDb })]),
    speaker.caption('data-end', { dataEndSeconds }),
  ];
  return `${parts.join('; ')}.`;
}
