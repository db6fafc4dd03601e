export * from './types.js';
export * from './air.js';
export * from './bounds.js';
export * from './box.js';
export * from './constructions.js';
export * from './crowding.js';
export * from './damping.js';
export * from './levels.js';
export * from './near-field.js';
export * from './parse.js';
export {
  boxPlan,
  createPlan,
  isInside,
  parseCorners,
  parseHeight,
  planArea,
  planPerimeter,
  planVolume,
  type Plan,
  type PointMetres,
} from './plan.js';
export { meshPlan, type PlanMesh } from './plan-mesh.js';
export { solveOn, solvePlan, type PlanShape, type PlanSolution } from './plan-modes.js';
export * from './room.js';
export * from './predict.js';
export * from './pressure.js';
export * from './roll-off.js';
export * from './synth.js';
export * from './wall-absorption.js';
