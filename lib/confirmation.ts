import { AsyncLocalStorage } from 'node:async_hooks';

/**
 * The second word of whoever sends a request: that a change is right although it opens a bench earlier. The door reads it
 * from a form or from headers, and the one writer asks for it, so that no command has to hand it on.
 */
export type Confirmation = {
  /** What was shown to the person: the same benches with the same ends. */
  token: string;
  reason: string;
};

// The door and the writer may stand in separate bundles of one process, so they meet at a name on the global object.
const NAME = Symbol.for('bench-and-bottle.confirmation');

function storage(): AsyncLocalStorage<Confirmation | null> {
  const known: unknown = Reflect.get(globalThis, NAME);
  if (known instanceof AsyncLocalStorage) return known;
  const fresh = new AsyncLocalStorage<Confirmation | null>();
  Reflect.set(globalThis, NAME, fresh);
  return fresh;
}

/** Run something with the confirmation that its request carries. */
export const withConfirmation = <T>(confirmation: Confirmation | null, run: () => Promise<T>): Promise<T> =>
  storage().run(confirmation, run);

/** The confirmation of the request that is being answered; null when it carries none. */
export const confirmationGiven = (): Confirmation | null => storage().getStore() ?? null;

/**
 * The reason with which a person has confirmed something that was shown with a token; null where nobody has. One request
 * may confirm several things, each with its token.
 */
export function reasonGiven(token: string): string | null {
  const given = confirmationGiven();
  const reason = given?.token.split('+').includes(token) ? given.reason.trim() : '';
  return reason === '' ? null : reason;
}
