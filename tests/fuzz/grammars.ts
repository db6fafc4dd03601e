/** Inputs made by rules, so that the search begins behind the first check of each reader. */
import type { Rng } from '../../src/signal/index.js';
import { oneOf, pick } from './mutate.js';

type Make = (rng: Rng) => string;

const digits: Make = (rng) =>
  oneOf(rng, [
    () => String(pick(rng, 10)),
    () => String(pick(rng, 100_000)),
    () => (rng.uniform() * 10 - 5).toFixed(pick(rng, 12)),
    () => (rng.uniform() * 2 - 1).toExponential(pick(rng, 16)),
    () =>
      oneOf(rng, [
        '0',
        '-0',
        '.5',
        '5.',
        ',5',
        '1e999',
        '-1e999',
        '1e-999',
        '9'.repeat(400),
        '0x10',
        '٣',
        '½',
      ]),
    () =>
      oneOf(rng, ['NaN', 'Infinity', '-Infinity', 'inf', '1.2.3', '1,2,3', '1_000', '--1', '+-1', '', ' ']),
  ])();

const number: Make = (rng) => {
  const plain = rng.uniform() < 0.999 ? (rng.uniform() * 2 - 1).toFixed(2 + pick(rng, 8)) : digits(rng);
  return rng.uniform() < 0.001 ? plain.replace('.', ',') : plain;
};

export const hostileTexts: readonly string[] = [
  ...['<img src=x onerror=alert(1)>', '"><script>alert(1)</script>', '</style><svg onload=alert(1)>'],
  ...[
    '=HYPERLINK("http://x")',
    '@SUM(A1)',
    '-1+1',
    '+1',
    '\t=1',
    '\r=1',
    '__proto__',
    'constructor',
    'toString',
  ],
  ...[
    '{{7*7}}',
    '${7*7}',
    '%00',
    '\u0000',
    '\u202e',
    '\ud800',
    '𝔘',
    'a'.repeat(3000),
    '../../x',
    'javascript:alert(1)',
  ],
];

/** Text of a response, of one column or two, as programs write it; then with what they get wrong. */
export const responseText: Make = (rng) => {
  const separator = oneOf(rng, [' ', '\t', ';', ',', ' , ', '  ', '\t\t', ';;']);
  const end = oneOf(rng, ['\n', '\r\n', '\r']);
  const rate = oneOf(rng, [1000, 8000, 44100, 48000, 999, 384001]);
  const columns = oneOf(rng, [1, 1, 1, 2, 2, 2, 2, 3, 7]);
  const count = oneOf(rng, [0, 1, 2, 3, 20, 100, 600, 600]);
  const head = oneOf(rng, [
    '',
    '# time amplitude',
    'time ms\n',
    '* 48000',
    '"quoted"',
    '// x',
    ';',
    '%',
    '[Data]',
  ]);
  const unit = /ms/.test(head) ? 1000 : 1;
  const lines = Array.from({ length: count }, (_, n) => {
    if (rng.uniform() < 0.001)
      return oneOf(rng, ['', 'x', '# c', '1 2 3 4', digits(rng), oneOf(rng, hostileTexts)]);
    const time = ((n * unit) / rate).toFixed(oneOf(rng, [3, 6, 9]));
    return columns === 1
      ? number(rng)
      : [time, ...Array.from({ length: columns - 1 }, () => number(rng))].join(separator);
  });
  return [head, ...lines].join(end) + (rng.uniform() < 0.5 ? end : '');
};

/** Text of a microphone's response: rising frequencies, levels, perhaps phases. */
export const microphoneText: Make = (rng) => {
  const separator = oneOf(rng, [' ', '\t', ';', ',']);
  let frequency = 5 + rng.uniform() * 20;
  const lines = Array.from({ length: oneOf(rng, [0, 1, 2, 10, 200]) }, () => {
    frequency *= rng.uniform() < 0.01 ? 0.5 : 1 + rng.uniform() / 4;
    const phase = rng.uniform() < 0.3 ? [number(rng)] : [];
    const level = rng.uniform() < 0.02 ? digits(rng) : (rng.uniform() * 10 - 5).toFixed(2);
    return [frequency.toFixed(3), level, ...phase].join(separator);
  });
  return [oneOf(rng, ['', '* sens 12.3', '"Hz","dB"']), ...lines].join('\n');
};

const length: Make = (rng) =>
  `${number(rng).replace('-', '')}${oneOf(rng, ['', ' m', 'cm', ' ft', "'", '\' 6"', ' ft 3 in', 'in', '′', 'µm'])}`;

/** Sides, corners, places and lists as people type them. */
export const roomTexts: Readonly<Record<string, Make>> = {
  size: (rng) =>
    Array.from({ length: oneOf(rng, [3, 3, 3, 3, 1, 2, 4]) }, () =>
      rng.uniform() < 0.7 ? `${(2 + rng.uniform() * 8).toFixed(2)}` : length(rng),
    ).join(oneOf(rng, ['x', ' x ', '×', ' × ', '*', ',', 'X'])) + oneOf(rng, ['', ' m', ' ft', 'cm']),
  corners: (rng) =>
    Array.from({ length: oneOf(rng, [0, 2, 3, 4, 6, 8, 40, 41, 400]) }, (_, k) => {
      const angle = (2 * Math.PI * k) / 6;
      const point =
        rng.uniform() < 0.8 ? [3 + 3 * Math.cos(angle), 3 + 2 * Math.sin(angle)] : [rng.uniform() * 9, 4];
      const [x, y] = point.map((value) => (rng.uniform() < 0.97 ? value.toFixed(2) : digits(rng)));
      return `${x}${oneOf(rng, [',', ',', ',', ';', ' '])}${y}`;
    }).join(oneOf(rng, [' ', '  ', '\n', ''])),
  place: (rng) =>
    Array.from({ length: oneOf(rng, [3, 3, 3, 2, 4]) }, () => number(rng)).join(
      oneOf(rng, [',', ', ', ' ', ';', '; ']),
    ),
  list: (rng) =>
    Array.from({ length: pick(rng, 9) }, () => number(rng)).join(oneOf(rng, [',', ', ', ' ', ';', '; '])),
  number: digits,
  height: (rng) =>
    rng.uniform() < 0.7
      ? length(rng)
      : `${length(rng)}${oneOf(rng, [' - ', '–', ' to ', '/'])}${length(rng)}`,
  walls: (rng) =>
    Array.from({ length: oneOf(rng, [1, 6, 5, 7]) }, () =>
      oneOf(rng, ['plaster-on-brick', 'carpet', 'window', ' concrete ', ...hostileTexts]),
    ).join(','),
};

const odd: readonly ((rng: Rng) => unknown)[] = [
  () => null,
  () => [],
  () => ({}),
  (rng) => oneOf(rng, [0, -1, 1e308, -1e308, 5e-324, 2 ** 53, 0.1, 1e9]),
  (rng) => oneOf(rng, hostileTexts),
  (rng) => rng.uniform() < 0.5,
  // The text stands for a number that JSON can write and no double can hold.
  () => '\u0001big',
  (rng) => Array.from({ length: pick(rng, 60) }, (_, k) => k),
  () => 'A'.repeat(8),
];

type Node = Record<string, unknown> | unknown[];

/** A saved study with some of its fields replaced, left out, doubled or put elsewhere. */
export function damagedDocument(document: object, rng: Rng): string {
  const copy = structuredClone(document) as Record<string, unknown>;
  for (let times = 1 + pick(rng, 3); times > 0; times--) {
    let node: Node = copy;
    for (let depth = 0; depth < 8; depth++) {
      const inner: Node[] = Object.values(node).filter(
        (one): one is Node => typeof one === 'object' && one !== null && Object.keys(one).length > 0,
      );
      if (inner.length === 0 || rng.uniform() < 0.25) break;
      node = oneOf(rng, inner);
    }
    const keys = Object.keys(node);
    if (keys.length === 0) continue;
    const key = oneOf(rng, keys);
    const target = node as Record<string, unknown>;
    const way = pick(rng, 6);
    if (way === 0) delete target[key];
    else if (way === 1) target[oneOf(rng, [...hostileTexts, key])] = target[key];
    else if (way === 2) target[key] = Object.values(oneOf(rng, [copy, target]))[0];
    else if (way === 3 && Array.isArray(node)) node.push(...node.slice(0, 40));
    else target[key] = oneOf(rng, odd)(rng);
  }
  return JSON.stringify(copy).replaceAll('"\\u0001big"', '1e999');
}
