import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Clock } from '../clock';
import type { ShopListed } from '../data/shops';
import { shopNow } from './house';
import { shopsAndShown } from './shown-shop';
import { unreadScreen } from './unread';

export type SetupScreen = {
  shops: ShopListed[];
  /** The shop that is looked at; null in a database without any. */
  shown: { id: string; settings: ShopFile['shop']; counts: [what: string, count: number][] } | null;
  /** What of the shop that is looked at cannot be read. */
  unread: ReturnType<typeof unreadScreen>;
};

/** What the shop says about itself, and which shops this database holds. */
export async function setupScreen(clock: Clock): Promise<SetupScreen> {
  const { shops } = await shopsAndShown();
  const here = await shopNow(clock);
  const shown = here && { id: here.id, settings: here.file.shop, counts: countsOf(here.file) };
  return { shops, shown, unread: here ? unreadScreen(here.file) : { things: [], caused: [] } };
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
