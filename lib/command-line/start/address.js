import { createServer } from 'node:http';
import { trouble } from './trouble.js';

/**
 * Where the shop is served: PORT and HOST, else http://127.0.0.1:3000.
 *
 * Refuses  a port that is none; any host but this machine itself, as long as there is no sign-in
 */
export function readAddress(env) {
  const host = (env.HOST || '127.0.0.1').trim();
  if (!/^(localhost|127(\.\d{1,3}){3}|\[?::1\]?)$/i.test(host)) {
    throw trouble(
      `HOST is ${host}, which other machines could reach. Bench & Bottle has no sign-in yet, so anyone there could change your stock and records.`,
      'Leave HOST out, or set it to 127.0.0.1, localhost or ::1.',
    );
  }
  const port = (env.PORT || '3000').trim();
  if (!/^\d{1,5}$/.test(port) || Number(port) < 1 || Number(port) > 65_535) {
    throw trouble(`PORT is ${port}, which is not a port.`, 'Set it to a whole number from 1 to 65535, such as 3000.');
  }
  const bare = host.replace(/^\[|\]$/g, '');
  return { host: bare, port: Number(port), url: `http://${bare.includes(':') ? `[${bare}]` : bare}:${Number(port)}` };
}

/**
 * Take the port before the long work begins, so that a taken port is known at once. Until the shop is ready it
 * answers "starting".
 */
export function takePort({ host, port }) {
  const server = createServer(sayStarting);
  Object.assign(server, { headersTimeout: 15_000, requestTimeout: 60_000, keepAliveTimeout: 5_000 });
  return new Promise((resolve, reject) => {
    server.once('error', (error) => reject(portTrouble(error, host, port)));
    server.listen({ host, port }, () => resolve(server));
  });
}

function portTrouble(error, host, port) {
  if (error.code === 'EADDRINUSE') {
    return trouble(
      `Port ${port} is already taken, perhaps by Bench & Bottle running in another window.`,
      `Stop that program, or choose another port, for example: PORT=${port === 65_535 ? 3000 : port + 1} npm start`,
    );
  }
  if (error.code === 'EACCES') {
    return trouble(
      `This account may not use port ${port}.`,
      'Choose a port above 1023, for example: PORT=3000 npm start',
    );
  }
  return trouble(
    `${host}:${port} cannot be listened on (${error.code}).`,
    'Leave HOST and PORT out to use 127.0.0.1:3000.',
  );
}

function sayStarting(_request, response) {
  response.writeHead(503, {
    'Content-Type': 'text/html; charset=utf-8',
    'Retry-After': '3',
    'Cache-Control': 'no-store',
  });
  response.end(
    '<!doctype html><meta http-equiv="refresh" content="3"><title>Starting</title><p>Bench &amp; Bottle is starting.',
  );
}
