import { RateLimiterMemory } from 'rate-limiter-flexible';
import { wholeSeconds } from '@/shared/quantity/rounding';

/** Changes that one visitor may send in a minute: one a second, which no hand keeps up. CHANGES_PER_MINUTE sets another. */
const CHANGES_PER_MINUTE = 60;

/** The front of the server, the pages and the routes are bundled apart, so they meet at a name on the global object. */
const LIMITER = Symbol.for('bench-and-bottle.change-rate');

/**
 * Count one change of a visitor.
 *
 * Takes    the address that the request came from
 * Gives    null while there are few; else after how many seconds the next one is taken, rounded up
 */
export async function secondsToWait(visitor: string): Promise<number | null> {
  try {
    await limiter().consume(visitor);
    return null;
  } catch (tooMany) {
    if (isTooMany(tooMany)) return Math.max(1, wholeSeconds(tooMany.msBeforeNext));
    throw tooMany;
  }
}

/** What is said to a visitor who sends too many changes. */
export const tooManyChanges = (seconds: number): string =>
  `That is more changes in a minute than one person makes. Wait ${seconds} ${seconds === 1 ? 'second' : 'seconds'}, then send it again. Nothing was changed.`;

function limiter(): RateLimiterMemory {
  const known: unknown = Reflect.get(globalThis, LIMITER);
  if (isLimiter(known)) return known;
  const points = Number(process.env.CHANGES_PER_MINUTE) || CHANGES_PER_MINUTE;
  const fresh = new RateLimiterMemory({ points, duration: 60 });
  Reflect.set(globalThis, LIMITER, fresh);
  return fresh;
}

/** What the limiter throws once the points of the minute are used up. */
const isTooMany = (thrown: unknown): thrown is { msBeforeNext: number } =>
  typeof thrown === 'object' && thrown !== null && 'msBeforeNext' in thrown;

/** Two bundles hold two copies of the class, so an instance is known by what it can do. */
const isLimiter = (known: unknown): known is RateLimiterMemory =>
  typeof known === 'object' && known !== null && 'consume' in known;
