import type { ShopFile } from './contract';
import { nearest } from './nearest';
import { shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';
import { checkReferences } from './references';

const COLLECTIONS = {
  suppliers: 'supplier',
  products: 'product',
  offers: 'offer',
  lots: 'lot',
  benches: 'bench',
  recipes: 'recipe',
  programs: 'program',
  applications: 'application',
  orders: 'order',
} as const;
export type Collection = keyof typeof COLLECTIONS;

/** The ids of each collection, with the place of the first thing that has each. */
export type Ids = Record<Collection, ReadonlyMap<string, number>>;

/** Ids given twice in one collection, and references to nothing. */
export function checkIds(readable: ReadablePart<ShopFile>, ids: Ids, complain: Complain): void {
  checkDoubled(readable.part, ids, complain);
  checkReferences(readable.part, (path, collection, id) => {
    if (!ids[collection].has(id) && isWhole(readable, collection)) complain(path, nothingThere(collection, id, ids));
  });
}

export const idsOf = (part: Loose<ShopFile>): Ids => ({
  suppliers: firstPlaces(part?.suppliers),
  products: firstPlaces(part?.products),
  offers: firstPlaces(part?.offers),
  lots: firstPlaces(part?.lots),
  benches: firstPlaces(part?.benches),
  recipes: firstPlaces(part?.recipes),
  programs: firstPlaces(part?.programs),
  applications: firstPlaces(part?.applications),
  orders: firstPlaces(part?.orders),
});

type WithId = { readonly id?: string | null };
type Things = readonly (WithId | null | undefined)[] | null | undefined;

function firstPlaces(things: Things): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const [index, { id }] of eachOf(things)) if (id != null && !places.has(id)) places.set(id, index);
  return places;
}

const names = Object.keys(COLLECTIONS) as Collection[];

function checkDoubled(part: Loose<ShopFile>, ids: Ids, complain: Complain): void {
  for (const collection of names) {
    const things: Things = part?.[collection];
    for (const [index, { id }] of eachOf(things)) {
      const first = id == null ? index : ids[collection].get(id);
      if (first === undefined || first === index) continue;
      complain(
        [collection, index, 'id'],
        `The id ${shown(id)} is already taken by ${collection}[${first}]. Give this ${COLLECTIONS[collection]} another one.`,
      );
    }
  }
}

/** Where an id could not be read, a reference that seems to lead nowhere may well mean that one. */
const isWhole = ({ part, isUnreadable }: ReadablePart<ShopFile>, collection: Collection): boolean => {
  if (isUnreadable([collection])) return false;
  const things: Things = part?.[collection];
  return (things ?? []).every(
    (_, index) => !isUnreadable([collection, index]) && !isUnreadable([collection, index, 'id']),
  );
};

function nothingThere(collection: Collection, id: string, ids: Ids): string {
  const thing = COLLECTIONS[collection];
  const known = [...ids[collection].keys()];
  const add = `or add this ${thing} to ${collection}.`;
  const meant = nearest(id, known);
  if (meant) return `There is no ${thing} ${shown(id)}. Did you mean ${shown(meant)}? Write that, ${add}`;
  if (known.length === 0)
    return `There is no ${thing} ${shown(id)}, and none at all in this file. Add it to ${collection}.`;
  return `There is no ${thing} ${shown(id)}. Write one that is there (${someOf(known)}), ${add}`;
}

const MOST_NAMED = 5;
const someOf = (known: string[]): string =>
  known.slice(0, MOST_NAMED).map(shown).join(', ') +
  (known.length > MOST_NAMED ? ` and ${known.length - MOST_NAMED} more` : '');
