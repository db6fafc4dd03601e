import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRoom, parseRoomSize, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The package as a stranger gets it, packed once per run of a test file. */
export function packPackage(): { tarball: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-pack-'));
  execFileSync('npm', ['pack', '--pack-destination', folder, '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const name = readdirSync(folder).find((file) => file.endsWith('.tgz'));
  if (!name) throw new Error('npm pack made no file.');
  return { tarball: join(folder, name), remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** The response of an invented room, as a file for pages. */
export function roomWav(): Uint8Array {
  const { samples } = synthesise({
    room: createRoom({ size: parseRoomSize('5.6x3.9x2.7') }),
    seat: { x: 3.7, y: 3, z: 1.2 },
    source: { x: 0.5, y: 0.4, z: 0.3 },
    noiseDb: -60,
  });
  return encodeWav({ channels: [samples], sampleRate: 48000, encoding: 'float-32' });
}

/** A project of somebody else in an empty folder. */
export class Project {
  readonly folder = mkdtempSync(join(tmpdir(), 'ringdown-site-'));

  constructor(files: Readonly<Record<string, string | Uint8Array>>) {
    for (const [path, content] of Object.entries(files)) this.write(path, content);
  }

  write(path: string, content: string | Uint8Array): void {
    const whole = join(this.folder, path);
    mkdirSync(dirname(whole), { recursive: true });
    writeFileSync(whole, content);
  }

  run(program: string, ...args: string[]): string {
    try {
      return execFileSync(program, args, {
        cwd: this.folder,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
        // A test runner's own mode is not that of a site's build.
        env: { ...process.env, NODE_ENV: 'production', ASTRO_TELEMETRY_DISABLED: '1', HOME: this.folder },
      });
    } catch (error) {
      const { stdout, stderr } = error as { stdout?: string; stderr?: string };
      throw new Error(`${program} ${args.join(' ')}\n${stdout ?? ''}\n${stderr ?? ''}`, { cause: error });
    }
  }

  install(...packages: string[]): void {
    this.run('npm', 'install', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error', ...packages);
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
