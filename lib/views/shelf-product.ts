import type { ProductAhead } from '../engine/ahead/plan';
import { type ToEnter, toEnterForProduct } from '../engine/rules/to-enter';
import type { Product } from '../engine/shop';
import type { BottleAddressOf } from './bottle-addresses';
import type { Fig } from './figures';
import type { House } from './house';
import { type OnOrderSeen, onOrderSeen } from './on-order';
import { bottlesOf, type ShelfBottle } from './shelf-bottles';

/** One product with what is left of it and what lies ahead of it. */
export type ShelfProduct = {
  id: string;
  name: string;
  kind: Product['kind'];
  /** Whether it was put away, and stands here only because something of it is left or was asked for. */
  archived: boolean;
  onHand: Fig;
  usable: Fig;
  /** Whether some of what is there may no longer be used. */
  someDead: boolean;
  runsOut: boolean;
  /** What to enter before it is known how much of it is needed; empty when it is known. */
  toEnter: ToEnter[];
  runsOutOn: Fig;
  orderBy: Fig;
  weeksUntilReorder: Fig;
  /** Whole weeks until it must be ordered; null when nothing runs out or nobody sells it. */
  weeks: number | null;
  /** What of it is on its way; null when nothing is. */
  onOrder: OnOrderSeen | null;
  /** What its bottles are worth, at what was paid. */
  value: Fig;
  wasteCost: Fig;
  wastes: boolean;
  bottles: ShelfBottle[];
};

/** A product as the shelf shows it, with every bottle that has something in it. Takes what is on order, where it is known already. */
export function shelfProduct(
  house: House,
  ahead: ProductAhead,
  addressOf: BottleAddressOf,
  onItsWay = onOrderSeen(house),
): ShelfProduct {
  const { product, onHand, usable, runsOutOn, reorder, wastes } = ahead;
  const its = (what: string) => house.figure('product', product.id, what);
  return {
    id: product.id,
    name: product.name,
    kind: product.kind,
    archived: product.archived,
    onHand: its('onHand'),
    usable: its('usable'),
    someDead: usable < onHand,
    runsOut: runsOutOn !== null,
    toEnter: toEnterForProduct(house.plan, ahead),
    runsOutOn: its('runsOutOn'),
    orderBy: its('orderBy'),
    weeksUntilReorder: its('weeksUntilReorder'),
    weeks: reorder?.weeks ?? null,
    onOrder: onItsWay.get(product) ?? null,
    value: its('value'),
    wasteCost: its('wasteCost'),
    wastes: wastes.some(({ amount }) => amount > 0),
    bottles: bottlesOf(house, product, addressOf),
  };
}
