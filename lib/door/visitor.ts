import type { Asker } from '../access/asker';

/** Who is at the door: the name that entries are signed with, and the person; null where nobody signs in. */
export type Visitor = { actor: string; personId: string | null };

/** The request header in which the front of the server gives the sender's address. Never taken from outside. */
export const ADDRESS_HEADER = 'x-bench-address';

/** The cookie in which a browser remembers who works with it. */
export const ENTERED_AS = 'entered-as';

/** Until somebody gives a name, entries are the owner's. */
const NOBODY_NAMED = 'owner';

/**
 * The person behind a request, who has been let in. Where nobody owns the shop yet, whoever reaches this machine's own
 * address may do everything, and says who they are.
 *
 * Takes    who asks, and the headers of the request
 */
export function visitorOf(asker: Asker, header: (name: string) => string | null): Visitor {
  if (asker.kind === 'person') return { actor: asker.person.name, personId: asker.person.id };
  const cookies = (header('cookie') ?? '').split(';').map((cookie) => cookie.trim());
  const named = cookies.find((cookie) => cookie.startsWith(`${ENTERED_AS}=`))?.slice(ENTERED_AS.length + 1);
  return { actor: readName(named ?? '') ?? NOBODY_NAMED, personId: null };
}

/** The address that a request came from, as the front of the server saw it. Limits are counted by it. */
export const addressOfVisitor = (header: (name: string) => string | null): string =>
  header(ADDRESS_HEADER) ?? 'unknown';

function readName(written: string): string | null {
  try {
    const name = decodeURIComponent(written).trim();
    return name !== '' && name.length <= LONGEST_NAME && !/\p{C}/u.test(name) ? name : null;
  } catch {
    // A cookie that was not written by us names nobody.
    return null;
  }
}

/** As long as a name may be. */
const LONGEST_NAME = 60;
