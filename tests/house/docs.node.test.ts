import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { missed } from '../benchmark/gate.mjs';

const root = new URL('../../', import.meta.url);
const docs = new URL('docs/', root);

describe('docs/resonances.md', () => {
  const text = readFileSync(new URL('resonances.md', docs), 'utf8');

  it('leads to links and pictures that are there', () => {
    const links = [...text.matchAll(/\]\(([^)#\s]+)[^)]*\)/g)].map(([, link]) => link);
    expect(links).toContain('resonances-reliability.svg');
    for (const link of links.filter((one) => !/^[a-z]+:/.test(one)))
      expect(existsSync(new URL(link, docs)), link).toBe(true);
  });

  it('names files of the project that are there', () => {
    const paths = [...text.matchAll(/`((?:tests|src|scripts)\/[\w/.-]+)`/g)].map(([, path]) => path);
    expect(paths.length).toBeGreaterThan(1);
    for (const path of paths)
      expect(existsSync(new URL(path, root)) || existsSync(new URL(`${path}.node.test.ts`, root)), path).toBe(
        true,
      );
  });
});

describe('the table of docs/resonances.md', () => {
  const text = readFileSync(new URL('resonances.md', docs), 'utf8');
  const part = (name: string) =>
    text.slice(text.indexOf(`<!-- ${name} -->`), text.indexOf(`<!-- /${name} -->`));
  const rowsOf = (name: string) =>
    [...part(name).matchAll(/^\| (\w+ \d+) .*\|$/gm)].map(([line]) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );

  it('has every cell of the benchmark, and of the recordings held out', () => {
    const cells = ['S', 'P', 'R', 'V', 'R5'].flatMap((set) => [40, 55, 70].map((snr) => `${set} ${snr}`));
    const rooms = ['H1', 'H2', 'H3'].flatMap((set) => [40, 55, 70].map((snr) => `${set} ${snr}`));
    expect(rowsOf('table').map(([cell]) => cell)).toEqual(cells);
    const single = cells.filter((cell) => !cell.startsWith('R5'));
    expect(rowsOf('held').map(([cell]) => cell)).toEqual([...single, ...rooms]);
  });

  it('says in its last column what its own figures miss of the gate', () => {
    for (const row of rowsOf('table')) {
      const [kind, snr] = row[0].split(' ');
      const figure = (k: number, part = 0) => Number(row[k].split(',')[part].trim().split(' ')[0]);
      const said = row[10] === 'kept' ? [] : row[10].split(', ');
      const found = missed({
        kind,
        snr: Number(snr),
        recall: figure(2),
        zf: figure(3),
        zT: figure(4),
        wrong: figure(7),
        coverageF: figure(8),
        coverageT: figure(8, 1),
        // Not in the table: taken as kept.
        ...{ outliers: 0, judged: 1, biasT: 0, phantoms: 0, widthF: 1, widthT: 1 },
        ...{ confident: 0, reported: 0, strong: 1 },
      });
      const shown = ['recall', 'z', 'wrong', 'coverage'];
      expect(
        said.filter((name) => shown.includes(name)),
        row[0],
      ).toEqual(found);
    }
  });
});
