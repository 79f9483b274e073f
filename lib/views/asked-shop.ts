import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type ShopListed, shopHere } from '../data/shops';
import { shopsAndShown } from './shown-shop';

/**
 * The shop somebody asks about through the HTTP API: by its id, or else the one that the device works in.
 *
 * Refuses  'not-found'; 'which-shop' when there are several, and neither the question nor the device names one
 */
export async function askedShop(id: string | undefined): Promise<Outcome<ShopListed>> {
  if (id === undefined) {
    const { shops, shown, isAsked } = await shopsAndShown();
    if (isAsked) return refuse({ code: 'which-shop', shops: shops.map(({ id, name }) => ({ id, name })) });
    return shown ? accept(shown) : refuse({ code: 'not-found', what: 'shop', id: '' });
  }
  const shop = await shopHere(id);
  return shop ? accept(shop) : refuse({ code: 'not-found', what: 'shop', id });
}
