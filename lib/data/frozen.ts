/**
 * In the tests: a thing with all that it holds, which nobody can change any more. It holds everybody who shares it to
 * leaving it as it is. Outside of the tests the thing itself, because freezing a large shop takes longer than reading it.
 */
export function frozenInTests<T>(thing: T): T {
  if (process.env.VITEST) freeze(thing);
  return thing;
}

function freeze(thing: unknown): void {
  if (typeof thing !== 'object' || thing === null || Object.isFrozen(thing)) return;
  Object.freeze(thing);
  for (const part of Object.values(thing)) freeze(part);
}
