import type { FitChart } from '../../draw/fit-chart.js';
import { indexAt } from '../../draw/field.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';

export type RidgeFit = NonNullable<StudySnapshot['ridgeFit']>;

/** The scale's top steps with the loudest, dB. */
const topStepDb = 5;

/** A level of one of the curves at a time, or null past their end. */
function levelAt({ timesSeconds }: RidgeFit, levels: Float32Array | null, seconds: number): number | null {
  if (!levels || seconds < 0 || seconds > timesSeconds[timesSeconds.length - 1]) return null;
  return levels[Math.round(indexAt(timesSeconds, seconds))];
}

/** "1.31 ± 0.02 s", or that it never decays. */
export function decayText({ target }: RidgeFit, speaker: Speaker): string {
  const { decayTimeSeconds, decayTimeSdSeconds } = target;
  return decayTimeSeconds === null
    ? speaker.label('never')
    : speaker.n.plusMinus(decayTimeSeconds, decayTimeSdSeconds, 's');
}

export function fitChart({ choices, cursor }: StudySnapshot, fit: RidgeFit, speaker: Speaker): FitChart {
  const loudest = Math.max(
    0,
    fit.fittedDb?.[Math.max(0, Math.round(indexAt(fit.timesSeconds, fit.fitFromSeconds)))] ?? 0,
  );
  const top = Math.ceil(loudest / topStepDb) * topStepDb;
  const view = (code: string, params = {}): string => speaker.view(code, params);
  return {
    timeRange: [0, choices.spanSeconds],
    levelRange: [top - choices.rangeDb, top],
    times: fit.timesSeconds,
    recorded: fit.levelsDb,
    fitted: fit.fittedDb,
    together: fit.togetherDb,
    residual: fit.residualDb,
    floor: fit.floorDb,
    sinks: fit.sinksSeconds,
    dataEnd: fit.endSeconds,
    fitFrom: fit.fitFromSeconds,
    fitTo: fit.fitToSeconds,
    cursor: cursor && cursor.timeSeconds,
    labels: {
      time: view('onset-time-axis'),
      level: view('band-level-axis'),
      // These are told by the key below the picture.
      recorded: '',
      fitted: view('fit-fitted', { decay: decayText(fit, speaker) }),
      together: '',
      residual: '',
      floor: view('noise-area'),
      window: view('fit-window', { fromSeconds: fit.fitFromSeconds, toSeconds: fit.fitToSeconds }),
    },
    formatNumber: (value, digits) => speaker.n.number(value, digits),
  };
}

/** What the curves say at the cursor, in words. */
export function fitReadout({ cursor }: StudySnapshot, fit: RidgeFit, speaker: Speaker): string {
  if (!cursor) return speaker.view('readout-none');
  const { timeSeconds } = cursor;
  if (timeSeconds > fit.endSeconds) return speaker.view('recording-readout-past-end', { timeSeconds });
  if (timeSeconds > fit.sinksSeconds) return speaker.view('recording-readout-noise', { timeSeconds });
  return speaker.view('fit-readout', {
    timeSeconds,
    levelDb: levelAt(fit, fit.levelsDb, timeSeconds),
    fittedDb: levelAt(fit, fit.fittedDb, timeSeconds),
    residualDb: levelAt(fit, fit.residualDb, timeSeconds),
  });
}

export interface FitRow {
  readonly timeSeconds: number;
  readonly levelDb: number | null;
  readonly fittedDb: number | null;
  readonly togetherDb: number | null;
  readonly residualDb: number | null;
  readonly noise: boolean;
}

/** The curves every 50 ms, to the end of the picture or of the recording. */
export function fitRows({ choices }: StudySnapshot, fit: RidgeFit): FitRow[] {
  const step = 0.05;
  const end = Math.min(choices.spanSeconds, fit.endSeconds);
  return Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, k) => {
    const timeSeconds = k * step;
    const at = (levels: Float32Array | null): number | null => levelAt(fit, levels, timeSeconds);
    return {
      timeSeconds,
      levelDb: at(fit.levelsDb),
      fittedDb: at(fit.fittedDb),
      togetherDb: at(fit.togetherDb),
      residualDb: at(fit.residualDb),
      noise: timeSeconds > fit.sinksSeconds,
    };
  });
}
