import { createServer, type Server } from 'node:http';
import next from 'next';
import { frontOf } from '@/lib/door/front';

/** Where the shop is served from, and how. */
export type Serving = { root: string; address: { host: string; port: number }; developing: boolean };

/**
 * Serve the shop on a port that was already taken: Next behind the front of the door.
 *
 * Takes    the listening server, which answered "starting" until now
 */
export async function serveShop(server: Server, { root, address, developing }: Serving): Promise<void> {
  const app = next({
    dir: root,
    dev: developing,
    hostname: address.host,
    port: address.port,
    // Next hangs its WebSocket on this server. Only a developer's page has one, so otherwise it gets one that never listens.
    httpServer: developing ? server : createServer(),
  });
  await app.prepare();
  server.removeAllListeners('request');
  server.on('request', frontOf(app.getRequestHandler()));
}
