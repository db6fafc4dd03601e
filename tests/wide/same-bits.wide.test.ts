import { build } from 'esbuild';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createRoom, synthesise } from '../../src/room/index.js';
import { engineNames, openEngine, type Engine } from '../support/engines.js';
import { numbersOf, soundsOf, type FlatNumbers, type GivenSound } from '../support/flat-numbers.js';
import { mathsSample } from '../support/maths-sample.js';
import { serveSite, type Site } from '../support/site.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Of each number, relative; what is promised. What is found is that no bit differs. */
const most = 1e-9;

/** A room with many modes, whose fit makes the most of any difference, beside cases of any room, rate, length and scale. */
function sounds(): (readonly GivenSound[])[] {
  const crowded = [2, 3].map((seed): readonly GivenSound[] => {
    const room = createRoom({
      size: { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 },
      absorption: 0.05 * seed,
    });
    const at = { seat: { x: 3.7, y: 3, z: 1.2 }, source: { x: 0.5, y: 0.4, z: 0.3 } };
    const { samples } = synthesise({ room, ...at, noiseDb: -55, sampleRate: 4000, seconds: 1.5, seed });
    return [{ label: `crowded ${seed}`, sampleRate: 4000, samples }];
  });
  const any = Array.from({ length: 5 }, (_, k) => soundsOf(3000 + k));
  return [...crowded, ...any.filter((one) => one !== null)];
}

/** As text that loses no bit. */
const packed = (list: readonly GivenSound[]): string =>
  JSON.stringify(
    list.map(({ samples, ...about }) => ({
      ...about,
      samples: Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength).toString('base64'),
    })),
  );
const unpacked = (base64: string): Float64Array => {
  const bytes = Buffer.from(base64, 'base64');
  return new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
};

/** Differences of two, relative to the larger of each pair; NaN where one has another count. */
function apart(ours: Float64Array, theirs: Float64Array): { largest: number; count: number } {
  let [largest, count] = [ours.length === theirs.length ? 0 : NaN, 0];
  ours.forEach((one, k) => {
    if (Object.is(one, theirs[k])) return;
    count++;
    largest = Math.max(largest, Math.abs(one - theirs[k]) / Math.max(Math.abs(one), Math.abs(theirs[k])));
  });
  return { largest, count };
}

declare global {
  var engineInPage: {
    numbersOf(sounds: readonly GivenSound[]): FlatNumbers;
    mathsSample(): Float64Array;
    toBase64(values: Float64Array): string;
  };
}

const entry = `
import { numbersOf } from './tests/support/flat-numbers.ts';
import { mathsSample } from './tests/support/maths-sample.ts';
const toBase64 = (values) => {
  const bytes = new Uint8Array(values.buffer, values.byteOffset, values.byteLength);
  let text = '';
  for (let k = 0; k < bytes.length; k += 8192) text += String.fromCharCode(...bytes.subarray(k, k + 8192));
  return btoa(text);
};
globalThis.engineInPage = { numbersOf, mathsSample, toBase64 };`;

describe('the same input', () => {
  const given = sounds();
  let site: Site;
  let here: FlatNumbers[] = [];
  const figures: string[] = [];
  let largest = 0;

  beforeAll(async () => {
    const options = { bundle: true, format: 'esm', write: false, logLevel: 'error' } as const;
    const stdin = { contents: entry, resolveDir: root };
    const { outputFiles } = await build({ ...options, stdin, tsconfig: `${root}tsconfig.json` });
    const script = outputFiles[0].text.replaceAll('</script', '<\\/script');
    const files = given.map((one, k) => [`/${k}.json`, { html: packed(one) }] as const);
    const html = `<!doctype html><meta charset="utf-8"><title>numbers</title><script type="module">${script}</script>`;
    site = await serveSite([], { '/': { html }, ...Object.fromEntries(files) });
    here = given.map(numbersOf);
  });
  afterAll(() => site?.close());

  it('gives the same bytes twice', () => {
    for (const k of [0, 2, 5]) {
      const again = numbersOf(given[k]);
      expect(apart(here[k].numbers, again.numbers)).toEqual({ largest: 0, count: 0 });
      expect(again.texts).toEqual(here[k].texts);
    }
  });

  it.each(engineNames)('gives the same numbers and letters in %s as in Node', async (name) => {
    const engine: Engine = await openEngine(name);
    try {
      await engine.open(`${site.address}/`);
      const sample = await engine.run(() =>
        globalThis.engineInPage.toBase64(globalThis.engineInPage.mathsSample()),
      );
      expect(apart(mathsSample(), unpacked(sample))).toEqual({ largest: 0, count: 0 });
      let [differ, all] = [0, 0];
      for (const [k, mine] of here.entries()) {
        const theirs = await engine.run(async (index) => {
          const list = (await (await fetch(`/${index}.json`)).json()) as {
            samples: string;
            label: string;
            sampleRate: number;
          }[];
          const { numbers, texts } = globalThis.engineInPage.numbersOf(
            list.map(({ samples, ...about }) => ({
              ...about,
              samples: new Float64Array(
                Uint8Array.from(atob(samples), (letter) => letter.charCodeAt(0)).buffer,
              ),
            })),
          );
          return { numbers: globalThis.engineInPage.toBase64(numbers), texts: [...texts] };
        }, k);
        const found = apart(mine.numbers, unpacked(theirs.numbers));
        largest = Math.max(largest, found.largest);
        differ += found.count;
        all += mine.numbers.length;
        expect(theirs.texts, given[k][0].label).toEqual(mine.texts);
        expect(found.largest, given[k][0].label).toBeLessThanOrEqual(most);
      }
      figures.push(`${name} ${engine.version} ${differ} of ${all}`);
      console.log(
        `same-bits: ${given.length} cases, numbers unlike Node's: ${figures.join(', ')}; the largest by ${largest.toExponential(0)}`,
      );
    } finally {
      await engine.close();
    }
  });
});
