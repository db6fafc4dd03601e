/** What views say of single sources: each through its setting, at one seat, and how they stand to each other. */
import {
  alignSource,
  beyondRepeats,
  phaseBetween,
  plainSetting,
  settingResponse,
  sharedBand,
  type Alignment,
  type Band,
  type SharedBand,
  type SourceSetting,
  type TransferMatrix,
} from '../seats/index.js';
import { checkedBand } from '../seats/biquad.js';
import { settingsOf } from './system-design.js';
import type { SystemSnapshot } from './system-types.js';
import type { StudySnapshot } from './types.js';
import * as maths from '../signal/maths.js';

export { bandBoundsOf } from '../seats/biquad.js';
export { plainSetting, type Band, type SourceSetting };

const decibels = (power: number): number => 10 * maths.log10(Math.max(1e-30, power));

const through = new WeakMap<TransferMatrix, { readonly key: string; readonly matrix: TransferMatrix }>();

/** The responses of the sources through their settings; null without responses. Kept until a setting changes. */
export function designedMatrix(snapshot: SystemSnapshot): TransferMatrix | null {
  const { matrix } = snapshot;
  if (!matrix) return null;
  const settings = settingsOf(snapshot);
  const key = JSON.stringify(settings);
  const known = through.get(matrix);
  if (known?.key === key) return known.matrix;
  const { frequenciesHz, seatCount, sourceCount } = matrix;
  const columns = frequenciesHz.length;
  const re = new Float64Array(matrix.re.length);
  const im = new Float64Array(matrix.im.length);
  for (let source = 0; source < sourceCount; source++) {
    const own = settingResponse(settings[source], frequenciesHz);
    for (let k = source * seatCount * columns; k < (source + 1) * seatCount * columns; k++) {
      const f = k % columns;
      re[k] = matrix.re[k] * own.re[f] - matrix.im[k] * own.im[f];
      im[k] = matrix.re[k] * own.im[f] + matrix.im[k] * own.re[f];
    }
  }
  const made = { ...matrix, re, im };
  through.set(matrix, { key, matrix: made });
  return made;
}

/** Level of each source at a seat, and of all of them together, dB. */
export function levelsAtSeat(
  { frequenciesHz, seatCount, sourceCount, re, im }: TransferMatrix,
  seat: number,
): { readonly sources: readonly Float64Array[]; readonly sum: Float64Array } {
  const columns = frequenciesHz.length;
  const at = (source: number, f: number): number => (source * seatCount + seat) * columns + f;
  const list = Array.from({ length: sourceCount }, (_, source) => source);
  return {
    sources: list.map((source) =>
      Float64Array.from(frequenciesHz, (_, f) =>
        decibels(maths.square(re[at(source, f)]) + maths.square(im[at(source, f)])),
      ),
    ),
    sum: Float64Array.from(frequenciesHz, (_, f) => {
      const total = (part: Float64Array): number =>
        list.reduce((all, source) => all + part[at(source, f)], 0);
      return decibels(maths.square(total(re)) + maths.square(total(im)));
    }),
  };
}

/** Phase of every source against one, degrees from -180 to 180; the reference itself is 0. */
export const phasesAtSeat = (matrix: TransferMatrix, reference: number, seat: number): Float64Array[] =>
  Array.from({ length: matrix.sourceCount }, (_, source) =>
    phaseBetween(matrix, reference, source, seat).map((radians) => (radians * 180) / Math.PI),
  );

export interface SourcePhase {
  /** What the two sources share; null where they share nothing, and no phase means anything. */
  readonly band: SharedBand | null;
  readonly alignment: Alignment | null;
}

/** How each source stands to a reference over the band that both play: at one seat, or at all of them. */
export function sourcePhases(
  matrix: TransferMatrix,
  reference: number,
  seats: readonly number[],
): SourcePhase[] {
  return Array.from({ length: matrix.sourceCount }, (_, source): SourcePhase => {
    if (source === reference) return { band: null, alignment: null };
    const band = sharedBand(matrix, [reference, source]);
    return { band, alignment: band && alignSource(matrix, reference, source, seats, band) };
  });
}

/** A delay is typed in as so many seconds, as processors have it. */
const delayStep = 0.00001;

/**
 * Settings that bring every source into phase with a reference as well as all seats allow. Delays stay at 0 and above:
 * where a source would have to lead, the others wait.
 */
export function alignedSettings(snapshot: SystemSnapshot, reference: number): Record<string, SourceSetting> {
  const { grid, arrangement, design } = snapshot;
  const matrix = designedMatrix(snapshot)!;
  const phases = sourcePhases(
    matrix,
    reference,
    grid.seats.map((_, seat) => seat),
  );
  const moved = grid.sources.map((source, k) => {
    const { key } = arrangement.sources[source];
    const setting = design.settings[key] ?? plainSetting;
    const { alignment } = phases[k];
    return {
      key,
      setting: {
        ...setting,
        delaySeconds: setting.delaySeconds + (alignment?.delaySeconds ?? 0),
        inverted: setting.inverted !== (alignment?.inverted ?? false),
      },
    };
  });
  const first = Math.min(...moved.map(({ setting }) => setting.delaySeconds));
  return {
    ...design.settings,
    ...Object.fromEntries(
      moved.map(({ key, setting }) => [
        key,
        {
          ...setting,
          delaySeconds: Math.round((setting.delaySeconds - first) / delayStep) * delayStep,
        },
      ]),
    ),
  };
}

/** When the sound of each source arrives at a seat, s after the first; null where no common clock says. */
export function arrivalsAtSeat(
  { grid }: SystemSnapshot,
  { recordings }: StudySnapshot,
  seat: number,
): (number | null)[] {
  const list = grid.recordings.map((row) => recordings[row[seat]]);
  if (list.some((one) => one?.timeReference !== 'common')) return list.map(() => null);
  const onsets = list.map((one) => one.onsetSeconds + (one.reduced?.startSeconds ?? 0));
  const first = Math.min(...onsets);
  return onsets.map((onset) => onset - first);
}

/** Whether a proposal gains more than repeats of a point differ by; null where nothing was repeated. */
export const proposalIsSure = ({ proposal, repeats }: SystemSnapshot): boolean | null =>
  proposal && beyondRepeats(proposal.alike.meanSpatialVariance, proposal.score.meanSpatialVariance, repeats);

/** @throws RingdownError `band-value` */
export const checkedFilter = (band: Band, sampleRate: number): Band => checkedBand(band, sampleRate);
