import { freightOf } from '@/shared/measure/order-sums';
import { type Micros, micros, plus, sum } from '@/shared/quantity/amounts';
import type { Offer, Supplier } from '../shop';
import { costOfPurchase, type Purchase } from './bought';

/** What one supplier is sent on one day: so many packs of each offer. `freight` is null when it was never entered. */
export type Order = { supplier: Supplier; on: number; lines: OrderLine[]; goods: Micros; freight: Micros | null };

export type OrderLine = { offer: Offer; count: number; cost: Micros };

/** The orders in which the packs of some purchases come, by day, then by supplier. */
export function ordersOf(purchases: readonly Purchase[]): Order[] {
  const orders = new Map<Supplier, Map<number, Map<Offer, OrderLine>>>();
  for (const { pack, orderOn, price } of purchases.flatMap(({ packs }) => packs)) {
    const { offer } = pack;
    const days = orders.get(offer.supplier) ?? new Map<number, Map<Offer, OrderLine>>();
    const lines = days.get(orderOn) ?? new Map<Offer, OrderLine>();
    const line = lines.get(offer) ?? { offer, count: 0, cost: micros(0) };
    orders.set(offer.supplier, days.set(orderOn, lines.set(offer, line)));
    line.count += 1;
    line.cost = plus(line.cost, price);
  }
  return [...orders]
    .flatMap(([supplier, days]) => [...days].map(([on, lines]) => orderOf(supplier, on, [...lines.values()])))
    .sort((a, b) => a.on - b.on || (a.supplier.id < b.supplier.id ? -1 : 1));
}

function orderOf(supplier: Supplier, on: number, lines: OrderLine[]): Order {
  const goods = sum(lines.map(({ cost }) => cost));
  return { supplier, on, lines, goods, freight: freightOf(supplier, goods) };
}

/** Whether every order is as large as its supplier asks. */
export const areTaken = (orders: readonly Order[]): boolean =>
  orders.every(({ supplier, goods }) => goods >= (supplier.minimumOrder ?? 0));

/** What purchases come to with the freight of their orders, less what is left: micros. Unknown freight counts nothing. */
export const totalOf = (purchases: readonly Purchase[], orders: readonly Order[]): number =>
  purchases.reduce((total, one) => total + costOfPurchase(one), 0) +
  orders.reduce((total, { freight }) => total + (freight ?? 0), 0);

/** total = packs + freight + capital − left; what of the packs will die within the horizon stands apart. Micros. */
export type PlanCost = {
  packs: Micros;
  freight: Micros;
  capital: Micros;
  left: Micros;
  total: number;
  ofWhichWaste: Micros;
};

/** What purchases come to, part by part. Unknown freight counts nothing. */
export const planCostOf = (purchases: readonly Purchase[], orders: readonly Order[]): PlanCost => ({
  packs: sum(purchases.map(({ goods }) => goods)),
  freight: sum(orders.map(({ freight }) => freight ?? micros(0))),
  capital: sum(purchases.map(({ capital }) => capital)),
  left: sum(purchases.map(({ left }) => left)),
  total: totalOf(purchases, orders),
  ofWhichWaste: sum(purchases.map(({ waste }) => waste)),
});
