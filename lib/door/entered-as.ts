import 'server-only';
import { headers } from 'next/headers';
import { whoAsksHere } from '../access/who-asks';
import { visitorOf } from './visitor';

/** Whose name entries from this browser carry. */
export async function enteredAs(): Promise<string> {
  const sent = await headers();
  return visitorOf(await whoAsksHere(), (name) => sent.get(name)).actor;
}
