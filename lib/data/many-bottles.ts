import 'server-only';
import { reasonGiven } from '@/lib/confirmation';
import type { Refusal } from '@/shared/outcome';
import { grouped } from '@/shared/shop-file/limits';
import { fingerprint } from './fingerprint';
import type { Command, Stamp } from './writer';

/** So many bottles at once are more likely a digit too many: a person looks at the count a second time. */
const MANY = 500;

/** Commands that bring one delivery, of which all bottles count together. A file brings the lots of years. */
const DELIVERIES: ReadonlySet<string> = new Set(['receiveLot', 'receiveDelivery', 'receiveOrder']);

/**
 * Whether a command has put so many bottles on the shelf that a person should look at the count once more: over 500 in one
 * lot, or in one delivery. Then it is to be rolled back, unless the request carries the word of a person who was shown them.
 *
 * Gives    the refusal, with a sentence for each; null when there are fewer, or it is confirmed
 */
export function manyBottles(stamp: Stamp, { name }: Command): Refusal | null {
  const { came } = stamp;
  const large = came.filter(({ count }) => count > MANY);
  const together = came.reduce((sum, { count }) => sum + count, 0);
  const isLargeDelivery = DELIVERIES.has(name) && together > MANY;
  if (large.length === 0 && !isLargeDelivery) return null;
  const token = fingerprint(['many bottles', came.map(({ product, pack, count }) => [product, pack, count])]);
  if (reasonGiven(token) !== null) {
    stamp.confirmed = token;
    return null;
  }
  const said = large.map(({ product, pack, count }) => `${grouped(count)} bottles of ${pack} of product "${product}".`);
  if (said.length === 0) said.push(`${grouped(together)} bottles in one delivery.`);
  return { code: 'many-bottles', token, said: said.slice(0, MOST_SENTENCES) };
}

const MOST_SENTENCES = 20;
