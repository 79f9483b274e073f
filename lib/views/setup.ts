import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Clock } from '../clock';
import type { ShopListed } from '../data/shops';
import { shopNow } from './house';
import { shopsAndShown } from './shown-shop';

export type SetupScreen = {
  shops: ShopListed[];
  /** The shop that is looked at; null in a database without any. */
  shown: { id: string; settings: ShopFile['shop']; counts: [what: string, count: number][] } | null;
};

/** What the shop says about itself, and which shops this database holds. */
export async function setupScreen(clock: Clock): Promise<SetupScreen> {
  const { shops } = await shopsAndShown();
  const here = await shopNow(clock);
  return { shops, shown: here && { id: here.id, settings: here.file.shop, counts: countsOf(here.file) } };
}

const countsOf = (file: ShopFile): [string, number][] => [
  ['suppliers', file.suppliers.length],
  ['products', file.products.length],
  ['offers', file.offers.length],
  ['lots', file.lots.length],
  ['benches', file.benches.length],
  ['recipes', file.recipes.length],
  ['programs', file.programs.length],
  ['application records', file.applications.length],
];
