import type { Problem } from '@/shared/api/problem';
import type { Hosts } from './allowed-hosts';
import { bodyLimit, bytesInWords, isApi } from './body-limits';

/** What a request shows before it is let in. Header names are lower case. */
export type Knock = { method: string; path: string; header(name: string): string | null };

/** A request turned away, with the status and one sentence that says why. */
export type TurnedAway = {
  status: 400 | 403 | 405 | 411 | 413 | 415 | 503;
  message: string;
  /** True when a browser said that another site asked. */
  isOtherSite?: boolean;
};

/** What is answered to a request that was turned away. */
export const turnedProblem = ({ message }: Pick<TurnedAway, 'message'>): Problem => ({ code: 'turned-away', message });

/**
 * Whether a request may come in at all. The same judgement stands in front of the server, in the proxy,
 * and inside every action and route, because each of the first two can be missing or bypassed.
 *
 * Refuses  a method this shop has no use for (405); a Host that is not this machine, whatever the browser says another
 *          site asked for, a change without an Origin or with a foreign one (403); a form without a length (411), too long (413) or not a form (415);
 *          an action id or router state that no page of ours has sent (400)
 * Source   X-Forwarded-* is never read here: the scheme goes by the Host, as PUBLIC_URL says
 */
export function judgeKnock(knock: Knock, hosts: Hosts): TurnedAway | null {
  return (
    judgeAddress(knock, hosts) ??
    judgeSite(knock) ??
    judgeOrigin(knock, hosts) ??
    judgeRouterState(knock) ??
    judgeBody(knock)
  );
}

function judgeAddress(knock: Knock, hosts: Hosts): TurnedAway | null {
  if (!['GET', 'HEAD', 'POST', 'OPTIONS'].includes(knock.method)) {
    return { status: 405, message: `This shop does not answer ${knock.method}. Use GET to look and POST to change.` };
  }
  if (!isOwnPath(knock.path)) {
    return { status: 400, message: 'The address must be a path on this machine, such as /week.' };
  }
  const host = knock.header('host')?.toLowerCase();
  if (!host || !hosts.has(host)) {
    return { status: 403, message: `This shop answers only at its own address: ${ownAddress(hosts)}.` };
  }
  return null;
}

/** The last address in the list is the one that phones use, where there is one. */
function ownAddress(hosts: Hosts): string {
  const [host, scheme] = [...hosts].at(hosts.size > LOOPBACK_HOSTS ? -1 : 1) ?? ['127.0.0.1', 'http'];
  return `${scheme}://${host}`;
}

/** So many addresses every server has. */
const LOOPBACK_HOSTS = 3;

/** A path on this machine whose percent signs can be read; Next answers 500 to others. */
function isOwnPath(path: string): boolean {
  if (!path.startsWith('/') || path.startsWith('//') || path.includes('\\')) return false;
  try {
    return decodeURIComponent(path.split('?')[0] ?? '') !== '';
  } catch {
    return false;
  }
}

/**
 * Browsers say which site made them ask. Only our own pages and a person (a typed address, a bookmark) may, for pages as
 * well as for changes: a page elsewhere could otherwise learn from how long an answer takes, or how large it is.
 */
function judgeSite(knock: Knock): TurnedAway | null {
  const site = knock.header('sec-fetch-site')?.toLowerCase() ?? 'none';
  if (site === 'none' || site === 'same-origin') return null;
  return {
    status: 403,
    message: 'Another site asked for this. Open it from Bench & Bottle itself.',
    isOtherSite: true,
  };
}

/** Whatever may change something must come from a page of this very server. */
function judgeOrigin(knock: Knock, hosts: Hosts): TurnedAway | null {
  if (knock.method === 'GET' || knock.method === 'HEAD') return null;
  const host = knock.header('host')?.toLowerCase() ?? '';
  const own = `${hosts.get(host)}://${host}`;
  if (knock.header('origin')?.toLowerCase() === own) return null;
  return { status: 403, message: `A change must come from this shop's own pages: the Origin header must be ${own}.` };
}

function judgeBody(knock: Knock): TurnedAway | null {
  if (knock.method !== 'POST') return null;
  const limit = bodyLimit(knock.path);
  if (Number(knock.header('content-length')) > limit) {
    return { status: 413, message: `That is too long: at most ${bytesInWords(limit)} can be sent here.` };
  }
  return isApi(knock.path) ? null : judgeForm(knock);
}

/** A page takes forms and nothing else, so anything else is refused before it reaches the form reader. */
function judgeForm(knock: Knock): TurnedAway | null {
  if (knock.header('content-length') === null) {
    return { status: 411, message: 'A form must say how long it is (Content-Length).' };
  }
  const action = knock.header('next-action');
  if (action !== null && !/^[0-9a-f]{32,80}$/.test(action)) {
    return { status: 400, message: 'This form is not known. Reload the page and send it again.' };
  }
  const type = knock.header('content-type')?.toLowerCase() ?? '';
  const isForm = /^multipart\/form-data;.*boundary=/.test(type) || (action !== null && type.startsWith('text/plain'));
  return isForm ? null : { status: 415, message: 'A page takes forms only. Programs send JSON to /api/v1 instead.' };
}

/** The router's own header: a page of ours sends a tree of [segment, children]. Next answers 500 to anything else. */
function judgeRouterState(knock: Knock): TurnedAway | null {
  const state = knock.header('next-router-state-tree');
  if (state === null) return null;
  try {
    if (isRouterTree(JSON.parse(decodeURIComponent(state)))) return null;
  } catch {
    // Not JSON, or not percent-encoded: refused like a tree of the wrong shape.
  }
  return { status: 400, message: 'The page that asked is not known here. Reload it.' };
}

function isRouterTree(tree: unknown, depth = 0): boolean {
  if (depth > 40 || !Array.isArray(tree) || tree.length < 2) return false;
  const [segment, children]: unknown[] = tree;
  if (typeof segment !== 'string' && !Array.isArray(segment)) return false;
  if (typeof children !== 'object' || children === null || Array.isArray(children)) return false;
  return Object.values(children).every((child) => isRouterTree(child, depth + 1));
}
