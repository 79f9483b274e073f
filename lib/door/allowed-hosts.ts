/** What decides at which addresses this server answers. All of it is environment; the start has checked and completed it. */
export type Addresses = {
  PORT?: string;
  HOST?: string;
  /** The address that phones and links use, such as https://shop.example. */
  PUBLIC_URL?: string;
  /** How the network is served: `https` with the shop's own certificate, or `plain`. Left out: not by this server itself. */
  NETWORK?: string;
  /** Further names and addresses of this machine on its network, separated by spaces. */
  NETWORK_NAMES?: string;
};

type Scheme = 'http' | 'https';

/** Every Host header that is answered, lower case and with its port, and the scheme that its pages come by. */
export type Hosts = ReadonlyMap<string, Scheme>;

const LOOPBACK_NAMES = ['localhost', '127.0.0.1', '[::1]'];

/**
 * The Host headers this server answers to: the names of this machine itself, those on its network while that is served,
 * and the host of PUBLIC_URL. Anything else is a page elsewhere pretending to be this one (DNS rebinding), and is turned
 * away.
 *
 * Gives    lower-case `name:port`; without the port too where it is the one that browsers leave out
 */
export function allowedHosts({ PORT, HOST, PUBLIC_URL, NETWORK, NETWORK_NAMES }: Addresses): Hosts {
  const port = PORT || '3000';
  const scheme: Scheme = NETWORK === 'https' ? 'https' : 'http';
  const onNetwork = NETWORK ? (NETWORK_NAMES ?? '').split(' ').filter((name) => name !== '') : [];
  const names = [...LOOPBACK_NAMES, ...(HOST && isLoopback(HOST) ? [HOST] : []), ...onNetwork].map(bracketed);
  const hosts = new Map(names.flatMap((name) => written(name, port, scheme)));
  const known = publicAddress(PUBLIC_URL);
  for (const [host, its] of known ? written(known.hostname, known.port, known.scheme) : []) hosts.set(host, its);
  return hosts;
}

function written(name: string, port: string, scheme: Scheme): [string, Scheme][] {
  const isLeftOut = port === (scheme === 'https' ? '443' : '80');
  return [...(isLeftOut ? [name] : []), `${name}:${port}`].map((host) => [host, scheme]);
}

function publicAddress(url: string | undefined): { hostname: string; port: string; scheme: Scheme } | null {
  if (!url) return null;
  const { hostname, port, protocol } = new URL(url);
  const scheme = protocol === 'https:' ? 'https' : 'http';
  return { hostname, scheme, port: port || (scheme === 'https' ? '443' : '80') };
}

let known: { of: string; hosts: Hosts } | undefined;

/** The allow-list of this very process. */
export function ownHosts(): Hosts {
  const { PORT, HOST, PUBLIC_URL, NETWORK, NETWORK_NAMES } = process.env;
  const of = [PORT, HOST, PUBLIC_URL, NETWORK, NETWORK_NAMES].join('\n');
  if (known?.of !== of) known = { of, hosts: allowedHosts({ PORT, HOST, PUBLIC_URL, NETWORK, NETWORK_NAMES }) };
  return known.hosts;
}

/** True when somebody on another machine can reach this shop: nothing but sign-in may be shown before there is an owner. */
export function beyondLoopback(): boolean {
  const { HOST, PUBLIC_URL } = process.env;
  const name = PUBLIC_URL ? new URL(PUBLIC_URL).hostname : 'localhost';
  return !isLoopback(HOST || '127.0.0.1') || !isLoopback(name);
}

/** How phones reach this shop, and where; `url` is null while they do not. */
export function networkWay(): { way: 'none' | 'proxy' | 'https' | 'plain'; url: string | null } {
  const { PUBLIC_URL, NETWORK } = process.env;
  if (!PUBLIC_URL) return { way: 'none', url: null };
  return { way: NETWORK === 'https' || NETWORK === 'plain' ? NETWORK : 'proxy', url: new URL(PUBLIC_URL).origin };
}

/** True when browsers reach this shop by https alone, so that a cookie may be kept from anything else. */
export const isServedByHttps = (): boolean => process.env.PUBLIC_URL?.startsWith('https:') === true;

/**
 * Where a phone reaches this shop, such as https://192.168.1.20:3000: what square codes and links begin with.
 *
 * Takes    the Host header of the request, which the door has judged
 */
export function publicOrigin(host: string): string {
  const { PUBLIC_URL } = process.env;
  return PUBLIC_URL ? new URL(PUBLIC_URL).origin : `${ownHosts().get(host.toLowerCase()) ?? 'http'}://${host}`;
}

/** True for an address that never leaves this machine. */
function isLoopback(host: string): boolean {
  return /^(localhost|127(\.\d{1,3}){3}|\[?::1\]?)$/i.test(host);
}

function bracketed(host: string): string {
  return host.includes(':') && !host.startsWith('[') ? `[${host.toLowerCase()}]` : host.toLowerCase();
}
