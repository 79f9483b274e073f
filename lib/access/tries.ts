import { RateLimiterMemory } from 'rate-limiter-flexible';
import { wholeSeconds } from '@/shared/quantity/rounding';

/*
 * How often a password may be tried: five times for one account, and twenty times from one address, in fifteen minutes. A
 * browser in which the person has signed in before is counted by itself, so that nobody who guesses from elsewhere keeps
 * them out.
 */
const FIFTEEN_MINUTES = 15 * 60;
const BY_ACCOUNT = 5;
const BY_ADDRESS = 20;

/** Pages and routes are bundled apart, so they meet at a name on the global object. */
const NAME = Symbol.for('bench-and-bottle.tries');

type Limiters = { account: RateLimiterMemory; address: RateLimiterMemory };

/** Whose try it is: the account as it was named, the device when it is known to be the person's, and the address. */
export type Trier = { account: string; knownDevice: string | null; address: string };

/**
 * Count one try before it is made, so that tries at the same time count, too.
 *
 * Gives    null when it may be made; else after how many seconds the next one may, rounded up
 */
export async function secondsToNextTry(trier: Trier): Promise<number | null> {
  const { account, address } = limiters();
  try {
    await address.consume(trier.address);
    await account.consume(accountKey(trier));
    return null;
  } catch (tooMany) {
    if (isTooMany(tooMany)) return Math.max(1, wholeSeconds(tooMany.msBeforeNext));
    throw tooMany;
  }
}

/** A try that was right does not count, and ends the count of its account. */
export async function forgetTries(trier: Trier): Promise<void> {
  const { account, address } = limiters();
  await account.delete(accountKey(trier));
  await address.reward(trier.address);
}

const accountKey = ({ account, knownDevice }: Trier): string => `${account} ${knownDevice ?? ''}`;

function limiters(): Limiters {
  const known: unknown = Reflect.get(globalThis, NAME);
  if (areLimiters(known)) return known;
  const fresh = {
    account: new RateLimiterMemory({ points: BY_ACCOUNT, duration: FIFTEEN_MINUTES }),
    address: new RateLimiterMemory({ points: BY_ADDRESS, duration: FIFTEEN_MINUTES }),
  };
  Reflect.set(globalThis, NAME, fresh);
  return fresh;
}

const isTooMany = (thrown: unknown): thrown is { msBeforeNext: number } =>
  typeof thrown === 'object' && thrown !== null && 'msBeforeNext' in thrown;

/** Two bundles hold two copies of the class, so an instance is known by what it can do. */
const areLimiters = (known: unknown): known is Limiters =>
  typeof known === 'object' && known !== null && 'account' in known && 'address' in known;
