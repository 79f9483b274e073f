/** Work that pauses every so often, so that whoever goes through it can let others go first. */
export type Steps<T> = Generator<undefined, T, undefined>;

/** Go through all steps without a pause. */
export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Make something of each thing of a list, with a pause after every few. */
export function* eachInSteps<T, U>(list: readonly T[], few: number, make: (one: T, at: number) => U): Steps<U[]> {
  const made: U[] = [];
  for (const [at, one] of list.entries()) {
    if (at > 0 && at % few === 0) yield;
    made.push(make(one, at));
  }
  return made;
}
