import { randomBytes } from 'node:crypto';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { ownHosts } from './allowed-hosts';
import { hasEntered } from './entered';
import { REQUEST_ID_HEADER } from './incident';
import { judgeKnock, type TurnedAway, turnedProblem } from './judge-knock';
import { DATA_POLICY, SECURITY_HEADERS } from './security-headers';

/**
 * Stands in front of Next: every request, to whatever path, is judged before Next sees it, and every answer
 * carries the security headers.
 *
 * Next answers 500 when a form cannot be decoded, as if the fault were ours. So when a POST to a page ends in 500
 * and no action of ours ever began, the sender is told 400 with a sentence instead.
 */
export function frontOf(handle: RequestListener): RequestListener {
  return (request, response) => {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    const turned = judgeTwice(request) ?? judgeKnock(knockOf(request), ownHosts());
    if (turned) return turnAway(request, response, turned);

    dropForwarded(request);
    const requestId = randomBytes(12).toString('hex');
    request.headers[REQUEST_ID_HEADER] = requestId;
    if (request.method === 'POST' && !/^\/api\//i.test(request.url ?? '')) blameTheSender(response, requestId);
    handle(request, response);
  };
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

/** Nothing trusted stands in front of this server, so no X-Forwarded-* may reach Next, which would believe it. */
function dropForwarded(request: IncomingMessage): void {
  for (const name of Object.keys(request.headers)) {
    if (name.startsWith('x-forwarded-') || name === 'forwarded' || name === REQUEST_ID_HEADER) {
      delete request.headers[name];
    }
  }
}

/** How long the rest of a body that was turned away is read and thrown away, so that the sender sees the answer. */
const LINGER_MS = 2_000;

/** Answer with one sentence and hang up. Who is still sending is heard out a little, and then cut off. */
function turnAway(request: IncomingMessage, response: ServerResponse, { status, message }: TurnedAway): void {
  if (status === 405) response.setHeader('Allow', 'GET, HEAD, POST, OPTIONS');
  sendSentence(response, status, message);
  request.resume();
  setTimeout(() => request.complete || request.socket.destroy(), LINGER_MS).unref();
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
