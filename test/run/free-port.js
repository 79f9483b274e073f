import { createServer } from 'node:net';

/** Below the ports that systems hand out for connections, any of which may take one before its server starts. */
const [FROM, COUNT] = [20_000, 12_000];
const given = new Set();

/**
 * A port of this machine that nobody uses now, and that this process was not given before.
 *
 * @returns {Promise<number>}
 */
export async function freePort() {
  for (let tries = 0; tries < 100; tries += 1) {
    const port = FROM + Math.floor(Math.random() * COUNT);
    if (given.has(port) || !(await isFree(port))) continue;
    given.add(port);
    return port;
  }
  throw new Error('this machine has no free port');
}

const isFree = (port) =>
  new Promise((resolve) => {
    const server = createServer().once('error', () => resolve(false));
    server.listen(port, '127.0.0.1', () => server.close(() => resolve(true)));
  });
