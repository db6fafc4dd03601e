export * from './types.js';
export { diagnose, interpret, defaultDiagnosisParams } from './diagnose.js';
export {
  audibilityBand,
  audibleAt,
  judge,
  limitCurve,
  neighboursMedian,
  targetBand,
  targetMidTime,
  type LimitBand,
} from './limits.js';
export { disagreesBelowHz, publishedThresholds, type PublishedCurve } from './thresholds.js';
export {
  candidateModes,
  chanceOfAny,
  matchCandidates,
  matchObservations,
  type MatchParams,
  type Observation,
} from './candidates.js';
export { wallCut, wallSpread } from './evidence.js';
export { causeOf } from './causes.js';
export { evidenceOf, oneShape } from './impostors.js';
export {
  concerns,
  nearFieldEvidence,
  partNearField,
  readNearField,
  type NearField,
  type NearFieldResonance,
} from './near-field.js';
export { nodeNotes } from './nodes.js';
export { matchResonances } from './match.js';
export { excitation, measuredShape, shapeMatch, type MeasuredShape, type Place } from './shapes.js';
export { windowDecaySeconds } from './ridges.js';
export { remake, unexplainedBands, type UnexplainedBand } from './residual.js';
export { rateSuspect } from './rate-suspect.js';
export { heardResonances, type HeardResonance } from './heard.js';
export {
  fitRoom,
  type FittedResonance,
  type FittedSide,
  type RoomFit,
  type RoomFitParams,
} from './fit-room.js';
export { ridgeFit, type RidgeFit, type RidgeTarget } from './ridge-fit.js';
export { cautionsOf } from './remedies.js';
export * from './absorb.js';
export * from './absorber-designs.js';
export * from './placement.js';
export * from './source-moves.js';
export * from './remedy-options.js';
