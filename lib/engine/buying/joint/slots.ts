import type { Supplier } from '../../shop';
import type { Part } from '../habit';

/** One day on which one supplier could be sent an order, and what such an order costs by itself, micros. */
export type Slot = { supplier: Supplier; day: number; freight: number; freeOver: number | null; minimum: number };

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
    for (const day of [...its].sort((a, b) => a - b)) slots.all.push(slotOf(supplier, day));
    slots.behind.set(supplier, slots.all.length);
  }
  return slots;
}

const slotOf = (supplier: Supplier, day: number): Slot => ({
  supplier,
  day,
  freight: supplier.freightPerOrder ?? 0,
  freeOver: supplier.freightPerOrder ? supplier.freeFreightOver : null,
  minimum: supplier.minimumOrder ?? 0,
});

/** Whether an order of this supplier costs something or asks for something, beside its goods. */
export const hasOrderCost = ({ freightPerOrder, minimumOrder }: Supplier): boolean =>
  (freightPerOrder ?? 0) > 0 || (minimumOrder ?? 0) > 0;

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
