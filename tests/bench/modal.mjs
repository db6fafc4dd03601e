/**
 * The table of the modal benchmark: sets S, P, R, V, R5 at 40, 55 and 70 dB against truth and Cramer-Rao bound.
 *   npm run bench -- modal [sets=S,P,R,V,R5] [snr=40,55,70] [seeds=20] [from=1] [held] [density] [speed] [--write]
 * `held` adds the sets, and three other rooms, with seeds from 401 on, by which no constant was chosen; `density` three sizes
 * of room at two levels of damping, seeds from 201 on, on which the intervals' share for unresolved neighbours is checked;
 * `speed` times the engine beside the prototype, where that is at hand, and its first answers. `speed --write` writes
 * these alone. `--write` by itself runs the table, `held` and `speed`, and puts
 * them with the reliability diagram into docs/resonances.md. Truth and bound are of the published table where it has the seed,
 * else computed.
 */
import { boundOf } from '../benchmark/bound.mjs';
import { makeCell, paramsOf, recordingsOf, rowsOf } from '../benchmark/cells.mjs';
import { firstAnswers, firstWithinMs } from '../benchmark/first.mjs';
import { missed, missedAims, prototypeFigures } from '../benchmark/gate.mjs';
import { writePage } from '../benchmark/page.mjs';
import { compareSpeed, loadPrototype } from '../benchmark/prototype.mjs';
import { estimatesOf, median, readTruth, score, together } from '../benchmark/score.mjs';

export { recordingsOf };

export function drain(job) {
  for (;;) {
    const next = job.next();
    if (next.done) return next.value;
  }
}

const option = (args, name, fallback) =>
  args.find((arg) => arg.startsWith(`${name}=`))?.slice(name.length + 1) ?? fallback;

function printCell(cell) {
  const { kind, snr, times } = cell;
  const p95 = [...times].sort((a, b) => a - b)[Math.floor(0.95 * (times.length - 1))];
  const n = (value, digits = 2) => value.toFixed(digits);
  const listed = (names) => (names.length === 0 ? 'kept' : `missed: ${names.join(', ')}`);
  console.log(
    `${kind.padEnd(2)} ${snr} ${cell.from} | ${n(cell.identifiable, 1)} ${n(cell.recall, 3)} | ${n(cell.zf)} ${n(cell.zT)} ${cell.outliers}/${cell.judged} | ` +
      `${n(cell.rmsF, 3)} Hz ${n(100 * cell.rmsT, 1)} % ${n(100 * cell.biasT, 1)} % | ${n(cell.reported, 1)} ${n(cell.strong, 1)} ${n(cell.confident, 1)} ${n(cell.wrong)} ${n(cell.phantoms)} | ` +
      `${n(cell.coverageF)} ${n(cell.coverageT)} | ${n(cell.widthF)} ${n(cell.widthT)} | ${n(cell.ms, 0)} ${n(p95, 0)} | ${listed(missed(cell))} | ` +
      `${listed(missedAims(cell).map(({ what }) => what))} | ${prototypeFigures[`${kind} ${snr}`]?.map((v) => v ?? '-').join(' ') ?? '-'}`,
  );
}

async function speeds(fit) {
  const prototype = await loadPrototype();
  if (!prototype) {
    console.log('The prototype is not at hand (RINGDOWN_BENCHMARK names its folder): no speeds beside it.');
    return null;
  }
  const ratios = compareSpeed(fit, prototype.analyse);
  console.log('cell | engine ms, prototype ms (CPU, medians) | ratio | at most');
  for (const { cell, ms, prototypeMs, ratio, bound } of ratios)
    console.log(
      `${cell} | ${ms.toFixed(0)} ${prototypeMs.toFixed(0)} | ${ratio.toFixed(2)} | ${bound.toFixed(2)}`,
    );
  return ratios;
}

function first(fitResonances) {
  const answers = firstAnswers(fitResonances);
  console.log(
    `first answer | after ms, median and worst; whole fit | recall, z, wrong | at most ${firstWithinMs} ms`,
  );
  for (const { cell, ms, worstMs, wholeMs, recall, zf, zT, wrong } of answers)
    console.log(
      `${cell} | ${ms.toFixed(0)} ${worstMs.toFixed(0)}; ${wholeMs.toFixed(0)} | ${recall.toFixed(2)}, ${zf.toFixed(2)} ${zT.toFixed(2)}, ${wrong.toFixed(2)}`,
    );
  return answers;
}

/** @param {string[]} args */
export async function run(args, engine) {
  const { fitResonances } = engine ?? (await import('../../dist/engine.js'));
  const fit = (recordings, params) => drain(fitResonances(recordings, params));
  const truth = readTruth();
  // With `speed` alone, the accuracy tables of the page stay as they are.
  const only = args.includes('speed') && args.includes('--write');
  const write = args.includes('--write') && !only;
  const levels = option(args, 'snr', '40,55,70').split(',').map(Number);
  const rows = rowsOf({
    kinds: option(args, 'sets', only ? '' : 'S,P,R,V,R5')
      .split(',')
      .filter(Boolean),
    seeds: Number(option(args, 'seeds', '20')),
    from: Number(option(args, 'from', '1')),
    held: write || args.includes('held'),
    density: args.includes('density'),
  });
  const cells = [];
  if (rows.length > 0)
    console.log(
      'set snr from | id/IR recall | zf zT out | rms f, T, bias T | reported strong confident wrong phantom | coverage f T | width f T | ms median p95 | gate | aims | prototype: recall zf zT wrong confident',
    );
  for (const { kind, from, seeds } of rows)
    for (const snr of levels) {
      const scores = [];
      const times = [];
      for (let seed = from; seed < from + seeds; seed++) {
        const made = makeCell(kind, seed, snr);
        const modes = truth.get(`${kind} ${snr} ${seed}`) ?? boundOf(made);
        const begin = process.cpuUsage();
        const { resonances } = fit(recordingsOf(made), paramsOf(kind));
        const { user, system } = process.cpuUsage(begin);
        times.push((user + system) / 1000);
        scores.push(score(estimatesOf(resonances), modes));
      }
      const cell = { kind, snr, from, seeds, ...together(scores), ms: median(times), times };
      cells.push(cell);
      printCell(cell);
    }
  const ratios = write || args.includes('speed') ? await speeds(fit) : null;
  const answers = write || args.includes('speed') ? first(fitResonances) : null;
  if (write || only) writePage(cells, ratios, answers);
  return cells;
}
