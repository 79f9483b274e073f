import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import type { ShopFile } from '@/shared/shop-file/contract';
import { instantOf } from '@/shared/time/instant';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, freshDatabase } from '../data/fresh-database';

/** A shop with one liquid in two lots, a bench, a recipe and an application. */
export const SMALL = parsedOrThrow({
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
  suppliers: [{ id: 's', name: 'Supplier' }],
  products: [
    { id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', label: { reiHours: 12.5 } },
    { id: 'q', name: 'Sulfur', kind: 'fungicide', form: 'powder' },
  ],
  offers: [{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00', leadDays: 3 }],
  lots: [
    { id: 'l', product: 'p', pack: '500 mL', paid: '74.00', receivedOn: '2026-02-02' },
    { id: 'm', product: 'p', pack: '500 mL', count: 3, paid: '100.00', receivedOn: '2026-02-02' },
  ],
  benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] }],
  recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '12 mL/gal' }] }],
  programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-03', startTime: '17:30', minutes: 45 }],
  applications: [{ id: 'a', recipe: 'r', benches: ['b'], startedAt: '2026-02-24T22:30:00Z', endedAt: null }],
});

/** That shop in a fresh database. Gives its id. */
export async function smallShop(file: ShopFile = SMALL): Promise<string> {
  await freshDatabase();
  const outcome = await importShopFile({ commandId: newId(), file, into: { isDemo: false } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value.shopId;
}

/** An instant of the March day on which the tests' clock stands still. */
export const today = (hour: number) => instantOf(Date.UTC(2026, 2, 31, hour));

/** A lot as the shop's file tells it. */
export async function lotOf(shopId: string, id: string): Promise<ShopFile['lots'][number]> {
  const lot = (await shopFileOf(shopId)).lots.find((one) => one.id === id);
  if (!lot) throw new Error(`there is no lot ${id}`);
  return lot;
}
