import type { NumberWords, Sentence, WordParams, WordValue } from '../../src/words/index.js';
import { createNumberWords } from '../../src/words/index.js';

/** Ways to say one sentence, such that every branch of it is taken: what it reads of its parameters, and what it tells. */

/** Parameters that carry a number, by the ends of their names; all others carry a name, a code or text. */
const numeric =
  /(Hz|Db|Seconds|Metres|Bytes|Rate|Number|Celsius|Percent|Share|share|Mass|SquareMetres|Error|Spacing|Index)$|^(count|channel|channels|live|bits|seconds|samples|points|pairs|sources|seats|missing|number|percent|fraction|weight|ratio|q|excess|factor|degrees|rate|lowest|highest|from|to|value|expected|bytes|megabytes|most|files|ms|match|variance|before|after|volume|speed|corners|more|width|height|length|x|y|z|line|columns|explained|offset|peak|walls|wall|first|second|step|span|coefficient|measurement|declared|needed|limit|otherSeats|halfDb)$|[XYZ]$/;

/** Every code that a sentence asks of a parameter, so that each of its branches is taken by one of them. */
const codes =
  'sliding cumulative constant-q only-live first asked absent beyond-end partial-frame source seat corner file float everywhere some-seats x y z hum noise unexplained seats length width height frequencyHz gainDb q lowestGainDb longestDelaySeconds leastLevelDb none above below src'.split(
    ' ',
  );

const numbers = [0, 1, 6, 7.25, -3.5];

/** Parameters that answer to any name, and remember which were asked for. */
function asked(answer: (name: string) => WordValue): { params: WordParams; read: Set<string> } {
  const read = new Set<string>();
  const params = new Proxy<Record<string, WordValue>>(
    {},
    {
      get(_, name) {
        if (typeof name !== 'string') return undefined;
        read.add(name);
        return answer(name);
      },
      // A sentence that copies its parameters finds them all missing but those it sets.
      ownKeys: () => [],
    },
  );
  return { params, read };
}

const answers: ((name: string) => WordValue)[] = [
  () => undefined,
  () => null,
  () => 'Studio 7',
  ...numbers.map((value) => () => value),
  ...codes.flatMap((code) => numbers.map((value) => (name: string) => (numeric.test(name) ? value : code))),
  ...[true, false].flatMap((flag) =>
    ['1 3', '50', 'first', 'seat'].map(
      (text) => (name: string) =>
        numeric.test(name)
          ? 7.25
          : /^(reason|place|origin|why|label|order|axis|linesHz|name|method)$/.test(name)
            ? text
            : flag,
    ),
  ),
  ...['1 3', '50', '50 100 150'].map(
    (text) => (name: string) =>
      name === 'linesHz' || name === 'loopbacks'
        ? text
        : name === 'loopbackChosen'
          ? null
          : numeric.test(name)
            ? 6
            : 'only-live',
  ),
  // Numbers of numbered names, and lows that are not the highs.
  (name) => (/^(low|to|highest)/.test(name) ? 90 : numeric.test(name) ? 20.5 : 'cumulative'),
  (name) => (/^(low|to|highest)/.test(name) ? 90 : numeric.test(name) ? 20.5 : 'constant-q'),
];

export interface Said {
  readonly text: string;
  /** Every call for a number or a name: how, of what, with how many digits. */
  readonly told: string;
}

interface Ways {
  readonly said: readonly Said[];
  /** Names of the parameters that are ever read. */
  readonly read: readonly string[];
}

const known = new Map<string, WeakMap<Sentence, Ways>>();

/** All ways of one sentence: what it says with each set of parameters, and which of them it reads. */
export function everyWay(sentence: Sentence, locale = 'en'): Ways {
  const ways = known.get(locale) ?? new WeakMap<Sentence, Ways>();
  known.set(locale, ways);
  const found = ways.get(sentence) ?? sayEveryWay(sentence, locale);
  ways.set(sentence, found);
  return found;
}

function sayEveryWay(sentence: Sentence, locale: string): Ways {
  const spoken = createNumberWords(locale, ' ');
  const read = new Set<string>();
  const said = answers.map((answer) => {
    const calls = new Set<string>();
    const n = new Proxy(spoken, {
      get: (target, name: keyof NumberWords) =>
        name === 'locale'
          ? target.locale
          : (...values: never[]) => {
              calls.add(`${name} ${values.map(String).join(' ')}`);
              return (target[name] as (...all: unknown[]) => string)(...values);
            },
    });
    const given = asked(answer);
    const text = sentence(given.params, n);
    for (const name of given.read) read.add(name);
    return { text, told: [...calls].sort().join('; ') };
  });
  return { said, read: [...read].sort() };
}

/** Every figure of a text, with either decimal sign, in order of size. */
export const figuresOf = (text: string): string =>
  [...text.matchAll(/\d+(?:[.,]\d+)*/g)]
    .map(([figure]) => figure.replaceAll(',', '.'))
    .sort()
    .join(' ');
