import type { Collection } from './check-ids';
import { Bench, Lot, Offer, Product, Program, Recipe, Supplier } from './contract';
import { Order } from './order';
import { Application } from './record';

/** What one thing of each list may be. */
export const THINGS = {
  suppliers: Supplier,
  products: Product,
  offers: Offer,
  lots: Lot,
  benches: Bench,
  recipes: Recipe,
  programs: Program,
  applications: Application,
  orders: Order,
} as const satisfies Record<Collection, unknown>;

export const LISTS = Object.keys(THINGS) as Collection[];
