/**
 * For one ridge everything that can be done, whether or not it fits: where to, what decay and level are to be expected
 * after it, and what it does to the other ridges and at the other seats. Codes and numbers, never sentences.
 */
import { modeShape } from '../room/box.js';
import type { ModeOrder, RoomSize } from '../room/types.js';
import { chainGainDb, matchedCut, sectionsOf, standingDb, type SeatLevels } from '../seats/index.js';
import { filterSampleRate } from '../seats/sum.js';
import type { PositionMetres } from '../signal/types.js';
import { addedDamping, decayWith, pressurePlace } from './absorb.js';
import { believedDb } from './placement.js';
import { cautionsOf, namedOrder } from './remedies.js';
import { absorbRemedy } from './remedy-absorb.js';
import { addSourceRemedy, moveRemedy } from './remedy-place.js';
import { driveChangeDb, shortestSourceMove } from './source-moves.js';
import type { Diagnosis, Remedy, Ridge } from './types.js';
import * as maths from '../signal/maths.js';

export const optionKinds = ['absorb', 'cut', 'move-seat', 'move-source', 'add-source', 'leave'] as const;
export type OptionKind = (typeof optionKinds)[number];

/** Why an option is not among what fits a ridge. */
export type NotFitting =
  'not-a-mode' | 'move-everywhere' | 'cut-not-single' | 'cut-no-peak' | 'cut-no-limit' | 'leave-audible';

/** What an option does besides: to another ridge, or at a seat. */
export type SideEffect =
  | {
      readonly on: 'ridge';
      readonly frequencyHz: number;
      readonly changeDb: number | null;
      /** Where its decay changes too. */
      readonly expectedSeconds: number | null;
    }
  | {
      readonly on: 'seat';
      readonly seat: number;
      /** Level about the ridge re the seat's own mean, after it. */
      readonly standingDb: number;
      readonly heard: boolean;
    };

export interface RemedyOption {
  readonly kind: OptionKind;
  /** `first`: what fits best; `fits`: what also may help; `unlikely`: what it is not for, and why. */
  readonly standing: 'first' | 'fits' | 'unlikely';
  readonly against: NotFitting | null;
  readonly params: Remedy['params'];
  readonly expectedSeconds: number | null;
  readonly expectedDb: number | null;
  readonly sideEffects: readonly SideEffect[];
  readonly cautions: readonly string[];
}

export interface OptionPlaces {
  /** Of the recordings of the diagnosis, in their order; null where not given. */
  readonly seats: readonly (PositionMetres | null)[];
  /** Of all sources that play; null where not given. */
  readonly sources: readonly (PositionMetres | null)[];
  /** Levels at the seats, in the same order; null where not known. */
  readonly levels: SeatLevels | null;
}

/** A change of another ridge that is not worth a line: dB, and share of the decay. */
const worthDb = 1.5;
const worthShare = 0.05;
/** Tuned panels and resonators work over about so much to each side (common practice): beyond it nothing is promised. */
const tunedOctaves = 0.5;
const noPeakDb = -15;
const deepestCutDb = -12;
/** Without a room: only numbers that do not rest on it. */
const speedWithoutRoom = 343.2;

interface Known {
  readonly ridge: Ridge;
  readonly order: ModeOrder | null;
  readonly size: RoomSize | null;
  readonly speed: number;
  readonly sources: readonly PositionMetres[] | null;
  /** Place of the recording that hears it loudest: moves are reckoned from there. */
  readonly loudest: PositionMetres | null;
  /** The other ridges with the mode that they may be. */
  readonly others: readonly { readonly ridge: Ridge; readonly order: ModeOrder | null }[];
}

const everyKnown = (list: readonly (PositionMetres | null)[]): readonly PositionMetres[] | null =>
  list.length > 0 && list.every((one) => one !== null) ? list : null;

/** @param index Of the ridge. */
export function remedyOptions(diagnosis: Diagnosis, index: number, places: OptionPlaces): RemedyOption[] {
  const ridge = diagnosis.ridges[index];
  const room = diagnosis.room?.room ?? null;
  const known: Known = {
    ridge,
    // Axes and corners are those of a box.
    order: room?.plan ? null : namedOrder(ridge.candidates),
    size: room && !room.plan ? room.size : null,
    speed: room?.speedOfSoundMetresPerSecond ?? speedWithoutRoom,
    sources: everyKnown(places.sources),
    loudest: loudestSeat(diagnosis, ridge, places),
    others: diagnosis.ridges
      .filter((other) => other !== ridge && other.resonance !== null)
      .map((other) => ({ ridge: other, order: room?.plan ? null : namedOrder(other.candidates) })),
  };
  const rank = (kind: OptionKind): number => {
    const at = ridge.remedies.findIndex((one) => one.kind === kind);
    return at < 0 ? Infinity : at;
  };
  const sorted = [...optionKinds].sort((a, b) => {
    const [x, y] = [rank(a), rank(b)];
    return x === y ? 0 : x - y;
  });
  const first = sorted.find((kind) => rank(kind) < Infinity);
  return sorted.map((kind): RemedyOption => {
    const listed = ridge.remedies.find((one) => one.kind === kind);
    const remedy = fitted(kind, listed, diagnosis, places, known);
    const number = (name: string): number | null => {
      const value = remedy.params[name];
      return typeof value === 'number' && Number.isFinite(value) ? value : null;
    };
    return {
      kind,
      standing: kind === first ? 'first' : listed ? 'fits' : 'unlikely',
      against: listed ? null : againstOf(kind, diagnosis, known),
      params: remedy.params,
      expectedSeconds:
        number('expectedSeconds') ?? (kind === 'absorb' || kind === 'cut' ? null : ridge.decayTimeSeconds),
      expectedDb: kind === 'leave' ? 0 : number('expectedDb'),
      sideEffects: effectsOf(kind, remedy, places, known),
      cautions: cautionsOf[kind],
    };
  });
}

function againstOf(kind: OptionKind, { resonances, files }: Diagnosis, { ridge }: Known): NotFitting {
  const resonance = ridge.resonance === null ? null : resonances[ridge.resonance];
  if (kind === 'leave') return 'leave-audible';
  if (!resonance || ['hum', 'source', 'equaliser'].includes(ridge.cause)) return 'not-a-mode';
  if (kind === 'cut') {
    if (resonance.kind !== 'resolved') return 'cut-not-single';
    return resonance.levelDb < noPeakDb ? 'cut-no-peak' : 'cut-no-limit';
  }
  return ridge.seats.length === files.length ? 'move-everywhere' : 'not-a-mode';
}

/** The remedy as the diagnosis told it, or made now; with the places of all sources, of which it knew one at most. */
function fitted(
  kind: OptionKind,
  listed: Remedy | undefined,
  diagnosis: Diagnosis,
  places: OptionPlaces,
  known: Known,
): Remedy {
  const { ridge, order, size, speed, sources } = known;
  if (kind === 'leave') return listed ?? { kind, params: {} };
  if (kind === 'cut') return listed ?? cutRemedy(ridge);
  const room = size ? (diagnosis.room?.room ?? null) : null;
  const resonance = ridge.resonance === null ? null : diagnosis.resonances[ridge.resonance];
  const evidence = {
    ridge: {
      ...ridge,
      frequencySdHz: 0,
      verdict: { limitSeconds: ridge.limitSeconds, limitName: ridge.limitName, above: true },
    },
    resonance,
    cause: ridge.cause,
    candidates: size ? ridge.candidates : [],
    seatCount: diagnosis.files.length,
    speedOfSoundMetresPerSecond: speed,
    room,
    seats: places.seats,
    sources: sources?.length === 1 ? places.seats.map(() => sources[0]) : places.seats.map(() => null),
  };
  const everywhere = diagnosis.files.length > 1 && ridge.seats.length === diagnosis.files.length;
  const why = diagnosis.files.length === 1 ? 'one-seat' : everywhere ? 'everywhere' : 'some-seats';
  if (kind === 'absorb') return listed ?? absorbRemedy(evidence, order, why);
  if (kind === 'move-seat') return listed ?? moveRemedy(kind, evidence, order, why);
  if (kind === 'add-source') return addSourceRemedy(evidence, order, why);
  const plain = moveRemedy('move-source', { ...evidence, sources: [] }, order, why);
  const move = order && size && sources ? shortestSourceMove(order, size, sources) : null;
  if (!move) return plain;
  const { axis, metres, changeDb, source } = move;
  return {
    kind,
    params: { ...plain.params, axis, moveMetres: metres, expectedDb: changeDb, source },
  };
}

/** A matched cut also where it is not advised: what it would be is shown all the same, where there is something to match. */
function cutRemedy({ frequencyHz, decayTimeSeconds: decay, limitSeconds: limit }: Ridge): Remedy {
  if (decay === null || limit === null || decay <= limit) return { kind: 'cut', params: { frequencyHz } };
  const target = Math.max(limit, decay * maths.power(10, deepestCutDb / 20));
  const { frequencyHz: centre, gainDb, q, targetSeconds } = matchedCut(frequencyHz, decay, target);
  // What is not one mode alone does not take the decay of the filter: none is promised.
  return { kind: 'cut', params: { frequencyHz: centre, gainDb, q, targetSeconds, expectedDb: gainDb } };
}

function effectsOf(kind: OptionKind, { params }: Remedy, places: OptionPlaces, known: Known): SideEffect[] {
  const { order, size, sources, others } = known;
  const moved = params.moveMetres;
  const along = String(params.axis) as 'x' | 'y' | 'z';
  const byLevel = (change: (other: ModeOrder) => number): SideEffect[] =>
    others.flatMap(({ ridge, order: other }): SideEffect[] => {
      if (!other) return [];
      const changeDb = change(other);
      return Math.abs(changeDb) < worthDb
        ? []
        : [{ on: 'ridge', frequencyHz: ridge.frequencyHz, changeDb, expectedSeconds: null }];
    });
  if (kind === 'cut') return cutEffects(params, places, known);
  if (!size || !order) return [];
  if (kind === 'absorb') return absorbEffects(params, known, size, order);
  if (kind === 'move-seat' && typeof moved === 'number') {
    const at = known.loudest;
    if (!at) return [];
    const to = { ...at, [along]: at[along] + moved };
    return byLevel((other) => {
      const [was, is] = [at, to].map((place) => Math.abs(modeShape(other, size, place)));
      return Math.max(
        believedDb,
        Math.min(-believedDb, 20 * maths.log10(Math.max(1e-9, is) / Math.max(1e-9, was))),
      );
    });
  }
  if (!sources) return [];
  if (kind === 'move-source' && typeof moved === 'number') {
    const which = Number(params.source);
    const after = sources.map((at, k) => (k === which ? { ...at, [along]: at[along] + moved } : at));
    return byLevel((other) => driveChangeDb(other, size, sources, after));
  }
  if (kind === 'add-source' && typeof params.x === 'number') {
    const added = { x: params.x, y: Number(params.y), z: Number(params.z) };
    return byLevel((other) => driveChangeDb(other, size, sources, [...sources, added]));
  }
  return [];
}

function loudestSeat(
  { resonances }: Diagnosis,
  ridge: Ridge,
  { seats }: OptionPlaces,
): PositionMetres | null {
  const levels = ridge.resonance === null ? [] : resonances[ridge.resonance].levelsDb;
  return seats[levels.indexOf(Math.max(...levels))] ?? null;
}

function cutEffects(
  params: Remedy['params'],
  { levels, seats }: OptionPlaces,
  { ridge, others }: Known,
): SideEffect[] {
  const { frequencyHz, gainDb, q } = params;
  if (typeof gainDb !== 'number' || typeof q !== 'number' || typeof frequencyHz !== 'number') return [];
  const sections = sectionsOf([{ kind: 'peaking', frequencyHz, gainDb, q }], filterSampleRate);
  const gains = chainGainDb(
    sections,
    others.map((other) => other.ridge.frequencyHz),
    filterSampleRate,
  );
  const beside = others.flatMap((other, k): SideEffect[] =>
    Math.abs(gains[k]) < worthDb
      ? []
      : [{ on: 'ridge', frequencyHz: other.ridge.frequencyHz, changeDb: gains[k], expectedSeconds: null }],
  );
  if (!levels) return beside;
  const reach = maths.power(2, 1 / 12);
  const about = Array.from({ length: 9 }, (_, k) => frequencyHz * maths.power(reach, (k - 4) / 4));
  const mean = chainGainDb(sections, about, filterSampleRate).reduce((sum, gain) => sum + gain / 9, 0);
  return [
    ...seats.map((_, seat): SideEffect => ({
      on: 'seat',
      seat,
      standingDb: standingDb(levels, seat, frequencyHz) + mean,
      heard: ridge.seats.includes(seat),
    })),
    ...beside,
  ];
}

/** The absorber that was told, and what it does to its neighbours within its reach. */
function absorbEffects(
  params: Remedy['params'],
  known: Known,
  size: RoomSize,
  order: ModeOrder,
): SideEffect[] {
  const { areaSquareMetres, coefficient } = params;
  if (typeof areaSquareMetres !== 'number' || typeof coefficient !== 'number') return [];
  const absorber = { kind: 'panel' as const, areaSquareMetres, coefficient, ...pressurePlace(order, size) };
  return known.others.flatMap(({ ridge, order: other }): SideEffect[] => {
    const { frequencyHz, decayTimeSeconds: decay } = ridge;
    if (!other || decay === null) return [];
    if (Math.abs(maths.log2(frequencyHz / known.ridge.frequencyHz)) > tunedOctaves) return [];
    const expectedSeconds = decayWith(decay, addedDamping(other, size, known.speed, absorber));
    if (expectedSeconds > decay * (1 - worthShare)) return [];
    return [
      { on: 'ridge', frequencyHz, changeDb: 20 * maths.log10(expectedSeconds / decay), expectedSeconds },
    ];
  });
}
