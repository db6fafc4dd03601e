import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fetchFile, type FetchOptions } from '../../src/elements/shared/fetch-file.js';
import { RingdownError } from '../../src/signal/errors.js';
import { createSpeaker } from '../../src/words/index.js';

const answers: Readonly<Record<string, (response: ServerResponse) => void>> = {
  '/file': (r) => r.writeHead(200, { 'content-type': 'audio/wav' }).end(Buffer.from([1, 2, 3])),
  '/moved': (r) => r.writeHead(302, { location: '/file' }).end(),
  '/page': (r) => r.writeHead(200, { 'content-type': 'text/html; charset=utf-8' }).end('<!doctype html>'),
  '/says-large': (r) => r.writeHead(200, { 'content-length': String(2 ** 31) }).write('x'),
  '/is-large': (r) => {
    r.writeHead(200);
    const more = (): void => {
      if (!r.destroyed && r.write(Buffer.alloc(65_536))) setImmediate(more);
      else if (!r.destroyed) r.once('drain', more);
    };
    more();
  },
  '/silent': (r) => r.writeHead(200).write('x'),
  '/never': () => undefined,
  '/broken': (r) => {
    r.writeHead(200, { 'content-length': '1000' }).write('x');
    setTimeout(() => r.destroy(), 20);
  },
};

describe('a file of a page', () => {
  let server: Server;
  let address = '';
  let closed = 0;
  beforeAll(async () => {
    server = createServer((request, response) => {
      response.on('close', () => closed++);
      const answer = answers[request.url ?? ''];
      if (answer) answer(response);
      else response.writeHead(404).end();
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  });
  afterAll(() => {
    server.close();
    server.closeAllConnections();
  });

  const from = (path: string, options: Partial<FetchOptions> = {}): Promise<ArrayBuffer> =>
    fetchFile(address + path, { name: 'src', signal: new AbortController().signal, ...options });
  const codeOf = async (promise: Promise<unknown>): Promise<string> => {
    try {
      await promise;
      return 'read';
    } catch (error) {
      expect(error).toBeInstanceOf(RingdownError);
      const { code, params } = error as RingdownError;
      if (code !== 'cancelled') expect(createSpeaker('en').error({ code, params })).toContain(address);
      return code;
    }
  };

  it('arrives, also by way of another address', async () => {
    expect([...new Uint8Array(await from('/file'))]).toEqual([1, 2, 3]);
    expect([...new Uint8Array(await from('/moved'))]).toEqual([1, 2, 3]);
  });

  it.each([
    ['/nothing', 'fetch-status'],
    ['/page', 'fetch-page'],
    ['/broken', 'fetch-failed'],
  ])('is refused in words where it does not: %s', async (path, code) => {
    expect(await codeOf(from(path))).toBe(code);
  });

  it('is refused where no server answers', async () => {
    const nobody = fetchFile('http://127.0.0.1:9/x', { name: 'src', signal: new AbortController().signal });
    await expect(nobody).rejects.toMatchObject({ code: 'fetch-failed' });
  });

  it('is not read on beyond the most that is held, whatever its header says', async () => {
    expect(await codeOf(from('/says-large', { mostBytes: 2 ** 20 }))).toBe('fetch-large');
    const before = closed;
    expect(await codeOf(from('/is-large', { mostBytes: 2 ** 20 }))).toBe('fetch-large');
    await expect.poll(() => closed).toBeGreaterThan(before);
  });

  it('is given up where the server falls silent, before the answer or within it', async () => {
    expect(await codeOf(from('/silent', { silenceMilliseconds: 100 }))).toBe('fetch-slow');
    expect(await codeOf(from('/never', { silenceMilliseconds: 100 }))).toBe('fetch-slow');
  });

  it('is stopped with its element, and the server is told', async () => {
    const before = closed;
    const leaving = new AbortController();
    const code = codeOf(from('/never', { signal: leaving.signal }));
    await new Promise((resolve) => setTimeout(resolve, 50));
    leaving.abort();
    expect(await code).toBe('cancelled');
    await expect.poll(() => closed).toBeGreaterThan(before);
    expect(await codeOf(from('/file', { signal: leaving.signal }))).toBe('cancelled');
  });
});
