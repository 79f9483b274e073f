import 'server-only';
import { headers } from 'next/headers';

/** The nonce of the page that is being made: a script of its own runs only with it. */
export async function pageNonce(): Promise<string | undefined> {
  return /'nonce-([^']+)'/.exec((await headers()).get('content-security-policy') ?? '')?.[1];
}
