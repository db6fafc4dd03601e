import type { AbsorberKind } from './absorb.js';
import * as maths from '../signal/maths.js';

/** One way to build a tuned panel: what it weighs and how deep the air behind it is. */
export interface PanelDesign {
  readonly massKilogramsPerSquareMetre: number;
  readonly depthMetres: number;
}

/** One way to build a resonator: necks of an area and a length before a volume. */
export interface ResonatorDesign {
  readonly neckSquareMetres: number;
  readonly neckMetres: number;
  readonly volumeCubicMetres: number;
}

/** f = 60 / sqrt(m d), m in kg/m2 and d in m; 59.9 with air behind, 50.7 where the space is filled (derived). */
const panelConstant = 60;
const filledConstant = 50.7;
/** f = 55 sqrt(S / (l V)), c / 2 pi = 54.6 (derived). */
const resonatorConstant = 55;

export const panelFrequency = (
  massKilogramsPerSquareMetre: number,
  depthMetres: number,
  filled = false,
): number => (filled ? filledConstant : panelConstant) / Math.sqrt(massKilogramsPerSquareMetre * depthMetres);

/** Air depth behind a panel of a mass that tunes it to a frequency, m. */
export const panelDepth = (
  frequencyHz: number,
  massKilogramsPerSquareMetre: number,
  filled = false,
): number =>
  maths.square((filled ? filledConstant : panelConstant) / frequencyHz) / massKilogramsPerSquareMetre;

export const resonatorFrequency = ({
  neckSquareMetres,
  neckMetres,
  volumeCubicMetres,
}: ResonatorDesign): number =>
  resonatorConstant * Math.sqrt(neckSquareMetres / (neckMetres * volumeCubicMetres));

/** Volume behind a neck that tunes it to a frequency, m3. `neckMetres` includes the air that moves before its ends. */
export const resonatorVolume = (frequencyHz: number, neckSquareMetres: number, neckMetres: number): number =>
  maths.square(resonatorConstant / frequencyHz) * (neckSquareMetres / neckMetres);

/** How far porous material has to reach from a wall, m: a quarter of a wavelength. */
export const porousDepth = (frequencyHz: number, speedMetresPerSecond: number): number =>
  speedMetresPerSecond / (4 * frequencyHz);

/** Masses of sheets in use, plywood to doubled plasterboard, kg/m2 (common practice). */
const sheetMasses = [5, 9, 18];

/** Panels of usual masses for a frequency, those that fit in half a metre. */
export const panelDesigns = (frequencyHz: number): PanelDesign[] =>
  sheetMasses
    .map((mass) => ({ massKilogramsPerSquareMetre: mass, depthMetres: panelDepth(frequencyHz, mass) }))
    .filter(({ depthMetres }) => depthMetres <= 0.5 && depthMetres >= 0.02);

/** A neck of 100 cm2 and 10 cm before a volume. */
export function resonatorDesign(frequencyHz: number): ResonatorDesign {
  const [neckSquareMetres, neckMetres] = [0.01, 0.1];
  return {
    neckSquareMetres,
    neckMetres,
    volumeCubicMetres: resonatorVolume(frequencyHz, neckSquareMetres, neckMetres),
  };
}

/** What well-made absorbers of each kind reach at their own frequency: a cautious figure of common practice. */
export const usualCoefficient: Readonly<Record<AbsorberKind, number>> = {
  panel: 0.5,
  resonator: 0.6,
  porous: 0.6,
};
