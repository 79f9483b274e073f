import type { Supplier } from '../../shop';
import type { Part } from '../habit';

/**
 * One day on which one supplier could be sent an order, and what such an order costs and asks for by itself, micros. An
 * order large enough to be free of freight is one of its own: it costs no freight, and that value is its minimum.
 */
export type Slot = { supplier: Supplier; day: number; freight: number; minimum: number };

/** Every order that may be worth sending: those of one supplier stand together, by day. */
export type Slots = { all: Slot[]; first: Map<Supplier, number>; behind: Map<Supplier, number> };

/**
 * The days on which an order may be worth placing: a supplier's orders can each wait until one of their packs could not
 * come in time any more, so only such days are looked at.
 */
export function slotsFor(parts: readonly Part[]): Slots {
  const days = new Map<Supplier, Set<number>>();
  for (const { offer, ways } of parts.flatMap(({ packs }) => packs)) {
    const its = days.get(offer.supplier) ?? new Set<number>();
    days.set(offer.supplier, its);
    for (const way of ways) if (way) its.add(way.orderOn);
  }
  const slots: Slots = { all: [], first: new Map(), behind: new Map() };
  for (const [supplier, its] of days) {
    slots.first.set(supplier, slots.all.length);
    for (const day of [...its].sort((a, b) => a - b)) slots.all.push(...ordersAt(supplier, day));
    slots.behind.set(supplier, slots.all.length);
  }
  return slots;
}

/** The order that pays its freight, and behind it the one that is free of it. */
function ordersAt(supplier: Supplier, day: number): Slot[] {
  const { freightPerOrder, freeFreightOver, minimumOrder } = supplier;
  const [freight, minimum] = [freightPerOrder ?? 0, minimumOrder ?? 0];
  const paid: Slot = { supplier, day, freight, minimum };
  if (freight === 0 || freeFreightOver === null) return [paid];
  const free: Slot = { supplier, day, freight: 0, minimum: Math.max(minimum, freeFreightOver) };
  return freeFreightOver <= minimum ? [free] : [paid, free];
}

/** The slot of an order of so many goods on a day, micros; null on a day that is not looked at. */
export function slotFor({ all, first, behind }: Slots, supplier: Supplier, day: number, goods: number): number | null {
  let found: number | null = null;
  for (let slot = first.get(supplier) ?? 0; slot < (behind.get(supplier) ?? 0); slot++) {
    const one = all[slot];
    if (one?.day === day && (found === null || one.minimum <= goods)) found = slot;
  }
  return found;
}

/** The slot of the same order that pays its freight, and of the one that is free of it; null where there is none. */
export function twinOf({ all }: Slots, slot: number): [paid: number, free: number | null] {
  const isTwin = (a: Slot | undefined, b: Slot | undefined) =>
    a !== undefined && a.day === b?.day && a.supplier === b.supplier;
  if (isTwin(all[slot - 1], all[slot])) return [slot - 1, slot];
  return [slot, isTwin(all[slot], all[slot + 1]) ? slot + 1 : null];
}

/** Whether an order of this supplier costs something or asks for something, beside its goods. */
export const hasOrderCost = ({ freightPerOrder, minimumOrder }: Supplier): boolean =>
  (freightPerOrder ?? 0) > 0 || (minimumOrder ?? 0) > 0;

/** Those who offer packs for a part. */
export const suppliersOf = ({ packs }: Part): Set<Supplier> => new Set(packs.map(({ offer }) => offer.supplier));

/** Those of some suppliers, and the place of each among all. */
export function slotsOf(slots: Slots, suppliers: ReadonlySet<Supplier>): { slots: Slots; at: number[] } {
  const own: Slots = { all: [], first: new Map(), behind: new Map() };
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
