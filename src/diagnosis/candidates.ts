import { boxModes, modeDensity } from '../room/box.js';
import type { Mode, Room } from '../room/types.js';
import type { Candidate } from './types.js';

/**
 * How far real walls move a mode from that of the rigid box: one standard deviation, as a fraction of its frequency,
 * and the shift beyond which none is believed (in measured rooms shifts of up to 5 or 6 % are seen).
 */
export const wallSpread = 0.025;
export const wallCut = 0.06;

/**
 * Odds, before the frequency is looked at, that a ridge is of no predicted mode: the room is not quite a box, or not
 * as typed, or what rings is a panel or a neighbouring space. One in three; an assumption of ours.
 */
const noneOdds = 0.5;

/** Candidates of less weight than this are left out. */
const leastWeight = 0.005;

/** Modes up to a frequency and beyond it as far as walls may pull one down into the range. */
export const candidateModes = (room: Room, toHz: number): Mode[] =>
  boxModes(room.size, room.speedOfSoundMetresPerSecond, toHz * (1 + 2 * wallCut));

export interface MatchParams {
  readonly room: Room;
  /** Ascending; reaching `wallCut` beyond the frequency. */
  readonly modes: readonly Mode[];
  /** Two modes closer than this cannot be told apart in this recording; null if unknown. */
  readonly resolvableSpacingHz: number | null;
  /** Factor on the weight of a mode from what else is known of it (its level at the seat, its decay); 1 if nothing. */
  readonly evidence?: (mode: Mode) => number;
}

/**
 * The predicted modes that a resonance may be, with weights. Each mode spreads its chance as a normal distribution
 * about its frequency (2.5 % for the walls, and the resonance's own uncertainty), cut at 6 %; against them stands the
 * chance that it is none, spread as evenly as the room's modes are dense. So a ridge that lies near one lonely mode
 * gets a good weight, and one among many gets many small ones. Equal modes share.
 *
 * @returns by descending weight; the weights add up to less than 1
 */
export function matchCandidates(
  frequencyHz: number,
  frequencySdHz: number,
  { room, modes, resolvableSpacingHz, evidence = () => 1 }: MatchParams,
): Candidate[] {
  const near = modes.filter((mode) => Math.abs(frequencyHz / mode.frequencyHz - 1) <= wallCut);
  const chances = near.map((mode) => {
    const sd = Math.hypot(wallSpread * mode.frequencyHz, frequencySdHz);
    const z = (frequencyHz - mode.frequencyHz) / sd;
    return (Math.exp(-0.5 * z * z) / (Math.sqrt(2 * Math.PI) * sd)) * evidence(mode);
  });
  const none = noneOdds * modeDensity(room.size, room.speedOfSoundMetresPerSecond, frequencyHz);
  const total = chances.reduce((sum, chance) => sum + chance, none);
  const groups = groupsOf(near, Math.max(wallSpread * frequencyHz, resolvableSpacingHz ?? 0, frequencySdHz));
  return near
    .map((mode, i): Candidate => ({
      order: mode.order,
      kind: mode.kind,
      frequencyHz: mode.frequencyHz,
      deviation: frequencyHz / mode.frequencyHz - 1,
      weight: chances[i] / total,
      shapeMatch: null,
      group: groups[i],
    }))
    .filter(({ weight }) => weight >= leastWeight)
    .sort((a, b) => b.weight - a.weight || a.frequencyHz - b.frequencyHz);
}

/** Modes within `apartHz` of the first of their group are one group: their frequencies cannot tell them apart. */
function groupsOf(modes: readonly Mode[], apartHz: number): number[] {
  let group = -1;
  let first = -Infinity;
  return modes.map(({ frequencyHz }) => {
    if (frequencyHz - first > apartHz) {
      group++;
      first = frequencyHz;
    }
    return group;
  });
}

/** Chance that a ridge is one of its candidates. */
export const chanceOfAny = (candidates: readonly Candidate[]): number =>
  candidates.reduce((sum, { weight }) => sum + weight, 0);
