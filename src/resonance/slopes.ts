import type { Note } from '../signal/types.js';
import type { Draft } from './classify.js';
import type { Resonance } from './types.js';
import * as maths from '../signal/maths.js';

/** Two decays at one frequency: closer than this share of their mean bandwidth, and apart by this ratio. */
const slopesShare = 0.25;
const slopesRatio = 1.8;
/** Each of the two decay times must be known this well (sd of ln T) for the pair to mean anything. */
const slopesSdLog = 0.25;
/**
 * Real decays bend, and noise has colour: the fit then puts a slow pole beside a strong one, up to half a bandwidth away,
 * that starts so far below it and hangs so much longer. That is no second mode. dB.
 */
const companionShare = 0.5;
const faintShare = 1;
const companionRatio = 1.5;
const companionDb = -15;
/** A companion with less energy over the noise than this is none of its own anywhere in the bandwidth. dB. */
const faintDb = 26;
/** Below this, a late part is only noted. dB. */
const lateDb = -30;

/** Level re the strongest below which nothing is told: images of it that the filters leave reach -99. dB. */
const leastDb = -95;

const rmsOf = (starts: readonly number[]): number =>
  Math.sqrt(starts.reduce((sum, a) => sum + a * a, 0) / starts.length);

const decibels = (ratio: number): number => 20 * maths.log10(Math.max(ratio, 1e-15));

interface Pair {
  readonly early: Draft;
  readonly late: Draft;
  /** Distance in mean bandwidths, ratio of the decay times, and level of the late part re the early one. */
  readonly distance: number;
  readonly ratio: number;
  readonly levelDb: number;
}

function pairOf(a: Draft, b: Draft): Pair | null {
  if (a.kind === 'source' || b.kind === 'source') return null;
  const early = (a.decayTimeSeconds ?? 0) < (b.decayTimeSeconds ?? 0) ? a : b;
  const late = early === a ? b : a;
  const { decayTimeSeconds: short, q: shortQ } = early;
  const { decayTimeSeconds: long, q: longQ } = late;
  if (short === null || long === null || shortQ === null || longQ === null) return null;
  const width = 0.5 * (early.frequencyHz / shortQ + late.frequencyHz / longQ);
  return {
    early,
    late,
    distance: Math.abs(a.frequencyHz - b.frequencyHz) / width,
    ratio: long / short,
    levelDb: decibels(rmsOf(late.starts) / rmsOf(early.starts)),
  };
}

const bothKnown = ({ early, late }: Pair): boolean =>
  early.logDecaySd <= slopesSdLog && late.logDecaySd <= slopesSdLog;

const isCompanion = ({ late, distance, ratio, levelDb }: Pair): boolean =>
  distance < (late.rhoDb < faintDb ? faintShare : companionShare) &&
  ratio > companionRatio &&
  levelDb < companionDb;

const isTwoSlopes = (pair: Pair): boolean =>
  bothKnown(pair) &&
  pair.ratio > slopesRatio &&
  pair.levelDb > lateDb &&
  (pair.distance < slopesShare || isCompanion(pair));

/** The later decay with the early one beside it. */
const joined = ({ early, late }: Pair): Draft => ({
  ...late,
  kind: 'two-slopes',
  decayTimeEarlySeconds: early.decayTimeSeconds,
  early: {
    frequencyHz: early.frequencyHz,
    amplitudes: early.amplitudes,
    phasesRadians: early.phasesRadians,
  },
  starts: late.starts.map((a, c) => maths.hypot(a, early.starts[c])),
});

/** Drafts as resonances by ascending frequency, levels re the loudest of the room, and what is noted about them. */
export function tellResonances(all: readonly Draft[]): { resonances: Resonance[]; notes: Note[] } {
  if (all.length === 0) return { resonances: [], notes: [] };
  // Strong ones first: each takes the weaker ones that are no modes of their own.
  const left = [...all].sort((a, b) => rmsOf(b.starts) - rmsOf(a.starts));
  const drafts: Draft[] = [];
  const notes: Note[] = [];
  while (left.length > 0) {
    let draft = left.shift() as Draft;
    let noted = false;
    for (let k = 0; k < left.length;) {
      const pair = draft.kind === 'two-slopes' ? null : pairOf(draft, left[k]);
      if (pair && isTwoSlopes(pair)) {
        draft = joined(pair);
      } else if (pair && pair.late === left[k] && isCompanion(pair)) {
        if (!noted && draft.kind === 'resolved')
          notes.push({
            code: 'bent-decay',
            params: { frequencyHz: draft.frequencyHz, levelDb: pair.levelDb },
          });
        noted = true;
      } else {
        k++;
        continue;
      }
      left.splice(k, 1);
    }
    drafts.push(draft);
  }
  const strongest = rmsOf(drafts[0].starts);
  const told = drafts.filter(({ starts }) => rmsOf(starts) > strongest * maths.power(10, leastDb / 20));
  told.sort((a, b) => a.frequencyHz - b.frequencyHz);
  const rooms = told.filter(({ kind }) => kind !== 'hum' && kind !== 'source');
  const loudest = rooms.length > 0 ? rooms : told;
  const reference = Math.max(...loudest.map(({ starts }) => rmsOf(starts)));
  const resonances = told.map(({ logDecaySd: _, starts, ...draft }) => ({
    ...draft,
    levelDb: decibels(rmsOf(starts) / reference),
    levelsDb: starts.map((a) => decibels(a / reference)),
  }));
  return { resonances, notes };
}
