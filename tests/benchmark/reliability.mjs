/**
 * How often intervals of a stated probability hold the truth: of confident reports, frequency and decay time apart. A report
 * that belongs to no mode counts as one whose interval misses.
 */

/** Two-sided probabilities of a normal distribution, and the deviations that bound them. */
export const nominal = [
  { share: 0.25, deviations: 0.3186 },
  { share: 0.5, deviations: 0.6745 },
  { share: 0.68, deviations: 0.9945 },
  { share: 0.8, deviations: 1.2816 },
  { share: 0.9, deviations: 1.6449 },
  { share: 0.95, deviations: 1.96 },
  { share: 0.99, deviations: 2.5758 },
];

/** @typedef {{ name: string, count: number, frequency: number[], decay: number[] }} Curve shares at each of `nominal` */
/** @typedef {{ kind: string, snr: number, from: number, deviationsF: number[], deviationsT: number[] }} Cell */

/** @param {string} name @param {readonly Cell[]} cells @returns {Curve} */
function curveOf(name, cells) {
  const shares = (/** @type {number[]} */ errors) =>
    nominal.map(
      ({ deviations }) => errors.filter((z) => Math.abs(z) <= deviations).length / Math.max(1, errors.length),
    );
  const frequency = cells.flatMap(({ deviationsF }) => deviationsF);
  const decay = cells.flatMap(({ deviationsT }) => deviationsT);
  return { name, count: frequency.length, frequency: shares(frequency), decay: shares(decay) };
}

/** @param {readonly Cell[]} cells @param {number} heldFrom first seed by which nothing was chosen @returns {Curve[]} */
export function curvesOf(cells, heldFrom) {
  const table = cells.filter(({ from }) => from < heldFrom);
  return [
    curveOf(
      'the table, 55 and 70 dB',
      table.filter(({ snr }) => snr >= 55),
    ),
    curveOf(
      'the table, 40 dB',
      table.filter(({ snr }) => snr < 55),
    ),
    curveOf(
      'held out, 55 and 70 dB',
      cells.filter(({ from, snr }) => from >= heldFrom && snr >= 55),
    ),
  ];
}

const [width, height] = [760, 452];
/** Where the names of the curves begin. */
const keyLefts = [58, 305, 500];
const side = 300;
const top = 46;
const lefts = [58, 430];

const style = `
    text { font: 13px system-ui, sans-serif; fill: var(--ink); }
    .small { font-size: 12px; fill: var(--soft); }
    .title { font-weight: 600; }
    .frame { fill: none; stroke: var(--rule); }
    .rule { stroke: var(--rule); stroke-width: 1; }
    .ideal { stroke: var(--soft); stroke-width: 1; stroke-dasharray: 5 4; }
    .line { fill: none; stroke-width: 2; }
    .c0 { stroke: var(--a); } .m0 { fill: var(--a); }
    .c1 { stroke: var(--b); stroke-dasharray: 2 3; } .m1 { fill: var(--b); }
    .c2 { stroke: var(--c); stroke-dasharray: 8 3; } .m2 { fill: var(--c); }
    svg { --ink: #20262c; --soft: #5b6670; --rule: #d5dbe0; --paper: #ffffff; --a: #1f5f8b; --b: #a4451f; --c: #2b7a4b; }
    @media (prefers-color-scheme: dark) {
      svg { --ink: #e6eaee; --soft: #a3adb6; --rule: #3b444c; --paper: #14191d; --a: #7fb8e0; --b: #f0a37f; --c: #8fd0a8; }
    }`;

/** A mark of its own for each curve: circle, square, triangle. */
const mark = (/** @type {number} */ k, /** @type {number} */ x, /** @type {number} */ y) =>
  [
    `<circle class="m0" cx="${x}" cy="${y}" r="3.5" />`,
    `<rect class="m1" x="${x - 3.2}" y="${y - 3.2}" width="6.4" height="6.4" />`,
    `<path class="m2" d="M${x} ${y - 4.4}L${x + 4.2} ${y + 3.4}H${x - 4.2}Z" />`,
  ][k];

const round = (/** @type {number} */ value) => Math.round(value * 10) / 10;

/** @param {readonly Curve[]} curves @returns {string} */
export function reliabilitySvg(curves) {
  const panel = (/** @type {'frequency' | 'decay'} */ key, /** @type {number} */ left) => {
    const x = (/** @type {number} */ share) => round(left + side * share);
    const y = (/** @type {number} */ share) => round(top + side * (1 - share));
    const ticks = [0, 0.25, 0.5, 0.75, 1].map((share) => {
      const percent = `${100 * share}`;
      return `  <path class="rule" d="M${x(share)} ${y(0)}v5M${x(0)} ${y(share)}h-5" />
  <text class="small" x="${x(share)}" y="${y(0) + 20}" text-anchor="middle">${percent}</text>
  <text class="small" x="${x(0) - 9}" y="${y(share) + 4}" text-anchor="end">${percent}</text>`;
    });
    const lines = curves.map((curve, k) => {
      const points = curve[key].map((share, i) => /** @type {const} */ ([x(nominal[i].share), y(share)]));
      return `  <polyline class="line c${k}" points="${x(0)},${y(0)} ${points.map((p) => p.join(',')).join(' ')}" />
  ${points.map(([px, py]) => mark(k, px, py)).join('')}`;
    });
    return `  <text class="title" x="${x(0)}" y="${top - 16}">${key === 'frequency' ? 'Frequency' : 'Decay time'}</text>
  <rect class="frame" x="${x(0)}" y="${y(1)}" width="${side}" height="${side}" />
  <path class="ideal" d="M${x(0)} ${y(0)}L${x(1)} ${y(1)}" />
${ticks.join('\n')}
${lines.join('\n')}
  <text class="small" x="${x(0.5)}" y="${y(0) + 42}" text-anchor="middle">stated probability of the interval, %</text>`;
  };
  const key = curves.map(
    ({ name, count }, k) =>
      `  <path class="line c${k}" d="M${keyLefts[k]} ${height - 22}h26" />${mark(k, keyLefts[k] + 13, height - 22)}
  <text x="${keyLefts[k] + 32}" y="${height - 17.5}">${name} (${count})</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="title desc">
  <title id="title">How often the stated intervals hold the truth</title>
  <desc id="desc">Share of confident reports whose interval of a stated probability holds the true frequency or decay time. On the dashed diagonal intervals hold as often as they say; above it they are wider than they need be.</desc>
  <style>${style}
  </style>
  <rect width="${width}" height="${height}" style="fill: var(--paper)" />
  <text class="small" transform="translate(16 ${top + side / 2}) rotate(-90)" text-anchor="middle">held the truth, %</text>
${panel('frequency', lefts[0])}
${panel('decay', lefts[1])}
${key.join('\n')}
</svg>
`;
}
