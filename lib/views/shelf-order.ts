import type { ShelfBottle } from './shelf-bottles';
import type { ShelfProduct } from './shelf-product';

/** What the shelf may be put in order of. */
export const SHELF_ORDERS = ['name', 'dies', 'reorder', 'value'] as const;
export type ShelfOrder = (typeof SHELF_ORDERS)[number];

type Comparison = (a: ShelfProduct, b: ShelfProduct) => number;

/** Products in the order that is asked for; equal ones by name, and what is not known after what is. */
export const inShelfOrder = (products: readonly ShelfProduct[], order: ShelfOrder): ShelfProduct[] =>
  [...products].sort((a, b) => COMPARED[order](a, b) || byName(a, b));

const byName: Comparison = (a, b) => a.name.localeCompare(b.name);

const COMPARED: Record<ShelfOrder, Comparison> = {
  name: byName,
  dies: (a, b) => firstDeath(a.bottles).localeCompare(firstDeath(b.bottles)),
  reorder: (a, b) => urgency(a).localeCompare(urgency(b)),
  value: (a, b) => worth(b) - worth(a),
};

/** The first day on which one of these bottles dies; those that never do come last. */
const firstDeath = (bottles: ShelfBottle[]): string => bottles[0]?.lastDay ?? NEVER;

const NEVER = '9999-12-31';

/**
 * What runs out and can be bought nowhere, or nobody knows when, comes first, then the day to order by; what lasts through the weeks ahead
 * comes last.
 */
function urgency({ runsOut, orderBy, toEnter }: ShelfProduct): string {
  if (!runsOut) return toEnter.length > 0 ? '' : NEVER;
  return orderBy.value.kind === 'day' ? orderBy.value.day : '';
}

/** In micros; what is not known counts below what is worth nothing. */
const worth = ({ value }: ShelfProduct): number => (value.value.kind === 'money' ? value.value.micros : -1);
