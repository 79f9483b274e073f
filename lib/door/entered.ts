/**
 * Which requests have reached an action of ours. The front of the server and the pages are two separate
 * bundles in one process, so they meet at a name on the global object.
 *
 * The front asks this when Next answers 500: if the action never began, the form itself could not be read,
 * which is the sender's fault (400) and not ours.
 */
const ENTERED = Symbol.for('bench-and-bottle.entered');

export function markEntered(requestId: string | null): void {
  if (requestId !== null) enteredRequests().add(requestId);
}

/** Whether the request reached an action; asking also forgets it. */
export function hasEntered(requestId: string): boolean {
  return enteredRequests().delete(requestId);
}

function enteredRequests(): Set<string> {
  const known: unknown = Reflect.get(globalThis, ENTERED);
  if (known instanceof Set) return known;
  const fresh = new Set<string>();
  Reflect.set(globalThis, ENTERED, fresh);
  return fresh;
}
