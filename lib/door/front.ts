import { randomBytes } from 'node:crypto';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { isIP } from 'node:net';
import { ownHosts } from './allowed-hosts';
import { DEEPEST_BODY, isApi } from './body-limits';
import { concurrencyGate } from './concurrency';
import { hasEntered } from './entered';
import { isHeldFormTooDeep } from './held-form';
import { REQUEST_ID_HEADER } from './incident';
import { judgeKnock, type TurnedAway, turnedProblem } from './judge-knock';
import { watchAnswer } from './request-log';
import { DATA_POLICY, SECURITY_HEADERS } from './security-headers';
import { turnedPage } from './turned-page';
import { ADDRESS_HEADER } from './visitor';

/**
 * Stands in front of Next: every request, to whatever path, is judged before Next sees it, and every answer
 * carries the security headers. No visitor has more than so many requests answered at once.
 *
 * Next answers 500 when a form cannot be decoded, as if the fault were ours. So when a POST to a page ends in 500
 * and no action of ours ever began, the sender is told 400 with a sentence instead.
 */
export function frontOf(handle: RequestListener, atOnce = concurrencyGate()): RequestListener {
  return (request, response) => {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    const requestId = randomBytes(12).toString('hex');
    watchAnswer(request, response, requestId);
    const turned = judgeTwice(request) ?? judgeKnock(knockOf(request), ownHosts());
    if (turned) return turnAway(request, response, turned);

    const address = addressOf(request);
    dropForwarded(request);
    request.headers[REQUEST_ID_HEADER] = requestId;
    request.headers[ADDRESS_HEADER] = address;
    const isForm = request.method === 'POST' && !isApi(request.url ?? '');
    const admitted = async (): Promise<TurnedAway | null> => {
      if (isForm && (await isHeldFormTooDeep(request))) return TOO_DEEP;
      return (await atOnce(address, response)) ? null : TOO_MANY;
    };
    admitted().then((refused) => {
      if (refused) return turnAway(request, response, refused);
      if (isForm) blameTheSender(response, requestId);
      return handle(request, response);
    });
  };
}

const TOO_DEEP: TurnedAway = {
  status: 400,
  message: `Lists and objects in the form nest more than ${DEEPEST_BODY} deep. Nothing was changed.`,
};

const TOO_MANY: TurnedAway = {
  status: 503,
  message: 'Too much was asked for at once from this device. Wait a few seconds, then try again. Nothing was changed.',
};

/** The sender's address: what a limit is counted by. A network gives one home a whole /64 of the newer addresses. */
function addressOf(request: IncomingMessage): string {
  const peer = (request.socket.remoteAddress ?? 'unknown').replace(/^::ffff:/, '');
  const address = isReverseProxy(peer) ? (lastForwarded(request) ?? peer) : peer;
  return address.includes(':') ? address.split(':').slice(0, 4).join(':') : address;
}

/**
 * A reverse proxy on this machine says for whom it asks; without that, all devices would share one limit. Only what it
 * added itself counts, the last entry, since anybody can write the ones before.
 */
const isReverseProxy = (peer: string): boolean =>
  Boolean(process.env.PUBLIC_URL) && !process.env.NETWORK && (peer.startsWith('127.') || peer === '::1');

function lastForwarded({ headers }: IncomingMessage): string | null {
  const last =
    String(headers['x-forwarded-for'] ?? '')
      .split(',')
      .at(-1)
      ?.trim() ?? '';
  return isIP(last) ? last : null;
}

function knockOf(request: IncomingMessage) {
  const header = (name: string) => {
    const value = request.headers[name];
    return value === undefined ? null : String(value);
  };
  return { method: request.method ?? '', path: request.url ?? '', header };
}

/** Node keeps the first of two Host headers; who sends two means to be read differently by someone. */
function judgeTwice(request: IncomingMessage): TurnedAway | null {
  const names = request.rawHeaders.filter((_, index) => index % 2 === 0).map((name) => name.toLowerCase());
  const doubled = ['host', 'origin', 'content-type'].find((name) => names.indexOf(name) !== names.lastIndexOf(name));
  return doubled ? { status: 400, message: `The ${doubled} header came twice.` } : null;
}

/** No X-Forwarded-* may reach Next, which would believe it: the scheme and the host go by PUBLIC_URL and the Host. */
function dropForwarded(request: IncomingMessage): void {
  for (const name of Object.keys(request.headers)) {
    if (
      name.startsWith('x-forwarded-') ||
      name === 'forwarded' ||
      name === REQUEST_ID_HEADER ||
      name === ADDRESS_HEADER
    ) {
      delete request.headers[name];
    }
  }
}

/** How long the rest of a body that was turned away is read and thrown away, so that the sender sees the answer. */
const LINGER_MS = 2_000;

/** Answer with one sentence and hang up. Who is still sending is heard out a little, and then cut off. */
function turnAway(request: IncomingMessage, response: ServerResponse, turned: TurnedAway): void {
  if (response.headersSent || response.destroyed) return;
  if (turned.status === 405) response.setHeader('Allow', 'GET, HEAD, POST, OPTIONS');
  if (turned.status === 503) response.setHeader('Retry-After', '3');
  if (turned.isOtherSite && isOpenedByAPerson(request)) sendPage(response, turned.status, request.url ?? '/');
  else sendSentence(response, turned.status, turned.message);
  request.resume();
  setTimeout(() => request.complete || request.socket.destroy(), LINGER_MS).unref();
}

/** True when a browser asks for a whole page because somebody followed a link. */
function isOpenedByAPerson({ method, headers }: IncomingMessage): boolean {
  return method === 'GET' && headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document';
}

function sendPage(response: ServerResponse, status: number, path: string): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'text/html; charset=utf-8');
  response.setHeader('Content-Security-Policy', DATA_POLICY);
  response.setHeader('Cache-Control', 'no-store');
  response.end(turnedPage(path));
}

function sendSentence(response: ServerResponse, status: number, message: string): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'application/json; charset=utf-8');
  response.setHeader('Content-Security-Policy', DATA_POLICY);
  response.setHeader('Cache-Control', 'no-store');
  response.end(JSON.stringify(turnedProblem({ message })));
}

function blameTheSender(response: ServerResponse, requestId: string): void {
  const original = { write: response.write, end: response.end, writeHead: response.writeHead };
  let replaced = false;
  const isUnread = () => !response.headersSent && response.statusCode >= 500 && !hasEntered(requestId);
  const guard =
    (name: 'write' | 'end' | 'writeHead') =>
    (...given: unknown[]) => {
      if (name === 'writeHead' && typeof given[0] === 'number') response.statusCode = given[0];
      if (!replaced && isUnread()) {
        replaced = true;
        Object.assign(response, original);
        sendUnread(response);
        // Next goes on writing its own error page; it is left to speak into the void.
        Object.assign(response, { write: () => true, end: () => response, writeHead: () => response });
      }
      return replaced ? response : Reflect.apply(original[name], response, given);
    };
  Object.assign(response, { write: guard('write'), end: guard('end'), writeHead: guard('writeHead') });
  response.once('close', () => hasEntered(requestId));
}

function sendUnread(response: ServerResponse): void {
  const kept = new Set(Object.keys(SECURITY_HEADERS).map((name) => name.toLowerCase()));
  for (const name of response.getHeaderNames()) if (!kept.has(name)) response.removeHeader(name);
  sendSentence(response, 400, 'This form could not be read. Reload the page and send it again. Nothing was changed.');
}
