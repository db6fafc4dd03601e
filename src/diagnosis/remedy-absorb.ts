import { sidesOf } from '../room/box.js';
import type { ModeOrder } from '../room/types.js';
import { addedDamping, areaNeeded, decayWith, levelChangeDb, pressurePlace } from './absorb.js';
import { panelDesigns, porousDepth, resonatorDesign, usualCoefficient } from './absorber-designs.js';
import type { RemedyEvidence } from './remedies.js';
import type { Remedy } from './types.js';

/** More of a wall than this is not promised to one absorber. */
const mostOfWall = 0.5;

/**
 * Absorption, with what it would take: how deep a panel or how far porous material, and, where the room and a likely mode
 * are known, how much of a tuned panel in a corner brings the decay to its limit.
 */
export function absorbRemedy(evidence: RemedyEvidence, order: ModeOrder | null, why: string): Remedy {
  const { ridge, room, speedOfSoundMetresPerSecond: speed } = evidence;
  const { frequencyHz, decayTimeSeconds: decay } = ridge;
  const panels = panelDesigns(frequencyHz);
  const panel = panels[panels.length >> 1];
  const params = {
    frequencyHz,
    why,
    quarterWaveMetres: porousDepth(frequencyHz, speed),
    ...(panel && { panelMass: panel.massKilogramsPerSquareMetre, panelDepthMetres: panel.depthMetres }),
    resonatorLitres: 1000 * resonatorDesign(frequencyHz).volumeCubicMetres,
  };
  const limit = ridge.verdict.limitSeconds;
  if (!room || !order || decay === null || limit === null || decay <= limit)
    return { kind: 'absorb', params };
  const coefficient = usualCoefficient.panel;
  const absorber = { kind: 'panel' as const, coefficient, ...pressurePlace(order, room.size) };
  const needed = areaNeeded(order, room.size, speed, absorber, decay, limit);
  if (needed === null) return { kind: 'absorb', params };
  const strongest = order.indexOf(Math.max(...order));
  const wall = sidesOf(room.size).reduce((area, side, n) => (n === strongest ? area : area * side), 1);
  const areaSquareMetres = Math.min(needed, mostOfWall * wall);
  const expectedSeconds = decayWith(
    decay,
    addedDamping(order, room.size, speed, { ...absorber, areaSquareMetres }),
  );
  return {
    kind: 'absorb',
    params: {
      ...params,
      ...{ areaSquareMetres, coefficient, expectedSeconds },
      order: order.join(','),
      expectedDb: levelChangeDb(decay, expectedSeconds),
    },
  };
}
