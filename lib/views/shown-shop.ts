import 'server-only';
import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { shopsOf } from '@/lib/access/asker';
import { whoAsksHere } from '@/lib/access/who-asks';
import { DEVICE_SHOP, deviceShop, toRemember } from '@/shared/device-shop';
import { type ShopListed, shopHere, shopsHere } from '../data/shops';

/** The id of the shop that this device remembers; empty where it remembers none. */
export const chosenShop = async (): Promise<string> => (await cookies()).get(DEVICE_SHOP)?.value ?? '';

/** Every shop that whoever asks has to do with, and the one that this device works in. */
export type ShopsAndShown = {
  shops: readonly ShopListed[];
  /** Null where there is no shop, and where the device has to be asked. */
  shown: ShopListed | null;
  /** True when there are several shops and this device was given none of them. */
  isAsked: boolean;
  /** The id that this device has to remember from now on; null for none. */
  remember: string | null;
};

/** Every shop that whoever asks has to do with, and the one that this device works in. It is asked for, never guessed. */
export const shopsAndShown = cache(async (): Promise<ShopsAndShown> => {
  // The cookie comes first: it tells Next that no page can be made at build time, when there is no database yet.
  const chosen = await chosenShop();
  const theirs = shopsOf(await whoAsksHere());
  const shops = (await shopsHere()).filter(({ id }) => theirs === null || theirs.has(id));
  const shop = deviceShop(chosen, shops);
  const shown = typeof shop === 'object' ? shop : null;
  return { shops, shown, isAsked: shop === 'ask', remember: toRemember(chosen, shops) };
});

/** One shop of this database by its id; null when there is none. */
export const shopNamed = shopHere;

/** Leave for Setup, which says why a page cannot be made of this shop. */
export const toSetup = (): never => redirect('/setup#too-much');
