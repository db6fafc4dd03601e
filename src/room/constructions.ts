import * as maths from '../signal/maths.js';

/** What a wall is made of; `words/` has the name of each. */
export type ConstructionName =
  | 'concrete'
  | 'painted-brick'
  | 'plaster-on-brick'
  | 'plasterboard-on-studs'
  | 'wood-panelling'
  | 'wood-floor-on-joists'
  | 'parquet-on-concrete'
  | 'carpet'
  | 'carpet-on-underlay'
  | 'window'
  | 'large-pane'
  | 'heavy-curtain'
  | 'mineral-wool-50'
  | 'mineral-wool-100';

export interface Construction {
  readonly name: ConstructionName;
  /** Absorption coefficients of the octaves 125, 250 and 500 Hz. */
  readonly octaves: readonly [number, number, number];
  /** Between these lie the coefficients at 125 Hz of handbooks and built walls of this name. */
  readonly spread: readonly [number, number];
  /**
   * `handbook`: table of common building materials in M. D. Egan, Architectural Acoustics, 1988, as it is reprinted widely;
   * quoted from memory. `porous`: reckoned (see `constructions`).
   */
  readonly source: 'handbook' | 'porous';
}

/**
 * A few common constructions, with absorption for random incidence. What is from the handbook was measured in reverberation
 * rooms and is quoted from memory; the spreads are from memory. Mineral wool is reckoned: an equivalent fluid by Miki 1990,
 * J. Acoust. Soc. Jpn (E) 11:19 (constants from memory), 20 kPa s/m2, before a rigid wall, reacting locally, sound from all
 * sides (Kuttruff, Room Acoustics, ch. 2); its spread is that of 10 to 40 kPa s/m2. All tell a soft wall from a hard one, and
 * no more. Below 125 Hz hardly anybody measures; the value of 125 Hz is held there. Who knows better types coefficients.
 */
export const constructions: readonly Construction[] = [
  { name: 'concrete', octaves: [0.01, 0.01, 0.02], spread: [0.01, 0.02], source: 'handbook' },
  { name: 'painted-brick', octaves: [0.01, 0.01, 0.02], spread: [0.01, 0.03], source: 'handbook' },
  { name: 'plaster-on-brick', octaves: [0.013, 0.015, 0.02], spread: [0.01, 0.03], source: 'handbook' },
  { name: 'plasterboard-on-studs', octaves: [0.29, 0.1, 0.05], spread: [0.15, 0.4], source: 'handbook' },
  { name: 'wood-panelling', octaves: [0.28, 0.22, 0.17], spread: [0.2, 0.45], source: 'handbook' },
  { name: 'wood-floor-on-joists', octaves: [0.15, 0.11, 0.1], spread: [0.1, 0.3], source: 'handbook' },
  { name: 'parquet-on-concrete', octaves: [0.04, 0.04, 0.07], spread: [0.02, 0.06], source: 'handbook' },
  { name: 'carpet', octaves: [0.02, 0.06, 0.14], spread: [0.01, 0.05], source: 'handbook' },
  { name: 'carpet-on-underlay', octaves: [0.08, 0.24, 0.57], spread: [0.05, 0.15], source: 'handbook' },
  { name: 'window', octaves: [0.35, 0.25, 0.18], spread: [0.1, 0.4], source: 'handbook' },
  { name: 'large-pane', octaves: [0.18, 0.06, 0.04], spread: [0.05, 0.25], source: 'handbook' },
  { name: 'heavy-curtain', octaves: [0.14, 0.35, 0.55], spread: [0.05, 0.2], source: 'handbook' },
  { name: 'mineral-wool-50', octaves: [0.13, 0.34, 0.65], spread: [0.1, 0.2], source: 'porous' },
  { name: 'mineral-wool-100', octaves: [0.45, 0.73, 0.88], spread: [0.33, 0.5], source: 'porous' },
];

/** Centres of the octaves of the table. */
const octavesHz = [125, 250, 500] as const;

/** Centres of the third-octaves of the bass, IEC 61260-1:2014: 1000 G^(k/3), G = 10^0.3. */
export const bassBandsHz: readonly number[] = Array.from({ length: 12 }, (_, i) =>
  maths.power(10, (14 + i) / 10),
);

/** Absorption of a construction at a frequency, interpolated on its logarithm; the ends of the table hold beyond it. */
export function constructionAbsorption({ octaves }: Construction, frequencyHz: number): number {
  const place = maths.log2(frequencyHz / octavesHz[0]);
  if (place <= 0) return octaves[0];
  if (place >= octaves.length - 1) return octaves[octaves.length - 1];
  const below = Math.floor(place);
  return octaves[below] + (place - below) * (octaves[below + 1] - octaves[below]);
}
