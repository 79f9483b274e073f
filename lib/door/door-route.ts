import 'server-only';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Problem, ProblemCode } from '@/shared/api/problem';
import { Written } from '@/shared/json/written';
import { explain, type Outcome, type Refusal } from '@/shared/outcome';
import { type Asker, judged, type Refused } from '../access/asker';
import { letIn, shopsNamedIn } from '../access/let-in';
import type { May } from '../access/may';
import { cookiesIn } from '../access/session-cookie';
import { whoAsks } from '../access/who-asks';
import { withConfirmation } from '../confirmation';
import { ownHosts } from './allowed-hosts';
import { bodyLimit } from './body-limits';
import { secondsToWait, tooManyChanges } from './change-rate';
import { inPieces } from './in-pieces';
import { incidentSentence, logIncident, troubleSaid } from './incident';
import { judgeKnock, type Knock } from './judge-knock';
import { readFileBody, readJsonBody } from './read-body';
import { secondWordOf } from './second-word';
import { DATA_POLICY, FILE_POLICY, SECURITY_HEADERS } from './security-headers';
import { type Tell, toldInSteps, untold, wantsSteps } from './told-in-steps';
import { addressOfVisitor, type Visitor, visitorOf } from './visitor';

/**
 * What a route asks of whoever sends the request (`may`), in the shop that query and body name. What it takes: its query, and for a POST its JSON body; where it `takes` a file of some type, the body is its
 * bytes. `bodyLimit` says how long it may be. A POST that `looks` changes nothing and does not count as a change. `saveAs` names a download, which is JSON unless it has another `type`: then the
 * document is a text, or the bytes of a file that a browser shows. A `tagged` download has an ETag, and whoever
 * has it already is told that nothing has changed (304). With `html` the document is a page, which runs by the nonce it was given.
 * A route that `tells` says how far it is, to whoever accepts that.
 */
export type RouteContract<Q extends z.ZodType, B extends z.ZodType, T> = {
  may: May;
  query: Q;
  body?: B;
  takes?: string;
  looks?: boolean;
  saveAs?: (document: T, query: z.output<Q>) => string;
  type?: string;
  tagged?: boolean;
  tells?: boolean;
  html?: boolean;
};

/** What a route's handler is given, already read and judged. */
export type RouteInput<Q extends z.ZodType, B extends z.ZodType> = {
  query: z.output<Q>;
  body: z.output<B>;
  visitor: Visitor;
  /** The path that was asked for, as it was written. */
  path: string;
  /** What a script or style of a page has to carry. */
  nonce: string;
  /** Says how far it is. Whoever only wants the answer hears nothing of it. */
  tell: Tell;
  /** Aborted when whoever asks has gone. */
  signal: AbortSignal;
};

/**
 * Every route of the HTTP API is made by this: judge, who, read, ask, answer.
 *
 * Gives    the document as JSON; or `{ code, message, faults? }` with a status that says whose fault it is
 * Refuses  what the door refuses; nobody signed in (401); a role that may not do this in that shop (403); an unknown, doubled or malformed query field (400); a body that is too long,
 *          broken off or not JSON; a body the contract refuses (422, every fault); whatever the shop refuses
 */
export function doorRoute<Q extends z.ZodType, T, B extends z.ZodType = z.ZodType>(
  contract: RouteContract<Q, B, T>,
  answer: (input: RouteInput<Q, B>) => Promise<Outcome<T>>,
): (request: Request) => Promise<Response> {
  return async (request) => {
    try {
      const { pathname, searchParams } = new URL(request.url);
      const knock = { method: request.method, path: pathname, header: (name: string) => request.headers.get(name) };
      const turned = judgeKnock(knock, ownHosts());
      if (turned) return problem(turned.status, 'turned-away', turned.message);

      const asker = await whoAsks(cookiesIn(knock.header('cookie')));
      const sent = await readLetIn(contract, request, { asked: queryOf(searchParams), asker, knock });
      if (sent instanceof Response) return sent;
      const nonce = nonceIn(knock.header('content-security-policy'));
      const given = { ...sent, path: pathname, nonce, visitor: visitorOf(asker, knock.header), signal: request.signal };
      const answered = (tell: Tell) =>
        withConfirmation(secondWordOf(knock.header), () =>
          answerOrIncident(request, contract, sent.query, () => answer({ ...given, tell })),
        );
      const isTold = contract.tells === true && wantsSteps(knock.header);
      return isTold ? toldInSteps(dataHeaders(), answered) : await answered(untold);
    } catch (error) {
      return incident(request.method, error);
    }
  };
}

type Sender = { asked: Record<string, string | string[]>; asker: Asker; knock: Knock };

/**
 * What was sent, from somebody who may send it. Whoever may do this in no shop is turned away before a body is read; the shop
 * may stand in the body alone.
 */
async function readLetIn<Q extends z.ZodType, B extends z.ZodType, T>(
  contract: RouteContract<Q, B, T>,
  request: Request,
  { asked, asker, knock }: Sender,
): Promise<Response | Pick<RouteInput<Q, B>, 'query' | 'body'>> {
  const named = shopsNamedIn(asked);
  const cookie = cookiesIn(knock.header('cookie'));
  const early = contract.body && named.length === 0;
  const notIn = early ? judged(asker, contract.may, []) : letIn(asker, contract.may, named, cookie);
  if (notIn) return notLetIn(notIn);
  const query = contract.query.safeParse(asked);
  if (!query.success) return unreadable(400, 'This address asks for something else than is offered.', query.error);
  const seconds = contract.body && !contract.looks ? await secondsToWait(addressOfVisitor(knock.header)) : null;
  if (seconds !== null) return tooMany(seconds);
  const body = await readBody(contract, request);
  if (body instanceof Response) return body;
  const notThere = letIn(asker, contract.may, [...named, ...shopsNamedIn(body.value)], cookie);
  return notThere ? notLetIn(notThere) : { query: query.data, body: body.value };
}

/** 401 for somebody who is to sign in, 403 for somebody who is signed in and may not. */
const notLetIn = (why: Refused): Response => problem(why.code === 'not-allowed' ? 403 : 401, why.code, explain(why));

async function answerOrIncident<Q extends z.ZodType, T>(
  request: Request,
  { saveAs, type, tagged, html }: Pick<RouteContract<Q, z.ZodType, T>, 'saveAs' | 'type' | 'tagged' | 'html'>,
  query: z.output<Q>,
  answer: () => Promise<Outcome<T>>,
): Promise<Response> {
  try {
    const outcome = await answer();
    if (!outcome.ok) return refusal(outcome.refusal);
    if (html) return page(outcome.value, nonceIn(request.headers.get('content-security-policy')));
    if (!saveAs) return document(outcome.value);
    const answered = download(outcome.value, saveAs(outcome.value, query), type);
    return tagged ? await withTag(answered, request.headers.get('if-none-match')) : answered;
  } catch (error) {
    return incident(request.method, error);
  }
}

function incident(method: string, error: unknown): Response {
  const reference = logIncident(`${method} route`, error);
  const trouble = troubleSaid(error);
  if (trouble !== null) return problem(503, 'not-writable', trouble);
  return problem(500, 'fault-of-ours', incidentSentence(reference));
}

async function readBody<B extends z.ZodType>(
  contract: { body?: B; takes?: string },
  request: Request,
): Promise<Response | { value: z.output<B> }> {
  if (!contract.body) return { value: undefined as z.output<B> };
  const { takes } = contract;
  const limit = bodyLimit(new URL(request.url).pathname);
  const sent = await (takes ? readFileBody(request, takes, limit) : readJsonBody(request, limit));
  if (!sent.ok) return problem(sent.turned.status, 'turned-away', sent.turned.message);
  const reading = contract.body.safeParse(sent.value);
  return reading.success
    ? { value: reading.data }
    : unreadable(422, 'This body is not what this route takes. Nothing was changed.', reading.error);
}

/** Query fields by name. A field that came twice becomes a list, which no contract for text accepts. */
function queryOf(search: URLSearchParams): Record<string, string | string[]> {
  const names = [...new Set(search.keys())];
  return Object.fromEntries(
    names.map((name) => {
      const values = search.getAll(name);
      return [name, values.length > 1 ? values : (values[0] ?? '')];
    }),
  );
}

function document(content: unknown): Response {
  const headers = { ...dataHeaders(), 'Content-Type': 'application/json' };
  return new Response(content instanceof Written ? content.pieces : inPieces(content), { headers });
}

/** The nonce that the proxy gave this answer, which its policy names. */
const nonceIn = (policy: string | null): string => /'nonce-([^']+)'/.exec(policy ?? '')?.[1] ?? '';

/** A whole page. What it runs and shows has to carry the nonce, and it may ask this server alone. */
function page(content: unknown, nonce: string): Response {
  const { status, html } = HtmlPage.parse(content);
  const policy = [DATA_POLICY, `script-src 'nonce-${nonce}'`, `style-src 'nonce-${nonce}'`, "connect-src 'self'"];
  const headers = {
    ...dataHeaders(),
    'Content-Security-Policy': [...policy, "img-src 'self'"].join('; '),
    'Content-Type': 'text/html; charset=utf-8',
    'Referrer-Policy': 'no-referrer',
  };
  return new Response(html, { status, headers });
}

const HtmlPage = z.strictObject({ status: z.number(), html: z.string() });

/** A document to keep: laid out for people, under a name that is safe on every disk. */
function download(content: unknown, name: string, type = 'application/json'): Response {
  const safe = name.normalize('NFKD').replace(/[^\w.-]+/g, '-');
  if (content instanceof Uint8Array) return shownFile(content, safe, type);
  const whole = typeof content === 'string' ? content : null;
  const body = content instanceof Written ? content.pieces : (whole ?? `${JSON.stringify(content, null, 2)}\n`);
  return new Response(body, {
    headers: {
      ...dataHeaders(),
      'Content-Type': `${type}; charset=utf-8`,
      'Content-Disposition': `attachment; filename="${safe}"`,
    },
  });
}

/** The bytes of a file that a browser shows, and in which nothing of ours may run. */
function shownFile(content: Uint8Array, name: string, type: string): Response {
  return new Response(new Uint8Array(content), {
    headers: {
      ...dataHeaders(),
      'Content-Security-Policy': FILE_POLICY,
      'Content-Type': type,
      'Content-Disposition': `inline; filename="${name}"`,
    },
  });
}

/** The same with a tag made of what it says; without its body for whoever names that tag. */
async function withTag(answered: Response, known: string | null): Promise<Response> {
  const body = await answered.text();
  const tag = `"${createHash('sha256').update(body).digest('base64url').slice(0, 24)}"`;
  const headers = new Headers(answered.headers);
  headers.set('ETag', tag);
  const isKnown = (known ?? '').split(',').some((one) => one.trim().replace(/^W\//, '') === tag);
  return isKnown ? new Response(null, { status: 304, headers }) : new Response(body, { headers });
}

function refusal(why: Refusal): Response {
  const status = {
    'not-found': 404,
    'no-such-route': 404,
    'same-key-other-body': 409,
    'shop-changed-since-preview': 409,
    'changed-meanwhile': 409,
    'already-done': 409,
    'clock-moved': 409,
    'opens-earlier': 409,
    'many-bottles': 409,
    'not-writable': 503,
    'disk-full': 507,
  };
  const answered = why.code in status ? status[why.code as keyof typeof status] : 422;
  if (why.code === 'opens-earlier' || why.code === 'many-bottles') {
    const [path, said] = why.code === 'opens-earlier' ? ['benches', why.openings] : ['lots', why.said];
    const faults = said.map((message) => ({ path, message }));
    return problem(answered, why.code, explain(why), { faults, confirm: why.token });
  }
  return problem(answered, why.code, explain(why), why.code === 'faults' ? { faults: why.faults } : {});
}

function unreadable(status: number, message: string, error: z.ZodError): Response {
  const faults = error.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message }));
  return problem(status, 'unreadable', message, { faults });
}

function tooMany(seconds: number): Response {
  const answered = problem(429, 'turned-away', tooManyChanges(seconds));
  answered.headers.set('Retry-After', String(seconds));
  return answered;
}

type Details = Pick<Problem, 'faults' | 'confirm'>;

function problem(status: number, code: ProblemCode, message: string, details: Details = {}): Response {
  const told: Problem = { code, message, ...details };
  // What cannot be written now may be written soon: another program holds the file, or the disk is being cleared.
  const later: Record<string, string> = status === 503 ? { 'Retry-After': '3' } : {};
  return Response.json(told, { status, headers: { ...dataHeaders(), ...later } });
}

function dataHeaders(): Record<string, string> {
  return { ...SECURITY_HEADERS, 'Content-Security-Policy': DATA_POLICY, 'Cache-Control': 'no-store' };
}
