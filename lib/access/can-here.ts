import 'server-only';
import { letIn } from './let-in';
import type { May } from './may';
import { cookiesHere } from './session-cookie';
import { whoAsksHere } from './who-asks';

/** What whoever asks may do in the shop that the device works in. A page shows nobody what would be refused. */
export async function canHere(): Promise<(may: May) => boolean> {
  const [asker, cookie] = [await whoAsksHere(), await cookiesHere()];
  return (may) => letIn(asker, may, [], cookie) === null;
}
