import type { Prices } from './cheapest-column';
import type { Slot, Slots } from './slots';

/** How much each part was in each order lately, between not at all (0) and always (1): by part, by slot. */
export type Presence = Float64Array[];

/** Presence with the orders of one more choice: what was so before counts on, so that prices do not swing. */
export function blended(before: Presence, isIn: readonly ReadonlySet<number>[], weight: number): Presence {
  return before.map((its, part) => {
    const next = its.map((value) => value * (1 - weight));
    for (const slot of isIn[part] ?? []) next[slot] = (next[slot] ?? 0) + weight;
    return next;
  });
}

/** The prices of the orders for each part, and how much of each micro of goods the step to free freight gives back. */
export type Dual = { prices: Prices[]; free: Float64Array };

/**
 * Prices of the orders a step further: parts that are in an order more than others pay more for it, the others less, and
 * together they pay what the order costs, no more and no less. Up such steps the proven bound climbs.
 *
 * Takes    the slots that each part may be in, how much each was in them, and how long the step is
 */
export function stepUp(
  slots: Slots,
  { prices, free }: Dual,
  mayUse: readonly ReadonlySet<number>[],
  presence: Presence,
  size: number,
): Dual {
  const next = prices.map(({ fixed, reward }) => ({ fixed: new Float64Array(fixed.length), reward }));
  for (const [slot, one] of slots.all.entries()) {
    const users = usersOf(slot, mayUse);
    const shared = sharedAt(one, free[slot] ?? 0, prices[0]?.reward[slot] ?? 0);
    if (shared === 0 || users.length === 0) continue;
    const wanted = users.map((part) => (prices[part]?.fixed[slot] ?? 0) + size * (presence[part]?.[slot] ?? 0));
    for (const [index, value] of ontoSum(wanted, shared).entries()) {
      const its = next[users[index] ?? 0];
      if (its) its.fixed[slot] = value;
    }
  }
  return { prices: next, free };
}

/**
 * What the parts in an order may pay for it together without the order itself coming out below nothing: its freight and
 * what its minimum is worth; where freight can become free, no more than what the goods for that give back.
 */
function sharedAt({ freight, freeOver, minimum }: Slot, free: number, reward: number): number {
  const asked = minimum * (reward - free);
  return freeOver === null ? freight + asked : Math.min(freight, free * freeOver) + asked;
}

/**
 * The first prices: what an order costs is shared equally by all who may be in it.
 *
 * Takes    how much of a freight that can become free counts: all of it makes each micro of goods give some of it back
 */
export function equalShares(slots: Slots, mayUse: readonly ReadonlySet<number>[], counts: number): Dual {
  const width = slots.all.length;
  const free = Float64Array.from(slots.all, ({ freight, freeOver }) => (freeOver ? (freight * counts) / freeOver : 0));
  const prices = mayUse.map(() => ({ fixed: new Float64Array(width), reward: free }));
  return stepUp(slots, { prices, free }, mayUse, [], 0);
}

/** How far apart the parts are on each order, squared and added up: how long a step has to be follows from it. */
export function spreadOf(slots: Slots, mayUse: readonly ReadonlySet<number>[], presence: Presence): number {
  let spread = 0;
  for (let slot = 0; slot < slots.all.length; slot++) {
    let [users, sum, squares] = [0, 0, 0];
    for (const [part, its] of mayUse.entries()) {
      if (!its.has(slot)) continue;
      const one = presence[part]?.[slot] ?? 0;
      users += 1;
      sum += one;
      squares += one * one;
    }
    if (users > 0) spread += squares - (sum * sum) / users;
  }
  return spread;
}

const usersOf = (slot: number, mayUse: readonly ReadonlySet<number>[]): number[] =>
  mayUse.flatMap((its, part) => (its.has(slot) ? part : []));

/** The nearest values to some wanted ones, none below nothing, that add up to a sum. */
export function ontoSum(wanted: readonly number[], sum: number): number[] {
  const falling = [...wanted].sort((a, b) => b - a);
  let [added, off] = [0, 0];
  for (const [index, value] of falling.entries()) {
    added += value;
    const each = (added - sum) / (index + 1);
    if (value - each > 0) off = each;
  }
  return wanted.map((value) => Math.max(0, value - off));
}

/** Prices half way between two. */
export function between(a: Dual, b: Dual): Dual {
  const half = (one: Float64Array, other: Float64Array) => one.map((value, at) => (value + (other[at] ?? 0)) / 2);
  return {
    free: half(a.free, b.free),
    prices: a.prices.map(({ fixed, reward }, part) => ({
      fixed: half(fixed, b.prices[part]?.fixed ?? fixed),
      reward: half(reward, b.prices[part]?.reward ?? reward),
    })),
  };
}
