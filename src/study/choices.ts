import { logFrequencies, type GridParams, type ResponseParams } from '../decay/index.js';
import { smoothings } from '../decay/smoothing.js';
import type { DiagnosisParams } from '../diagnosis/index.js';
import type { FitParams } from '../resonance/index.js';
import { roomVolume, type Room } from '../room/index.js';
import type { Recording } from '../signal/index.js';
import type { Failure } from './failure.js';
import type { StudyChoices } from './types.js';

/** 20 to 200 Hz, 0.3 s Hann, 10 ms steps over 1 s, and a fixed level range: common practice for a bass waterfall. */
export const defaultChoices: StudyChoices = {
  fromHz: 20,
  toHz: 200,
  method: 'sliding',
  windowSeconds: 0.3,
  stepSeconds: 0.01,
  spanSeconds: 1,
  limit: 'audibility',
  rangeDb: 50,
  axis: 'log',
  smoothing: 'none',
  scale: 'auto',
};

/** Frequencies that are read, Hz: above them a room's modes are a crowd, below them no bass source plays. */
export const bandBounds = [5, 1000] as const;

/** Numbers by their attribute, in its unit: wide enough for any room, narrow enough to catch a slip. */
export const choiceBounds = {
  from: [5, 1000],
  to: [10, 1000],
  window: [0.01, 5],
  step: [0.001, 1],
  span: [0.05, 20],
  range: [10, 120],
} as const;

/** Words by their attribute. */
export const choiceWords = {
  method: ['sliding', 'cumulative', 'constant-q'],
  limit: ['audibility', 'target', 'neighbours'],
  axis: ['log', 'linear'],
  smoothing: smoothings,
  scale: ['auto', 'dusk', 'dawn', 'clear'],
} as const;

/** The choices by their attributes. */
export const choiceNames = {
  from: 'fromHz',
  to: 'toHz',
  method: 'method',
  window: 'windowSeconds',
  step: 'stepSeconds',
  span: 'spanSeconds',
  limit: 'limit',
  range: 'rangeDb',
  axis: 'axis',
  smoothing: 'smoothing',
  scale: 'scale',
} as const satisfies Readonly<Record<string, keyof StudyChoices>>;

/** A number between two bounds, or one of some words. */
export type ChoiceField = readonly [number, number] | readonly string[];

export const isBounds = (field: ChoiceField): field is readonly [number, number] =>
  typeof field[0] === 'number';

export const choiceFields: Readonly<Record<keyof typeof choiceNames, ChoiceField>> = {
  ...choiceBounds,
  ...choiceWords,
};

/** What is wrong with the choices themselves, before any recording is looked at. */
export function choicesFailure({ fromHz, toHz }: Pick<StudyChoices, 'fromHz' | 'toHz'>): Failure | null {
  const [from, to] = bandBounds;
  for (const value of [fromHz, toHz]) {
    if (!(value >= from && value <= to)) return { code: 'band-bounds', params: { value, from, to } };
  }
  return fromHz < toHz ? null : { code: 'band-order', params: { fromHz, toHz } };
}

export function gridParamsOf(choices: StudyChoices): GridParams {
  const { method, windowSeconds, stepSeconds, spanSeconds, fromHz, toHz } = choices;
  return {
    method,
    windowSeconds,
    stepSeconds,
    spanSeconds,
    frequenciesHz: logFrequencies(fromHz, toHz),
  };
}

/** What tells the samples of one recording from all others: one file holds several, and text takes its rate from outside. */
const identityOf = (recording: Recording): readonly unknown[] => {
  const { hash, channel, sampleRate, measurement, microphone, sweep } = recording;
  return [hash, channel, sampleRate, measurement ?? null, microphone?.hash ?? null, sweep?.hash ?? null];
};

/** All of a recording that a result may depend on or repeat. */
export function recordingKey(recording: Recording): string {
  const { label, stage, timeReference, seat, source, fullScaleDb = null, microphone } = recording;
  const { sourceName = null, nearFieldMetres = null } = recording;
  const given = [label, stage, timeReference, seat, source, fullScaleDb, microphone?.label ?? null];
  given.push(sourceName, nearFieldMetres);
  return JSON.stringify([...identityOf(recording), ...given]);
}

/** Hash and parameters of a grid as one text. */
export function gridKey(recording: Recording, choices: StudyChoices): string {
  const { method, windowSeconds, stepSeconds, spanSeconds, fromHz, toHz } = choices;
  return JSON.stringify([
    ...identityOf(recording),
    method,
    windowSeconds,
    stepSeconds,
    spanSeconds,
    fromHz,
    toHz,
  ]);
}

/**
 * What the fit depends on. Of the room it is the volume alone, which says how many modes may hide behind one; air, walls
 * and proportions change no fit.
 */
export function fitParamsOf({ fromHz, toHz }: StudyChoices, room: Room | null): FitParams {
  return { fromHz, toHz, volumeCubicMetres: room && roomVolume(room) };
}

export function diagnosisParamsOf({ fromHz, toHz, limit }: StudyChoices, room: Room | null): DiagnosisParams {
  return { fromHz, toHz, limit, room };
}

/** What an examination depends on: the samples alone. */
export const examinationKey = (recording: Recording): string => JSON.stringify(identityOf(recording));

/** Hash and parameters of a fit as one text. */
export const fitKey = (recording: Recording, params: FitParams): string => samplesKey(recording, params);

/** The same of a diagnosis, which repeats what is said of the recording. */
export const diagnosisKey = (
  recording: Recording,
  params: DiagnosisParams,
  near: readonly Recording[] = [],
): string => JSON.stringify([recordingKey(recording), params, near.map(recordingKey)]);

export const responseParamsOf = ({ fromHz, toHz, smoothing }: StudyChoices): ResponseParams => ({
  fromHz,
  toHz,
  smoothing,
});

/** What tells the samples, and the parameters of anything that rests on the samples alone. */
export const samplesKey = (recording: Recording, params: object): string =>
  JSON.stringify([...identityOf(recording), params]);
