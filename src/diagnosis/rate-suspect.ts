import type { Resonance } from '../resonance/types.js';
import { roomModeDensity, roomModes } from '../room/room.js';
import type { Room } from '../room/types.js';
import type { Note } from '../signal/types.js';
import { rings } from './ridges.js';
import * as maths from '../signal/maths.js';

/** Sample rates in use, Hz. */
const standardRates = [8000, 16000, 22050, 32000, 44100, 48000, 88200, 96000, 176400, 192000];
/** Spread of the modes in this test, tighter than that of single matches: one common ratio must fit them all. */
const spread = 0.012;
/** Odds that a resonance is of no predicted mode. */
const noneOdds = 0.3;
/** Natural logarithm of the odds from which the ratio is believed: one in a thousand rooms by chance. */
const believed = 7;
const fewestResonances = 4;
/** Only the lowest say anything: higher up some mode lies near every frequency. */
const mostResonances = 10;
/** The best common ratio must lie this near to one of two standard rates; a wrong size is rarely so exact. */
const nearRatio = 0.012;

/**
 * Whether every resonance is off the predicted modes by one common ratio of two standard sample rates, as where 48 kHz
 * data carry a 44.1 kHz label. A scale of the room's size does the same, so the note says "may".
 */
export function rateSuspect(
  resonances: readonly Resonance[],
  room: Room | null,
  labelledRate: number,
): Note | null {
  if (!room) return null;
  const lowest = resonances
    .filter(rings)
    .filter(({ frequencySdHz, frequencyHz }) => frequencySdHz < 0.02 * frequencyHz)
    .slice(0, mostResonances);
  if (lowest.length < fewestResonances) return null;
  const topHz = lowest[lowest.length - 1].frequencyHz * 2.3;
  const modes = roomModes(room, topHz);
  /** Log-likelihood of the resonances where every true frequency is `scale` times that read. */
  const fitOf = (scale: number): number =>
    lowest.reduce((sum, { frequencyHz, frequencySdHz }) => {
      const f = frequencyHz * scale;
      const chance = modes.reduce((all, mode) => {
        const sd = maths.hypot(spread * mode.frequencyHz, frequencySdHz * scale);
        const z = (f - mode.frequencyHz) / sd;
        return Math.abs(z) > 6 ? all : all + maths.exp(-0.5 * z * z) / (Math.sqrt(2 * Math.PI) * sd);
      }, 0);
      const density = roomModeDensity(room, f);
      // Per mode of the room: otherwise a larger scale would gain by density alone.
      return sum + maths.log(chance / density + noneOdds);
    }, 0);
  const asLabelled = fitOf(1);
  let best: { rate: number; gain: number } | null = null;
  for (const rate of standardRates) {
    const ratio = rate / labelledRate;
    if (ratio === 1 || ratio < 0.45 || ratio > 2.2) continue;
    let gain = -Infinity;
    for (let step = -2; step <= 2; step++)
      gain = Math.max(gain, fitOf(ratio * (1 + (step / 2) * nearRatio)) - asLabelled);
    if (!best || gain > best.gain) best = { rate, gain };
  }
  if (!best || best.gain < believed) return null;
  return {
    code: 'rate-suspect',
    params: { ratio: labelledRate / best.rate, labelledRate, likelyRate: best.rate },
  };
}
