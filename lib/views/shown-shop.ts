import 'server-only';
import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { type ShopListed, shopHere, shopsHere } from '../data/shops';

/** The cookie that remembers which shop this browser looks at. */
export const SHOWN_SHOP = 'shown-shop';

/** The shop that this browser has chosen, by its id; empty where it chose none. */
export const chosenShop = async (): Promise<string> => (await cookies()).get(SHOWN_SHOP)?.value ?? '';

/** Every shop in this database, and which of them this browser looks at. */
export const shopsAndShown = cache(async (): Promise<{ shops: readonly ShopListed[]; shown: ShopListed | null }> => {
  // The cookie comes first: it tells Next that no page can be made at build time, when there is no database yet.
  const chosen = await chosenShop();
  const shops = await shopsHere();
  return { shops, shown: shops.find(({ id }) => id === chosen) ?? newestOwn(shops) ?? shops.at(-1) ?? null };
});

/** Whoever has a shop of their own wants to see that one, and the demo only as long as there is none. */
const newestOwn = (shops: readonly ShopListed[]): ShopListed | undefined =>
  shops.filter(({ isDemo }) => !isDemo).at(-1);

/** One shop of this database by its id; null when there is none. */
export const shopNamed = shopHere;

/** Leave for Setup, which says why a page cannot be made of this shop. */
export const toSetup = (): never => redirect('/setup#too-much');
