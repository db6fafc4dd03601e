import { examine, type Examination } from '../decay/index.js';
import { defaultVolumeCubicMetres, fitResonances } from '../resonance/index.js';
import type { Resonance, ResonanceFit } from '../resonance/types.js';
import { modeCount, transitionFrequency } from '../room/box.js';
import { prepareRoom, roomModeCount, roomVolume } from '../room/room.js';
import { predictRoom } from '../room/predict.js';
import type { Room, RoomPrediction, RoomSize } from '../room/types.js';
import { RingdownError } from '../signal/errors.js';
import { within } from '../signal/job.js';
import type { Job, Recording } from '../signal/types.js';
import { topFactor } from './candidates.js';
import { causeOf, ringsAlone } from './causes.js';
import { evidenceOf, oneShape } from './impostors.js';
import { audibleAt, judge } from './limits.js';
import { matchResonances } from './match.js';
import { concerns, nearFieldEvidence, partNearField, readNearField, type NearField } from './near-field.js';
import { fileNotes } from './notes.js';
import { remediesFor } from './remedies.js';
import { unexplainedBands, type UnexplainedBand } from './residual.js';
import { decaysOf, flagResonances, windowDecaySeconds, type FlaggedRidge } from './ridges.js';
import type { Diagnosis, DiagnosisParams, FileFacts, Ridge } from './types.js';
import * as maths from '../signal/maths.js';

/** 20 to 200 Hz against the published thresholds, no room. */
export const defaultDiagnosisParams: DiagnosisParams = {
  fromHz: 20,
  toHz: 200,
  limit: 'audibility',
  room: null,
};

/** Share of a diagnosis that the fit takes, in time. */
const fitShare = 0.9;
/** A cube of the default volume stands in for the room where none is given, for the number of its modes only. */
const speedWithoutRoom = 343.2;

/**
 * The whole way from recordings of one room to ridges with candidates, causes and remedies: the fit, then
 * `interpret`. Several recordings are fitted together: one set of frequencies and decay times, levels apart. Those that
 * were made close to a source are no seats: each is fitted alone, as evidence of what the source does.
 *
 * @param recordings At least one.
 * @throws RingdownError `frequency-range` with `fromHz`, `toHz`; those of `predictRoom`
 */
export function* diagnose(
  recordings: readonly Recording[],
  params: DiagnosisParams = defaultDiagnosisParams,
): Job<Diagnosis> {
  checkRange(params);
  const { fromHz, toHz, room } = params;
  const volumeCubicMetres = room ? roomVolume(room) : null;
  const fitParams = { fromHz, toHz, volumeCubicMetres };
  const { seats, near } = partNearField(recordings);
  const share = (count: number): number => (fitShare * count) / recordings.length;
  const fit = yield* within(fitResonances(seats, fitParams), 0, share(seats.length));
  const nearFields: NearField[] = [];
  for (const [index, recording] of near.entries()) {
    const from = seats.length + index;
    nearFields.push(yield* within(readNearField(recording, fitParams), share(from), share(from + 1)));
  }
  return yield* within(interpret(seats, fit, params, null, nearFields), fitShare, 1);
}

/**
 * What a fit means: ridges against limits, against the modes of the room, their causes and what might help. Cheap
 * beside the fit, so that another room or limit needs no new one. Without resonances for want of range there are no
 * ridges either, and the notes say why.
 *
 * @param recordings Those that `fit` was made from, in its order.
 * @param known Their examinations, where these are there already.
 * @param near What recordings close to a source say; those of other sources are passed over.
 * @throws RingdownError as `diagnose`
 */
export function* interpret(
  recordings: readonly Recording[],
  fit: ResonanceFit,
  params: DiagnosisParams,
  known: readonly Examination[] | null = null,
  near: readonly NearField[] = [],
): Job<Diagnosis> {
  checkRange(params);
  const { room, limit } = params;
  const { resonances } = fit;
  if (room) yield* within(prepareRoom(room, params.toHz * topFactor), 0, 0.05);
  const prediction = room ? predictionOf(room, resonances, params.toHz) : null;
  const examinations = known ?? (yield* within(examineAll(recordings), 0.05, 0.1));
  const files = factsOf(recordings, examinations, fit, prediction);
  yield { stage: 'diagnose', fraction: 0.1 };
  const flagged = flagResonances(resonances, limit, room);
  const unexplained = fit.notes.some(({ code }) => code === 'no-range')
    ? []
    : yield* within(unexplainedRidges(recordings, resonances, flagged, params), 0.1, 0.95);
  const matches = room ? matchResonances(fit, recordings, room, params.toHz) : null;
  const expected = expectedModes(params);
  const alone = ringsAlone(resonances, expected);
  const nearFields = near.filter((one) => concerns(one, recordings));
  const ridges = [...flagged, ...unexplained].map((ridge): Ridge => {
    const resonance = ridge.resonance === null ? null : resonances[ridge.resonance];
    const matched = (ridge.resonance === null ? null : matches?.get(ridge.resonance)) ?? [];
    const shape = resonance && oneShape(resonance, resonances);
    const beside = resonance && nearFieldEvidence(resonance, nearFields, room);
    const kind = resonance?.kind ?? null;
    const cause = causeOf({ kind, candidates: matched, alone, shape, beside, hasRoom: room !== null });
    const candidates = cause === 'equaliser' ? [] : matched;
    return {
      resonance: ridge.resonance,
      frequencyHz: ridge.frequencyHz,
      decayTimeSeconds: ridge.decayTimeSeconds,
      decayTimeSdSeconds: ridge.decayTimeSdSeconds,
      limitSeconds: ridge.verdict.limitSeconds,
      excess: ridge.excess,
      limitName: ridge.verdict.limitName,
      audible: ridge.audible,
      cause,
      evidence: evidenceOf({ cause, resonance, candidates: matched, shape, beside, expectedModes: expected }),
      seats: ridge.seats,
      candidates,
      remedies: remediesFor({
        ridge,
        resonance,
        cause,
        // Places on axes belong to a box: in another room moves and absorbers are told in general.
        candidates: room?.plan ? [] : candidates,
        seatCount: recordings.length,
        speedOfSoundMetresPerSecond: room?.speedOfSoundMetresPerSecond ?? speedWithoutRoom,
        room: room?.plan ? null : room,
        seats: recordings.map(({ seat }) => seat),
        sources: recordings.map(({ source }) => source),
      }),
    };
  });
  return {
    ...{ files, fit, resonances, ridges: ridges.sort(worstFirst), limit, room: prediction },
    ...(nearFields.length > 0 && { nearFields }),
  };
}

function* examineAll(recordings: readonly Recording[]): Job<Examination[]> {
  const list: Examination[] = [];
  for (const [index, recording] of recordings.entries())
    list.push(yield* within(examine(recording), index / recordings.length, (index + 1) / recordings.length));
  return list;
}

/** By excess; what has none (hum) comes last, by frequency. */
const worstFirst = (a: Ridge, b: Ridge): number =>
  (b.excess ?? -1) - (a.excess ?? -1) || a.frequencyHz - b.frequencyHz;

function checkRange({ fromHz, toHz }: DiagnosisParams): void {
  if (!(fromHz > 0 && toHz > fromHz)) throw new RingdownError('frequency-range', { fromHz, toHz });
}

/** The transition frequency of the room follows from the walls where they are known, else from what was measured. */
function predictionOf(room: Room, resonances: readonly Resonance[], toHz: number): RoomPrediction {
  const prediction = predictRoom(room, { toHz });
  if (prediction.transitionFrequencyHz !== null) return prediction;
  const times = decaysOf(resonances)
    .map(({ decayTimeSeconds }) => decayTimeSeconds)
    .sort((a, b) => a - b);
  if (times.length === 0) return prediction;
  const median = times[times.length >> 1];
  return {
    ...prediction,
    transitionFrequencyHz: transitionFrequency(median, prediction.volumeCubicMetres),
  };
}

function expectedModes({ room, fromHz, toHz }: DiagnosisParams): number {
  if (room) return roomModeCount(room, toHz) - roomModeCount(room, fromHz);
  const side = maths.cbrt(defaultVolumeCubicMetres);
  const size: RoomSize = { lengthMetres: side, widthMetres: side, heightMetres: side };
  return modeCount(size, speedWithoutRoom, toHz) - modeCount(size, speedWithoutRoom, fromHz);
}

function factsOf(
  recordings: readonly Recording[],
  examinations: readonly Examination[],
  fit: ResonanceFit,
  prediction: RoomPrediction | null,
): FileFacts[] {
  return recordings.map((recording, index) => {
    const { samples, label, hash, channelCount, channel, reduced } = recording;
    // Of the file: where the samples are a saved study's copy, what the file was is told with them.
    const sampleRate = reduced?.sampleRate ?? recording.sampleRate;
    const onsetSeconds = recording.onsetSeconds + (reduced?.startSeconds ?? 0);
    const examination = examinations[index];
    const { ranges: range, decays: bands, usableSeconds } = examination;
    return {
      ...{ label, hash, sampleRate, channelCount, channel, onsetSeconds },
      ...(recording.microphone && { microphone: recording.microphone }),
      ...(recording.fullScaleDb !== undefined && { fullScaleDb: recording.fullScaleDb }),
      ...(recording.sweep && { sweep: recording.sweep }),
      durationSeconds: reduced?.seconds ?? samples.length / sampleRate,
      ...{ range, bands, usableSeconds },
      notes: fileNotes({ recording, index, examination, fit, prediction }),
    };
  });
}

/** Two ridges closer than this are one in every picture: 2 / 0.3 s of the Hann window. */
const pictureResolutionHz = 2 / 0.3;

function* unexplainedRidges(
  recordings: readonly Recording[],
  resonances: readonly Resonance[],
  flagged: readonly FlaggedRidge[],
  params: DiagnosisParams,
): Job<FlaggedRidge[]> {
  const verdictAt = (frequencyHz: number, decayTimeSeconds = 0, decayTimeSdSeconds: number | null = null) =>
    judge(
      { frequencyHz, decayTimeSeconds, decayTimeSdSeconds },
      decaysOf(resonances),
      params.limit,
      params.room,
    );
  const found: (UnexplainedBand & { seat: number })[] = [];
  for (let seat = 0; seat < recordings.length; seat++) {
    const job = unexplainedBands(recordings[seat], resonances, seat, {
      fromHz: params.fromHz,
      toHz: params.toHz,
      limitSeconds: (f) => verdictAt(f).limitSeconds,
    });
    const bands = yield* within(job, seat / recordings.length, (seat + 1) / recordings.length);
    found.push(...bands.map((band) => ({ ...band, seat })));
  }
  const taken = flagged.map(({ frequencyHz }) => frequencyHz);
  const ridges: FlaggedRidge[] = [];
  found.sort((a, b) => b.decayTimeSeconds - a.decayTimeSeconds);
  for (const { seat, ...band } of found) {
    const { frequencyHz, decayTimeSeconds, decayTimeSdSeconds } = band;
    const known = ridges.findIndex(
      (ridge) => Math.abs(ridge.frequencyHz - frequencyHz) < pictureResolutionHz,
    );
    if (known >= 0) {
      const seats = [...new Set([...ridges[known].seats, seat])].sort((a, b) => a - b);
      ridges[known] = { ...ridges[known], seats };
      continue;
    }
    if (taken.some((f) => Math.abs(f - frequencyHz) < pictureResolutionHz)) continue;
    const verdict = verdictAt(frequencyHz, decayTimeSeconds, decayTimeSdSeconds);
    if (!verdict.above || decayTimeSeconds <= windowDecaySeconds) continue;
    ridges.push({
      resonance: null,
      frequencyHz,
      frequencySdHz: (band.toHz - band.fromHz) / 2,
      decayTimeSeconds,
      decayTimeSdSeconds,
      verdict,
      excess: verdict.limitSeconds === null ? null : decayTimeSeconds / verdict.limitSeconds,
      audible: audibleAt(frequencyHz, decayTimeSeconds),
      seats: [seat],
    });
  }
  return ridges;
}
