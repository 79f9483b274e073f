/** Who is at the door: the name that entries are signed with. */
export type Visitor = { actor: string };

/** The request header in which the front of the server gives the sender's address. Never taken from outside. */
export const ADDRESS_HEADER = 'x-bench-address';

/** The cookie in which a browser remembers who works with it. */
export const ENTERED_AS = 'entered-as';

/** Until somebody gives a name, entries are the owner's. */
const NOBODY_NAMED = 'owner';

/**
 * The person behind a request. The one place where sign-in and roles will be checked, for pages, forms and the HTTP API
 * alike. Until there is sign-in, whoever reaches this machine's own address may do everything, and says who they are.
 *
 * Takes    the headers of the request
 */
export function visitorOf(header: (name: string) => string | null): Visitor {
  const cookies = (header('cookie') ?? '').split(';').map((cookie) => cookie.trim());
  const named = cookies.find((cookie) => cookie.startsWith(`${ENTERED_AS}=`))?.slice(ENTERED_AS.length + 1);
  return { actor: readName(named ?? '') ?? NOBODY_NAMED };
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
