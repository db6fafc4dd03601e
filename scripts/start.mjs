/**
 * `npm start`: installs and builds what is missing, makes the invented recordings, and serves the demo.
 * `-- --port N` names the port, `--no-build` serves what is there; HOST names another address than this machine's own.
 */
import { createServer } from 'node:http';
import { existsSync } from 'node:fs';
import { Complaint, root, run, script } from './lib/project.mjs';
import { setup } from './setup.mjs';

const host = process.env.HOST ?? '127.0.0.1';
const firstPort = 8080;

/** @param {import('node:http').Server} server @param {number} port @returns {Promise<boolean>} */
const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) =>
      error.code === 'EADDRINUSE' ? resolve(false) : reject(error),
    );
    server.listen(port, host, () => resolve(true));
  });

await script(async () => {
  const args = process.argv.slice(2);
  const asked = args.includes('--port') ? Number(args[args.indexOf('--port') + 1]) : null;
  if (asked !== null && !(Number.isInteger(asked) && asked > 0 && asked < 65536)) {
    throw new Complaint('--port takes a whole number from 1 to 65535.');
  }
  await setup();
  if (!args.includes('--no-build')) {
    const { buildProject } = await import('./build.mjs');
    await buildProject();
  }
  if (!existsSync(`${root}demo/recordings/recordings.json`) || !args.includes('--no-build')) {
    const code = await run(process.execPath, ['scripts/make-demo.mjs']);
    if (code !== 0)
      throw new Complaint('The invented recordings could not be made; the reason stands above.');
  }
  const { default: sirv } = await import('sirv');
  const serve = sirv(root, { dev: true, dotfiles: false });
  const server = createServer((request, response) => {
    const path = (request.url ?? '/').split('?')[0];
    if (path === '/') {
      response.writeHead(302, { location: '/demo/' }).end();
      return;
    }
    if (!/^\/(demo|dist)\//.test(path)) {
      response.writeHead(404).end('Not found');
      return;
    }
    serve(request, response, () => {
      response.writeHead(404).end('Not found');
    });
  });
  let port = asked ?? firstPort;
  while (!(await listen(server, port))) {
    if (asked !== null)
      throw new Complaint(`Port ${asked} is taken; leave --port out to take the next free one.`);
    port++;
  }
  console.log(
    `ringdown is at http://${host === '0.0.0.0' ? 'localhost' : host}:${port}/demo/ (stop it with Ctrl+C)`,
  );
  await new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, resolve);
  });
  server.close();
  server.closeAllConnections();
});
