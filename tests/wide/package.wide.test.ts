import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import { packPackage, Project } from '../support/packed.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The package as a stranger gets it: packed, and installed in an empty folder. */
describe('the packed package', () => {
  let project: Project;
  let tarball = '';
  let remove: (() => void) | undefined;
  const run = (program: string, ...args: string[]) => project.run(program, ...args);

  beforeAll(() => {
    const packed = packPackage();
    project = new Project({ 'package.json': '{"name":"page","private":true,"type":"module"}' });
    project.install(packed.tarball);
    tarball = packed.tarball;
    remove = packed.remove;
  });
  afterAll(() => {
    project?.remove();
    remove?.();
  });

  it('holds what it should and no more', () => {
    const files = execFileSync('tar', ['tzf', tarball], { encoding: 'utf8', maxBuffer: 1e8 })
      .trim()
      .split('\n');
    const allowed =
      /^package\/(?:(?:dist|src)\/.+\.(?:js|ts|map|json|txt)|custom-elements\.json|package\.json|README\.md|LICENSE|CHANGELOG\.md)$/;
    expect(files.filter((file) => !allowed.test(file))).toEqual([]);
    for (const file of [
      ...['index', 'engine', 'engine-core', 'react', 'study/worker', 'cli/main'].map(
        (name) => `dist/${name}.js`,
      ),
      ...['', '-flat', '-more', '-all', '-de'].map((name) => `dist/ringdown${name}.js`),
      ...['vscode-html.json', 'vscode-css.json', 'web-types.json', 'jsx.d.ts'].map(
        (name) => `dist/editor/${name}`,
      ),
      ...['custom-elements.json', 'LICENSE', 'README.md'],
    ])
      expect(files).toContain(`package/${file}`);
  });

  it('is right in the eyes of publint', async () => {
    const bytes = readFileSync(tarball);
    const { messages, pkg } = await publint({
      pack: {
        tarball: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength),
      },
      strict: true,
    });
    expect(messages.map((message) => formatMessage(message, pkg))).toEqual([]);
  });

  it('gives every entry the types that its form of module has', () => {
    execFileSync(
      process.execPath,
      [
        `${root}node_modules/@arethetypeswrong/cli/dist/index.js`,
        tarball,
        '--profile',
        'esm-only',
        '--quiet',
      ],
      { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
    );
  });

  it(
    'types its elements, their attributes and their events in JSX and in the DOM',
    { timeout: 300_000 },
    () => {
      const typed = new Project({
        'package.json': '{"name":"page","private":true,"type":"module"}',
        'tsconfig.json': JSON.stringify({
          compilerOptions: {
            ...{ strict: true, noEmit: true, jsx: 'react-jsx', skipLibCheck: true },
            ...{
              module: 'ESNext',
              moduleResolution: 'Bundler',
              target: 'ES2022',
              lib: ['ES2022', 'DOM', 'DOM.Iterable'],
            },
          },
          include: ['*.tsx', '*.ts'],
        }),
        'jsx.d.ts': `import type { CustomElements } from 'ringdown/jsx';
declare module 'react' { namespace JSX { interface IntrinsicElements extends CustomElements {} } }`,
        'page.tsx': `import 'ringdown/define';
export const page = <ringdown-study src="desk.wav" room="5x4x3">
  <ringdown-waterfall label="Desk" onringdown-ridge-select={(event) => event.detail.ridge?.toFixed(0)} />
</ringdown-study>;
// @ts-expect-error an attribute that is not there
export const wrong = <ringdown-waterfall colour="red" />;`,
        'dom.ts': `import 'ringdown';
const study = document.createElement('ringdown-study');
study.addEventListener('ringdown-ready', ({ detail }) => detail.snapshot.recordings.length.toFixed(0));
// @ts-expect-error an event's detail has its type
study.addEventListener('ringdown-ready', ({ detail }) => detail.nothing);`,
      });
      try {
        typed.install(
          tarball,
          'typescript@6.0.3',
          '@types/react@19',
          'react@19',
          '@lit/react@1',
          'lit@3',
          'three@0.187.0',
          '@types/three@0.187.0',
        );
        expect(typed.run('npx', 'tsc', '-p', '.')).toBe('');
      } finally {
        typed.remove();
      }
    },
  );

  it('gives the engine to Node', () => {
    const code =
      "const e = await import('ringdown/engine'); console.log(e.boxModes(e.parseRoomSize('5x4x3'), 343, 35).length)";
    expect(run('node', '--input-type=module', '-e', code).trim()).toBe('1');
  });

  it('imports its classes and its define entries in Node without throwing', () => {
    const code = "await import('ringdown'); await import('ringdown/define'); console.log('fine')";
    expect(run('node', '--input-type=module', '-e', code).trim()).toBe('fine');
  });

  it('brings the command', () => {
    const out = JSON.parse(
      run('npx', 'ringdown', 'modes', '--room', '5x4x3', '--speed', '343', '--json'),
    ) as {
      version: number;
      room: { modes: { frequency: number }[] };
    };
    expect(out.version).toBe(1);
    expect(out.room.modes[0].frequency).toBeCloseTo(34.3, 6);
  });
});
