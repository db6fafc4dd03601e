import { mainsOf } from '../resonance/hum.js';
import type { Resonance } from '../resonance/types.js';
import { chanceOfAny } from './candidates.js';
import { rings } from './ridges.js';
import type { Candidate, Cause, Evidence } from './types.js';
import * as maths from '../signal/maths.js';

/** Fewer recordings than this show no shape over places. */
const fewestSeats = 4;
/**
 * One shape at every seat: levels differ by less than this (sd, dB), and phases at the first arrival by less than this (rad, re
 * their mean). A mode's pressure over random places has an sd of some 5 dB, and changes its sign.
 */
const alikeDb = 1.5;
const alikeRadians = Math.PI / 9;
/** The places must be able to show it: other resonances differ by at least this between them (median sd, dB). */
const othersDb = 3;

const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

function spreadDb({ amplitudes }: Resonance): number {
  const levels = amplitudes.map((a) => 20 * maths.log10(Math.max(a, 1e-12)));
  const mean = meanOf(levels);
  return Math.sqrt(meanOf(levels.map((level) => maths.square(level - mean))));
}

/** Largest distance of a phase from the mean direction of all, rad. */
function phaseSpread({ phasesRadians }: Resonance): number {
  const mean = maths.atan2(
    meanOf(phasesRadians.map((phase) => maths.sin(phase))),
    meanOf(phasesRadians.map((phase) => maths.cos(phase))),
  );
  return Math.max(
    ...phasesRadians.map((phase) => Math.abs(maths.atan2(maths.sin(phase - mean), maths.cos(phase - mean)))),
  );
}

/**
 * A resonance that every seat hears at one level and in one phase after its own first arrival: what the loudspeaker, its port or
 * its crossover adds does so, and so does a mode that does not change between these seats. Null where that is not so, or where
 * the seats could not show it.
 */
export function oneShape(resonance: Resonance, all: readonly Resonance[]): Evidence | null {
  const seats = resonance.amplitudes.length;
  if (seats < fewestSeats || resonance.amplitudes.some((a) => !(a > 0))) return null;
  const others = all
    .filter((other) => other !== resonance && rings(other) && other.amplitudes.every((a) => a > 0))
    .map(spreadDb)
    .sort((a, b) => a - b);
  const othersSpreadDb = others[others.length >> 1];
  const spread = spreadDb(resonance);
  const radians = phaseSpread(resonance);
  if (!(othersSpreadDb >= othersDb) || spread > alikeDb || radians > alikeRadians) return null;
  const params = { seats, spreadDb: spread, degrees: (180 * radians) / Math.PI, othersDb: othersSpreadDb };
  return { kind: 'one-shape', params };
}

/** What is known of a ridge once its cause is told. */
export interface CauseFacts {
  readonly cause: Cause;
  readonly resonance: Resonance | null;
  readonly candidates: readonly Candidate[];
  readonly shape: Evidence | null;
  readonly beside?: Evidence | null;
  /** Of the room, or of one of 60 m3, in the range. */
  readonly expectedModes: number;
}

/** What a ridge's cause rests on, in numbers; null where no more is known than that no mode explains it. */
export function evidenceOf({
  cause,
  resonance,
  candidates,
  shape,
  beside = null,
  expectedModes,
}: CauseFacts): Evidence | null {
  if (!resonance) return null;
  const { frequencyHz, decayTimeSeconds, decayTimeEarlySeconds, q, early, amplitudes } = resonance;
  if (cause === 'hum') {
    const mainsHz = mainsOf(frequencyHz, 0.4);
    if (mainsHz === null) return null;
    const multiple = Math.round(frequencyHz / mainsHz);
    return { kind: 'hum', params: { mainsHz, multiple, offHz: frequencyHz - multiple * mainsHz } };
  }
  if (cause === 'equaliser') return { kind: 'alone', params: { expectedModes, q } };
  if (cause === 'coupled') {
    const loudest = amplitudes.indexOf(Math.max(...amplitudes));
    const lateDb = early
      ? 20 * maths.log10(amplitudes[loudest] / Math.max(early.amplitudes[loudest], 1e-15))
      : null;
    return {
      kind: 'two-slopes',
      params: { earlySeconds: decayTimeEarlySeconds, lateSeconds: decayTimeSeconds, lateDb },
    };
  }
  if (cause === 'room-mode') return { kind: 'modes', params: { chance: chanceOfAny(candidates) } };
  if (cause === 'source' && beside?.kind === 'near-field') return beside;
  // That the source does not ring answers the question that one shape at every seat would leave open.
  return shape && beside?.kind === 'not-near-field' ? beside : shape;
}
