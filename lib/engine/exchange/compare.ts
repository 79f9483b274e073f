import type { Fault } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { canonical } from './canonical';
import { type Differing, differences } from './differences';
import { factFaults } from './fact-faults';
import { withKnownHistory } from './known-history';

/** The lists of a shop file, in its order. */
export const COLLECTIONS = [
  'suppliers',
  'products',
  'offers',
  'lots',
  'benches',
  'recipes',
  'programs',
  'applications',
  'orders',
] as const;
export type Collection = (typeof COLLECTIONS)[number];

/** One thing of a list: its id, and its name where it has one. */
type Named = { id: string; name: string | null };
export type Changed = Named & { fields: Differing[] };

export type CollectionChange = {
  added: Named[];
  changed: Changed[];
  unchanged: Named[];
  /** In the shop and not in the file. An import never removes anything. */
  leftAlone: Named[];
};

/** What an import would do, before it does it. */
export type Comparison = {
  /** Settings of the shop that would change. Empty when the shop itself would be new. */
  settings: Differing[];
  collections: Record<Collection, CollectionChange>;
  /** What must be put right first. As long as there is one, the import changes nothing. */
  faults: Fault[];
};

/**
 * What importing a file into a shop would add and change.
 *
 * Takes    the shop as it stands, as a file (null: it is to be a new shop), and the file that comes in; both passed parsing
 * Gives    per list what is new, what changes and how, and what stays. What the books hold as facts (what was received
 *          and paid, what was sprayed) cannot be edited by a file; where the file says otherwise there is a fault. What is
 *          left in a container may differ: the import then counts it
 */
export function compare(current: ShopFile | null, incoming: ShopFile): Comparison {
  const from = current && canonical(current);
  const to = withKnownHistory(from, incoming);
  const collections = {
    suppliers: compareList(from?.suppliers, to.suppliers),
    products: compareList(from?.products, to.products),
    offers: compareList(from?.offers, to.offers),
    lots: compareList(from?.lots, to.lots),
    benches: compareList(from?.benches, to.benches),
    recipes: compareList(from?.recipes, to.recipes),
    programs: compareList(from?.programs, to.programs),
    applications: compareList(from?.applications, to.applications),
    orders: compareList(from?.orders, to.orders),
  };
  return {
    settings: from ? differences(from.shop, to.shop) : [],
    collections,
    faults: from ? [...factFaults(from, to), ...togetherFaults(from, to)] : [],
  };
}

/** How many things an import would add, and how many it would change. */
export function tally({ collections }: Comparison): { added: number; changed: number } {
  const changes = COLLECTIONS.map((collection) => collections[collection]);
  return {
    added: changes.reduce((count, { added }) => count + added.length, 0),
    changed: changes.reduce((count, { changed }) => count + changed.length, 0),
  };
}

/** What would be wrong with the shop as a whole, where the file on its own is in order. */
function togetherFaults(current: ShopFile, incoming: ShopFile): Fault[] {
  const parsed = parseShopFile(JSON.stringify(merged(current, incoming)));
  if (parsed.ok) return [];
  return parsed.faults.map(({ path, message }) => ({ path, message: `Beside what the shop already has: ${message}` }));
}

/** The shop as it would stand after an import: the file, and after it what the file does not name. */
export function merged(current: ShopFile, incoming: ShopFile): ShopFile {
  return {
    ...incoming,
    suppliers: withLeft(current.suppliers, incoming.suppliers),
    products: withLeft(current.products, incoming.products),
    offers: withLeft(current.offers, incoming.offers),
    lots: withLeft(current.lots, incoming.lots),
    benches: withLeft(current.benches, incoming.benches),
    recipes: withLeft(current.recipes, incoming.recipes),
    programs: withLeft(current.programs, incoming.programs),
    applications: withLeft(current.applications, incoming.applications),
    orders: withLeft(current.orders, incoming.orders),
  };
}

type Item = { id: string; name?: string };

function compareList<T extends Item>(from: readonly T[] = [], to: readonly T[]): CollectionChange {
  const before = new Map(from.map((item) => [item.id, item]));
  const change: CollectionChange = { added: [], changed: [], unchanged: [], leftAlone: [] };
  for (const item of to) {
    const was = before.get(item.id);
    const fields = was ? differences(was, item) : [];
    if (!was) change.added.push(named(item));
    else if (fields.length > 0) change.changed.push({ ...named(item), fields });
    else change.unchanged.push(named(item));
  }
  const kept = new Set(to.map(({ id }) => id));
  change.leftAlone = from.filter(({ id }) => !kept.has(id)).map(named);
  return change;
}

const named = ({ id, name }: Item): Named => ({ id, name: name ?? null });

/** A list as it would stand: what comes in, and after it what it does not name. */
export function withLeft<T extends Item>(current: readonly T[], incoming: readonly T[]): T[] {
  const ids = new Set(incoming.map(({ id }) => id));
  return [...incoming, ...current.filter(({ id }) => !ids.has(id))];
}
