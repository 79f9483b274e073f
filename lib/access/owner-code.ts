import 'server-only';
import { randomInt, timingSafeEqual } from 'node:crypto';
import { hasPeople } from '@/lib/data/people';
import { beyondLoopback } from '@/lib/door/allowed-hosts';
import { hashOf } from './secrets';

/*
 * Where others reach a shop that nobody owns yet, whoever comes first could make themselves its owner. So that takes a code
 * that only the terminal shows in which the shop was started. It lasts as long as this process.
 */

/** The start of the server and the pages are bundled apart, so they meet at a name on the global object. */
const NAME = Symbol.for('bench-and-bottle.owner-code');

/** Signs that nobody takes for another one. Ten of them are 49 bits. */
const SIGNS = 'abcdefghjkmnpqrstuvwxyz23456789';
const LENGTH = 10;

/** Show a code in the terminal, where a shop is about to be served to others that has no owner. */
export async function tellOwnerCode(): Promise<void> {
  if (!beyondLoopback() || (await hasPeople())) return;
  const code = Array.from({ length: LENGTH }, () => SIGNS[randomInt(SIGNS.length)]).join('');
  Reflect.set(globalThis, NAME, hashOf(code));
  const shown = `${code.slice(0, 5)}-${code.slice(5)}`;
  console.log(`\n  This shop has no owner yet. Open it and make the owner's sign-in with this code: ${shown}\n`);
}

/** Whether the owner's sign-in takes the code. */
export const isCodeAsked = (): boolean => beyondLoopback();

/** Whether somebody has the code, however they wrote it. */
export function isOwnerCode(typed: string): boolean {
  const kept: unknown = Reflect.get(globalThis, NAME);
  if (typeof kept !== 'string') return false;
  const plain = typed.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
  return timingSafeEqual(Buffer.from(hashOf(plain)), Buffer.from(kept));
}
