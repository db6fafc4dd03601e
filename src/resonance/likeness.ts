import type { Job } from '../signal/types.js';
import { whitenTails } from './band-fit.js';
import type { Band, Whitened } from './bands.js';
import { Model, type ModalData, type State } from './model.js';
import { mergeCandidates } from './order.js';
import type { Poles } from './poles.js';
import type { Weights } from './weights.js';
import { zoomEsprit } from './zoom-esprit.js';
import * as maths from '../signal/maths.js';

/** Start values are looked for up to here; above, modes crowd and say little. Hz. */
const highestHz = 140;
/** Knots of the weights that make every stretch of the decay count alike. s. */
const knotSeconds = 0.1;
const refinements = 3;
/** Time scales are tried this far apart, 0.8 % is nearly 5 K; decay times in these ratios. */
const scales = [-0.008, -0.004, 0, 0.004, 0.008];
const ratios = [0.5, 0.71, 1.41, 2];

/** One recording by itself, roughly. */
export interface Alone {
  readonly band: Band;
  readonly whitened: Whitened;
  readonly model: Model;
  readonly poles: Poles;
  /** Share of its even energy that its own poles explain. */
  readonly explained: number;
}

/** Weights under which each tenth of a second of the decay, down into the noise, holds the same energy. */
function evenWeights({ channels: [{ re, im }], count, sampleRate }: ModalData): Weights {
  const size = Math.max(8, Math.round(knotSeconds * sampleRate));
  const knots = [0];
  while (knots[knots.length - 1] + 2 * size < count) knots.push(knots[knots.length - 1] + size);
  knots.push(count);
  const levels = knots.map((knot) => {
    const from = Math.max(0, Math.round(knot - size / 2));
    const to = Math.min(count, Math.round(knot + size / 2));
    let sum = 0;
    for (let n = from; n < to; n++) sum += re[n] * re[n] + im[n] * im[n];
    // The noise of the samples has unit variance in each part.
    return 1 / (sum / Math.max(1, to - from) + 2);
  });
  const squares = new Float64Array(count);
  for (let q = 0; q + 1 < knots.length; q++) {
    const slope = maths.log(levels[q + 1] / levels[q]) / (knots[q + 1] - knots[q]);
    for (let n = knots[q]; n < knots[q + 1]; n++) squares[n] = levels[q] * maths.exp(slope * (n - knots[q]));
  }
  return { knots, levels, squares };
}

/** Poles of one recording of a band, refined under weights that let the late decay count as much as the early. */
export function* alone(band: Band, channel: number): Job<Alone> {
  const single: Band = {
    ...band,
    signals: [band.signals[channel]],
    floors: [band.floors[channel]],
  };
  const whitened = whitenTails(single, []);
  const { data } = whitened;
  const found = yield* zoomEsprit(data, band.window.decaySeconds, 0, highestHz);
  const model = new Model(data, evenWeights(data));
  const own = model.minimiser.minimise(model.whole, mergeCandidates(found), refinements);
  return { band: single, whitened, model, poles: own.poles, explained: explainedBy(model, own) };
}

const explainedBy = ({ whole }: Model, { cost }: State): number => 1 - cost / whole.energy;

const stretched = ({ frequencyHz, logDecay }: Poles, stretch: number): Poles => ({
  frequencyHz: frequencyHz.map((f) => f * (1 + stretch)),
  logDecay: logDecay.map((u) => u - maths.log1p(stretch)),
});

/** Whether the poles of one recording explain this share of what another's own explain, at any time scale. */
export function isLike(of: Alone, by: Alone, leastShare: number): boolean {
  const enough = leastShare * Math.max(of.explained, 1e-9);
  if (explainedBy(of.model, of.model.at(by.poles)) >= enough) return true;
  return 1 - leastLeft(of, by).left >= enough;
}

/** What the poles of one recording leave of another at the best time scale. */
function leastLeft(of: Alone, by: Alone): { left: number; stretch: number } {
  const left = scales.map((scale) => {
    const state = of.model.at(stretched(by.poles, scale));
    return Math.max(1e-9, 1 - explainedBy(of.model, state));
  });
  let best = 0;
  left.forEach((value, k) => {
    if (value < left[best]) best = k;
  });
  let stretch = scales[best];
  if (best > 0 && best < scales.length - 1) {
    const [a, b, c] = [best - 1, best, best + 1].map((k) => maths.log(left[k]));
    stretch += (0.5 * (scales[1] - scales[0]) * (a - c)) / Math.max(a - 2 * b + c, 1e-12);
  }
  const there = 1 - explainedBy(of.model, of.model.at(stretched(by.poles, stretch)));
  return { left: Math.min(left[best], Math.max(1e-9, there)), stretch };
}

export interface Likeness {
  readonly stretch: number;
  /** Ratio of decay times, of those tried, at which most is explained; and how much more, of what is not explained. */
  readonly ratio: number;
  readonly gain: number;
}

/** At which time scale and with which decay times the poles of one recording explain another best. */
export function likeness(of: Alone, by: Alone): Likeness {
  const { left: least, stretch } = leastLeft(of, by);
  let ratio = 1;
  let leastOfRatios = least;
  for (const tried of ratios) {
    const { frequencyHz, logDecay } = stretched(by.poles, stretch);
    const state = of.model.at({ frequencyHz, logDecay: logDecay.map((u) => u + maths.log(tried)) });
    if (1 - explainedBy(of.model, state) >= leastOfRatios) continue;
    leastOfRatios = 1 - explainedBy(of.model, state);
    ratio = tried;
  }
  return {
    stretch,
    ratio,
    gain: 1 - leastOfRatios / least,
  };
}
