import { drain } from '../signal/drain.js';
import { weigh, flat, whitenTails, type StretchFit } from './band-fit.js';
import { bandsOf, noiseRange, type Band, type Whitened } from './bands.js';
import { deviationsOf } from './fisher.js';
import { fitNoise } from './noise-model.js';
import { mergeCandidates, priceOf, prune } from './order.js';
import { reachHz, type Poles } from './poles.js';
import type { Decimated } from './reverse-decimation.js';
import { joinTwins } from './twins.js';
import { zoomEsprit } from './zoom-esprit.js';

/** What a start value must be worth under the floor, in nats, and what it must be worth under the noise that it leaves. */
const firstPenalty = 60;
const secondPenalty = 12;
const refinements = 3;

/** Poles of one band as a first look has them: those of the start values that are worth their price, refined a little. */
function lookAt(band: Band, whitened: Whitened, start: Poles, leadSeconds: readonly number[]): StretchFit {
  const channels = whitened.data.channels.length;
  const range = noiseRange(band.centreHz);
  const first = flat(whitened);
  const kept = prune(first, start, priceOf(firstPenalty, channels));
  const noise = fitNoise(first, first.at(kept), range);
  const model = weigh(whitened, noise);
  const poles = prune(model, kept, priceOf(secondPenalty, channels));
  const state = model.minimiser.minimise(model.whole, poles, refinements);
  const deviations = deviationsOf(model, state, leadSeconds);
  const { ownFromHz, ownToHz } = band;
  return { band, ownFromHz, ownToHz, whitened, ...joinTwins(model, state, deviations), noise, whiteness: 0 };
}

/** What the fit has of one recording before its search begins: bands, and their start values. */
export interface Begun {
  readonly bands: readonly Band[];
  readonly tails: readonly Whitened[];
  /** Frequency (Hz) and decay rate (1/s), of all bands. */
  readonly candidates: readonly (readonly [number, number])[];
}

/** The beginning of a fit of one recording by itself, where the fit proper begins with the comparison of several. */
export function beginAlone(decimated: Decimated): Begun {
  const bands = bandsOf([decimated]);
  const tails = bands.map((band) => whitenTails(band, []));
  const candidates = bands.flatMap((band, k) => {
    const { window, ownFromHz, ownToHz } = band;
    return drain(zoomEsprit(tails[k].data, window.decaySeconds, ownFromHz, ownToHz));
  });
  return { bands, tails, candidates };
}

/** A first answer from start values: no search for the order, one noise for each band. */
export function firstLook({ bands, tails, candidates }: Begun, leadSeconds: readonly number[]): StretchFit[] {
  return bands.map((band, k) => {
    const heard = candidates.filter(([f]) => Math.abs(f - band.centreHz) < reachHz);
    return lookAt(band, tails[k], mergeCandidates(heard), leadSeconds);
  });
}
