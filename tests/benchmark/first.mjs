/** When the first answer of a fit comes and how good it is: by the clock, warm, and against truth and bound. */
import { boundOf } from './bound.mjs';
import { makeCell, paramsOf, recordingsOf } from './cells.mjs';
import { estimatesOf, median, readTruth, score, together } from './score.mjs';

/** By the clock, on the machine that runs it. ms. */
export const firstWithinMs = 50;
const cells = /** @type {const} */ (['S 55', 'R 55', 'R 70', 'V 70', 'R5 55', 'R5 70']);

/** @typedef {{ cell: string, ms: number, worstMs: number, wholeMs: number, recall: number, zf: number, zT: number, wrong: number }} First */

/** One fit with its first answer, each with its time from the start. */
function timed(fitResonances, recordings, params) {
  const begin = performance.now();
  const job = fitResonances(recordings, { ...params, draft: true });
  let first = null;
  for (;;) {
    const next = job.next();
    const ms = performance.now() - begin;
    if (next.done) return { first, wholeMs: ms };
    if (next.value.draft) first = { ms, fit: next.value.draft };
  }
}

/** @returns {First[]} medians over seeds; each recording is fitted once before, uncounted */
export function firstAnswers(fitResonances, seeds = 8) {
  const truth = readTruth();
  return cells.map((cell) => {
    const [kind, snr] = cell.split(' ');
    const times = [];
    const wholes = [];
    const scores = [];
    for (let seed = 1; seed <= seeds; seed++) {
      const made = makeCell(kind, seed, Number(snr));
      timed(fitResonances, recordingsOf(made), paramsOf(kind));
      const { first, wholeMs } = timed(fitResonances, recordingsOf(made), paramsOf(kind));
      times.push(first.ms);
      wholes.push(wholeMs);
      scores.push(score(estimatesOf(first.fit.resonances), truth.get(`${cell} ${seed}`) ?? boundOf(made)));
    }
    const { recall, zf, zT, wrong } = together(scores);
    return {
      cell,
      ms: median(times),
      worstMs: Math.max(...times),
      wholeMs: median(wholes),
      recall,
      zf,
      zT,
      wrong,
    };
  });
}
