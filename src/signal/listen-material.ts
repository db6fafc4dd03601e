/** What is played to hear a room: made here from formulas, the same samples every time. */

import * as maths from './maths.js';

export type MaterialKind = 'bass-line' | 'tone-walk' | 'burst';
export const materialKinds: readonly MaterialKind[] = ['bass-line', 'tone-walk', 'burst'];

export interface MaterialNote {
  readonly startSeconds: number;
  readonly seconds: number;
  /** Of its lowest partial, Hz. */
  readonly frequencyHz: number;
}

export interface Material {
  /** Full scale is 1; not yet set to a level. */
  readonly samples: Float64Array;
  readonly sampleRate: number;
  readonly notes: readonly MaterialNote[];
}

/** Concert pitch, Hz (ISO 16:1975), and the semitone of equal temperament. */
const concertPitchHz = 440;
const semitone = maths.power(2, 1 / 12);
/** Lowest note of a five-string bass, B0, to the E an octave above the open string of a four-string one. Hz. */
const lowestRootHz = 30.8;
const highestRootHz = 82.5;
/** Below this no tone of the material lies: no bass source plays it. Hz. */
const lowestToneHz = 20;

/** Half a bar per row, in eighths: semitones above the root, null a rest. The last rest lets the room be heard alone. */
const line: readonly (number | null)[] = [
  ...[0, null, 0, 7],
  ...[10, 12, null, 7],
  ...[5, null, 5, 3],
  ...[0, null, null, null],
];
const eighthSeconds = 0.3125;
/** Notes are short, so that there is a gap to hear between them. */
const pluckSeconds = 0.2;

/** The note of equal temperament next to a frequency, brought into the range of a bass by octaves. */
export function bassRootHz(nearHz: number): number {
  let root = concertPitchHz * maths.power(semitone, Math.round(12 * maths.log2(nearHz / concertPitchHz)));
  while (root > highestRootHz) root /= 2;
  while (root < lowestRootHz) root *= 2;
  return root;
}

/** Raised-cosine ends: 1 in the middle, 0 at both ends of a note. */
function ends(t: number, seconds: number, rise: number, fall: number): number {
  const up = Math.min(1, t / rise);
  const down = Math.min(1, (seconds - t) / fall);
  return 0.25 * (1 - maths.cos(Math.PI * up)) * (1 - maths.cos(Math.PI * Math.max(0, down)));
}

/** A plucked string: partials to 900 Hz, the higher the sooner gone. */
function addPluck(
  samples: Float64Array,
  sampleRate: number,
  { startSeconds, frequencyHz }: MaterialNote,
): void {
  const begin = Math.ceil(startSeconds * sampleRate);
  const top = Math.min(900, 0.4 * sampleRate);
  const end = Math.min(samples.length, Math.floor((startSeconds + pluckSeconds) * sampleRate));
  for (let k = 1; k * frequencyHz <= top && k <= 12; k++) {
    const w = 2 * Math.PI * k * frequencyHz;
    for (let n = begin; n < end; n++) {
      const t = n / sampleRate - startSeconds;
      const envelope = ends(t, pluckSeconds, 0.006, 0.03) * maths.exp(-3 * k * t);
      samples[n] += (0.5 / maths.power(k, 1.2)) * envelope * maths.sin(w * t);
    }
  }
}

function addTone(samples: Float64Array, sampleRate: number, note: MaterialNote): void {
  const { startSeconds, seconds, frequencyHz } = note;
  const end = Math.min(samples.length, Math.floor((startSeconds + seconds) * sampleRate));
  for (let n = Math.ceil(startSeconds * sampleRate); n < end; n++) {
    const t = n / sampleRate - startSeconds;
    samples[n] += 0.7 * ends(t, seconds, 0.02, 0.02) * maths.sin(2 * Math.PI * frequencyHz * t);
  }
}

/** Cycles of a burst: five in a raised cosine, after Linkwitz 1980 (J. Audio Eng. Soc. 28:250). */
const burstCycles = 5;

function addBurst(samples: Float64Array, sampleRate: number, note: MaterialNote): void {
  const { startSeconds, seconds, frequencyHz } = note;
  const end = Math.min(samples.length, Math.floor((startSeconds + seconds) * sampleRate));
  for (let n = Math.ceil(startSeconds * sampleRate); n < end; n++) {
    const t = n / sampleRate - startSeconds;
    const window = 0.5 * (1 - maths.cos((2 * Math.PI * t) / seconds));
    samples[n] += 0.9 * window * maths.sin(2 * Math.PI * frequencyHz * t);
  }
}

function notesOf(kind: MaterialKind, centreHz: number): MaterialNote[] {
  if (kind === 'bass-line') {
    const root = bassRootHz(centreHz);
    return line.flatMap((step, k) =>
      step === null
        ? []
        : [
            {
              startSeconds: k * eighthSeconds,
              seconds: pluckSeconds,
              frequencyHz: root * maths.power(semitone, step),
            },
          ],
    );
  }
  const audible = (note: MaterialNote): boolean => note.frequencyHz >= lowestToneHz;
  const placed = (notes: MaterialNote[], everySeconds: number): MaterialNote[] =>
    notes.filter(audible).map((note, k) => ({ ...note, startSeconds: k * everySeconds }));
  if (kind === 'tone-walk')
    return placed(
      Array.from({ length: 13 }, (_, k) => ({
        ...{ startSeconds: 0, seconds: 0.3, frequencyHz: centreHz * maths.power(semitone, k - 6) },
      })),
      0.5,
    );
  return placed(
    [Math.SQRT1_2, 1, Math.SQRT2].map((times) => {
      const frequencyHz = centreHz * times;
      return { startSeconds: 0, seconds: burstCycles / frequencyHz, frequencyHz };
    }),
    1.5,
  );
}

/** The length of each kind without the silence that follows, s. */
const lengths: Readonly<Record<MaterialKind, (notes: readonly MaterialNote[]) => number>> = {
  'bass-line': () => line.length * eighthSeconds,
  'tone-walk': (notes) => notes.length * 0.5,
  burst: (notes) => notes.length * 1.5,
};

/**
 * A bass line of plucked notes in the key nearest to a frequency; a walk of thirteen tones in semitones through it; or
 * three bursts, half an octave below, at, and half an octave above it.
 *
 * @param centreHz 20 to 400 Hz; outside, the nearer end is taken.
 */
export function listenMaterial(kind: MaterialKind, centreHz: number, sampleRate: number): Material {
  const centre = Math.min(400, Math.max(lowestToneHz, centreHz));
  const notes = notesOf(kind, centre);
  const samples = new Float64Array(Math.ceil(lengths[kind](notes) * sampleRate));
  const add = { 'bass-line': addPluck, 'tone-walk': addTone, burst: addBurst }[kind];
  for (const note of notes) add(samples, sampleRate, note);
  return { samples, sampleRate, notes };
}
