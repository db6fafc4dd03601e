import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readAudit } from '../../scripts/audit.mjs';
import { isAllowed, licenceOf, readLicences } from '../../scripts/lib/licences.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const read = (file: string): string => readFileSync(root + file, 'utf8');

interface Lock {
  readonly packages: Readonly<
    Record<
      string,
      {
        readonly dev?: boolean;
        readonly license?: string;
        readonly integrity?: string;
        readonly devOptional?: boolean;
        readonly peer?: boolean;
        readonly optional?: boolean;
      }
    >
  >;
}
const lock = JSON.parse(read('package-lock.json')) as Lock;
const about = JSON.parse(read('package.json')) as {
  dependencies: Record<string, string>;
  peerDependencies: Record<string, string>;
};
const ships = Object.entries(lock.packages).filter(
  ([path, { dev, devOptional, peer }]) => path !== '' && !dev && !devOptional && !peer,
);

describe('what ships beside our own code', () => {
  it('is told one by one with its reason in DEVELOPERS.md', () => {
    const text = read('DEVELOPERS.md').split('## Packages')[1] ?? '';
    for (const name of [...Object.keys(about.dependencies), ...Object.keys(about.peerDependencies)])
      expect(text, name).toContain(`| \`${name}\``);
  });

  it('has a reason in every row, and no row for what is not used', () => {
    const table = (read('DEVELOPERS.md').split('## Packages')[1] ?? '').split('\n## ')[0];
    const rows = [...table.matchAll(/^\| `([^`]+)`\s+\|([^|]+)\|([^|]+)\|$/gm)];
    expect(rows.length).toBeGreaterThan(8);
    const used = [...Object.keys(about.dependencies), ...Object.keys(about.peerDependencies)];
    expect(rows.map(([, name]) => name).sort()).toEqual(used.sort());
    for (const [, name, does, why] of rows)
      for (const text of [does, why]) expect(text.trim().length, name).toBeGreaterThan(5);
  });

  it('is asked for by our own code, each package of it', () => {
    const code = readdirSync(`${root}src`, { recursive: true })
      .map(String)
      .filter((file) => file.endsWith('.ts'))
      .map((file) => read(`src/${file}`))
      .join('\n');
    for (const name of Object.keys(about.dependencies))
      expect(code, name).toMatch(new RegExp(`(from|import\\()\\s*'${name.replace('/', '\\/')}['/]`));
  });

  it('has a licence that lets it be passed on, and carries its text', () => {
    expect(ships.length).toBeGreaterThan(8);
    for (const [path, { license = '' }] of ships) {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
      expect(name in readLicences || isAllowed(license), `${name}: ${license}`).toBe(true);
    }
    for (const name of Object.keys(about.dependencies))
      expect(licenceOf(name).text.length, name).toBeGreaterThan(150);
    expect(isAllowed('GPL-3.0')).toBe(false);
    expect(isAllowed('(MIT AND Zlib)')).toBe(true);
    expect(isAllowed('(MIT OR GPL-3.0)')).toBe(true);
  });

  it('is pinned by its content', () => {
    for (const [path, { integrity }] of ships) expect(integrity, path).toMatch(/^sha512-/);
  });
});

describe('the audit', () => {
  it('tells no answer from an answer', () => {
    expect(readAudit('{"message":"405","error":{}}').asked).toBe(false);
    expect(readAudit('').asked).toBe(false);
    expect(readAudit('{"vulnerabilities":{},"metadata":{"vulnerabilities":{"total":0}}}')).toEqual({
      asked: true,
      total: 0,
      names: [],
    });
    expect(
      readAudit('{"vulnerabilities":{"x":{}},"metadata":{"vulnerabilities":{"total":1}}}').names,
    ).toEqual(['x']);
  });
});

describe('the sources', () => {
  it('name no address that a page would ask at run time', () => {
    for (const file of readdirSync(`${root}src`, { recursive: true }).map(String)) {
      if (!file.endsWith('.ts')) continue;
      const code = read(`src/${file}`).replace(/\/\*[\s\S]*?\*\/|\/\/ .*$/gm, '');
      expect(code.replaceAll('http://www.w3.org/', ''), file).not.toMatch(
        /\b(https?|wss?):\/\/|sendBeacon|WebSocket|XMLHttpRequest/,
      );
    }
  });

  it('fetch in one place alone, what the page names', () => {
    const fetching = readdirSync(`${root}src`, { recursive: true })
      .map(String)
      .filter((file) => file.endsWith('.ts') && /\bfetch\(/.test(read(`src/${file}`)));
    expect(fetching).toEqual(['elements/shared/fetch-file.ts']);
  });
});
