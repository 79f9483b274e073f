import 'server-only';
import type { Clock } from '@/lib/clock';
import { giveRole, inPeople, insertPerson, noteAccess, shopIdsIn } from '@/lib/data/save-people';
import { passwordFault } from '@/shared/access/password-fault';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { isCodeAsked, isOwnerCode } from './owner-code';
import { keptPassword } from './password-hash';
import { secondsToNextTry } from './tries';

/** The owner's sign-in as it was typed, and where it was sent from. */
export type FirstOwner = { name: string; password: string; code: string; address: string };

/**
 * Make the sign-in of the first person here, who owns every shop there is. From then on nothing is open any more.
 *
 * Gives    the id of the person
 * Refuses  'owner-there' once there is somebody; 'faults' for a password that cannot be taken, or for a wrong code where
 *          one is asked for; 'too-many-tries' of that code
 */
export async function makeFirstOwner(
  { name, password, code, address }: FirstOwner,
  clock: Clock,
): Promise<Outcome<{ personId: string }>> {
  const fault = passwordFault(password, [name]);
  if (fault !== null) return refuse({ code: 'faults', faults: [{ path: 'password', message: fault }] });
  if (isCodeAsked()) {
    const seconds = await secondsToNextTry({ account: "the owner's code", knownDevice: null, address });
    if (seconds !== null) return refuse({ code: 'too-many-tries', seconds });
    if (!isOwnerCode(code)) return refuse({ code: 'faults', faults: [{ path: 'code', message: WRONG_CODE }] });
  }
  const passwordHash = await keptPassword(password);
  const now = clock.now();
  const made = await inPeople(async (rows) => {
    if ((await rows.person.count()) > 0) return null;
    const personId = await insertPerson(rows, { name, passwordHash, madeBy: name, madeAt: now });
    if (personId === null) return null;
    for (const shopId of await shopIdsIn(rows)) {
      await giveRole(rows, { shopId, personId, role: 'owner', givenBy: name, givenAt: now });
    }
    await noteAccess(rows, { personId, what: 'first owner', actor: name, recordedAt: now });
    return { personId };
  });
  return made ? accept(made) : refuse({ code: 'owner-there' });
}

const WRONG_CODE = 'This is not the code. It stands in the terminal in which the shop was started.';
