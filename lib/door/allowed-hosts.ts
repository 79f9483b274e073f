const LOOPBACK_NAMES = ['localhost', '127.0.0.1', '[::1]'];

/**
 * The Host headers this server answers to: the names of this machine itself, with the port it listens on.
 * Anything else is a page elsewhere pretending to be this one (DNS rebinding), and is turned away.
 *
 * Takes    the port and host the server was started with
 * Gives    lower-case `name:port`; without the port too when it is 80, which browsers leave out
 */
export function allowedHosts(port: string | undefined, host: string | undefined): ReadonlySet<string> {
  const names = [...LOOPBACK_NAMES, ...(host && isLoopback(host) ? [bracketed(host)] : [])];
  const wanted = port || '3000';
  return new Set(names.flatMap((name) => (wanted === '80' ? [name, `${name}:80`] : [`${name}:${wanted}`])));
}

/** The allow-list of this very process, from PORT and HOST. */
export function ownHosts(): ReadonlySet<string> {
  return allowedHosts(process.env.PORT, process.env.HOST);
}

/** Whether an address never leaves this machine. */
function isLoopback(host: string): boolean {
  return /^(localhost|127(\.\d{1,3}){3}|\[?::1\]?)$/i.test(host);
}

function bracketed(host: string): string {
  return host.includes(':') && !host.startsWith('[') ? `[${host.toLowerCase()}]` : host.toLowerCase();
}
