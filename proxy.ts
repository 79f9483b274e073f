import { type NextRequest, NextResponse } from 'next/server';
import { ownHosts } from '@/lib/door/allowed-hosts';
import { ALONE_HEADER } from '@/lib/door/alone';
import { judgeKnock, turnedProblem } from '@/lib/door/judge-knock';
import { PATH_HEADER } from '@/lib/door/path-header';
import { DATA_POLICY, pagePolicy, SECURITY_HEADERS } from '@/lib/door/security-headers';

/** Judges every page request, and gives each page a content policy with a nonce of its own. */
export function proxy(request: NextRequest): NextResponse {
  const { method, headers, nextUrl } = request;
  const turned = judgeKnock({ method, path: nextUrl.pathname, header: (name) => headers.get(name) }, ownHosts());
  if (turned) {
    return dressed(NextResponse.json(turnedProblem(turned), { status: turned.status }), DATA_POLICY);
  }
  const policy = pagePolicy(freshNonce(), process.env.NODE_ENV === 'development');
  const inward = new Headers([...headers].filter(([name]) => !name.startsWith('x-forwarded-')));
  // What is shown behind a secret link stands in a frame of its own, which leads nowhere else.
  inward.delete(ALONE_HEADER);
  if (nextUrl.pathname.startsWith('/board/')) inward.set(ALONE_HEADER, 'board');
  inward.set(PATH_HEADER, `${nextUrl.pathname}${nextUrl.search}`);
  // Next finds the nonce in this header and puts it on its own scripts and styles.
  inward.set('content-security-policy', policy);
  return dressed(NextResponse.next({ request: { headers: inward } }), policy);
}

/**
 * Next would cut a body at 10 MB for a proxied route and say nothing, so the API is left to its own routes:
 * `doorRoute` judges, counts and dresses each of them. Built files under _next/static need no policy.
 */
export const config = { matcher: ['/((?!api/|_next/static/).*)'] };

function freshNonce(): string {
  return Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64');
}

function dressed(response: NextResponse, policy: string): NextResponse {
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.headers.set(name, value);
  response.headers.set('Content-Security-Policy', policy);
  return response;
}
