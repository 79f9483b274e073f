import type { Supplier } from '../../shop';
import type { Part } from '../baseline-policy';

/**
 * A candidate order: a supplier and an order day, with its freight and its minimum, micros. An order that is free of
 * freight is a second candidate on the same day: freight 0, and the free-freight threshold as its minimum.
 */
export type CandidateOrder = { supplier: Supplier; day: number; freight: number; minimum: number };

/** All candidate orders, those of one supplier together, by day. A slot is the number of one of them. */
export type CandidateOrders = { all: CandidateOrder[]; first: Map<Supplier, number>; behind: Map<Supplier, number> };

/**
 * The candidate orders of some products. An order can wait until the latest day for one of its packs, so only those days
 * are candidates.
 */
export function candidateOrdersFor(parts: readonly Part[]): CandidateOrders {
  const days = new Map<Supplier, Set<number>>();
  for (const { offer, ways } of parts.flatMap(({ packs }) => packs)) {
    const its = days.get(offer.supplier) ?? new Set<number>();
    days.set(offer.supplier, its);
    for (const way of ways) if (way) its.add(way.orderOn);
  }
  const slots: CandidateOrders = { all: [], first: new Map(), behind: new Map() };
  for (const [supplier, its] of days) {
    slots.first.set(supplier, slots.all.length);
    for (const day of [...its].sort((a, b) => a - b)) slots.all.push(...ordersAt(supplier, day));
    slots.behind.set(supplier, slots.all.length);
  }
  return slots;
}

/** The candidate that pays freight, then the one that is free of it. */
function ordersAt(supplier: Supplier, day: number): CandidateOrder[] {
  const { freightPerOrder, freeFreightOver, minimumOrder } = supplier;
  const [freight, minimum] = [freightPerOrder ?? 0, minimumOrder ?? 0];
  const paid: CandidateOrder = { supplier, day, freight, minimum };
  if (freight === 0 || freeFreightOver === null) return [paid];
  const free: CandidateOrder = { supplier, day, freight: 0, minimum: Math.max(minimum, freeFreightOver) };
  return freeFreightOver <= minimum ? [free] : [paid, free];
}

/** The candidate for an order of a value on a day, micros; null on a day that is no candidate. */
export function candidateOrderFor(
  { all, first, behind }: CandidateOrders,
  supplier: Supplier,
  day: number,
  goods: number,
): number | null {
  let found: number | null = null;
  for (let slot = first.get(supplier) ?? 0; slot < (behind.get(supplier) ?? 0); slot++) {
    const one = all[slot];
    if (one?.day === day && (found === null || one.minimum <= goods)) found = slot;
  }
  return found;
}

/** The two candidates of one supplier and day: with freight, and free of it; null where there is none. */
export function twinOf({ all }: CandidateOrders, slot: number): [paid: number, free: number | null] {
  const isTwin = (a: CandidateOrder | undefined, b: CandidateOrder | undefined) =>
    a !== undefined && a.day === b?.day && a.supplier === b.supplier;
  if (isTwin(all[slot - 1], all[slot])) return [slot - 1, slot];
  return [slot, isTwin(all[slot], all[slot + 1]) ? slot + 1 : null];
}

/** True when an order of this supplier has freight or a minimum. */
export const hasOrderCost = ({ freightPerOrder, minimumOrder }: Supplier): boolean =>
  (freightPerOrder ?? 0) > 0 || (minimumOrder ?? 0) > 0;

/** Those who offer packs for a part. */
export const suppliersOf = ({ packs }: Part): Set<Supplier> => new Set(packs.map(({ offer }) => offer.supplier));

/** Those of some suppliers, and the place of each among all. */
export function candidateOrdersOf(
  slots: CandidateOrders,
  suppliers: ReadonlySet<Supplier>,
): { slots: CandidateOrders; at: number[] } {
  const own: CandidateOrders = { all: [], first: new Map(), behind: new Map() };
  const at: number[] = [];
  for (const supplier of suppliers) {
    own.first.set(supplier, own.all.length);
    for (let slot = slots.first.get(supplier) ?? 0; slot < (slots.behind.get(supplier) ?? 0); slot++) {
      const one = slots.all[slot];
      if (one) own.all.push(one);
      at.push(slot);
    }
    own.behind.set(supplier, own.all.length);
  }
  return { slots: own, at };
}
