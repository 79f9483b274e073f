import { createServer } from 'node:http';
import { createServer as createSafeServer } from 'node:https';
import { networkNames } from './network-names.js';
import { trouble } from './trouble.js';

/**
 * Where the shop is served: PORT and HOST, else http://127.0.0.1:3000; and where phones reach it: PUBLIC_URL, or this
 * machine's own address while its network is served.
 *
 * Takes    the environment; `network` and `plain` as they were asked for on the command line; how this machine is known
 *          on its network
 * Refuses  a port that is none; a host beyond this machine that nobody asked to serve; a PUBLIC_URL that is no address
 */
export function readAddress(env, { network = false, plain = false } = {}, names = networkNames()) {
  const host = bare((env.HOST || (network ? '0.0.0.0' : '127.0.0.1')).trim());
  if (plain && !network) {
    throw trouble(
      '--plain says how the network is served, and --network is missing.',
      'npm start -- --network --plain',
    );
  }
  if (!network && !isLoopback(host)) {
    throw trouble(
      `HOST is ${host}, which other machines can reach.`,
      'To serve the network of the shop, run npm start -- --network. If not, leave HOST out, or set it to 127.0.0.1, localhost or ::1.',
    );
  }
  const port = (env.PORT || '3000').trim();
  if (!/^\d{1,5}$/.test(port) || Number(port) < 1 || Number(port) > 65_535) {
    throw trouble(`PORT is ${port}, which is not a port.`, 'Set it to a whole number from 1 to 65535, such as 3000.');
  }
  const scheme = network && !plain ? 'https' : 'http';
  const local = originOf(scheme, isEverywhere(host) ? '127.0.0.1' : host, Number(port));
  const ways = { host, port: Number(port), url: local, scheme };
  if (!network) return { ...ways, publicUrl: readPublicUrl(env), names: [], network: '' };
  const known = isEverywhere(host) ? names : [...new Set([host, ...names])];
  const asked = readPublicUrl(env);
  if (asked && new URL(asked).protocol !== `${scheme}:`) {
    const mend = `Begin it with ${scheme}://, or leave it out.`;
    throw trouble(`PUBLIC_URL is ${asked}, but with these options this server speaks ${scheme} itself.`, mend);
  }
  const publicUrl = asked ?? originOf(scheme, known[0] ?? '127.0.0.1', Number(port));
  const reached = [...new Set([...known, bare(new URL(publicUrl).hostname)])];
  return { ...ways, publicUrl, names: reached, network: plain ? 'plain' : 'https' };
}

/** The address that phones and links use; null when none is set. */
function readPublicUrl(env) {
  const written = (env.PUBLIC_URL ?? '').trim();
  if (written === '') return null;
  const url = URL.canParse(written) ? new URL(written) : null;
  const isOrigin = url && /^https?:$/.test(url.protocol) && url.username === '' && url.password === '';
  if (isOrigin && url.pathname === '/' && url.search === '' && url.hash === '') return url.origin;
  throw trouble(
    `PUBLIC_URL is ${written}, which is not the address of a whole site.`,
    'Write it as https://shop.example or https://192.168.1.20:3000, with nothing after it.',
  );
}

const isLoopback = (host) => /^(localhost|127(\.\d{1,3}){3}|::1)$/i.test(host);
const isEverywhere = (host) => host === '0.0.0.0' || host === '::';
const bare = (host) => host.replace(/^\[|\]$/g, '');
const originOf = (scheme, host, port) =>
  new URL(`${scheme}://${host.includes(':') ? `[${host}]` : host}:${port}`).origin;

/**
 * Take the port before the long work begins, so that a taken port is known at once. Until the shop is ready it
 * answers "starting".
 *
 * Takes    the address, and the key and certificate to speak https with; null for plain http
 * @param {{ host: string, port: number }} address
 * @param {{ key: string, cert: string } | null} certificate
 */
export function takePort({ host, port }, certificate = null) {
  const { key, cert } = certificate ?? {};
  const safely = { key, cert, handshakeTimeout: 15_000 };
  const server = certificate ? createSafeServer(safely, sayStarting) : createServer(sayStarting);
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
