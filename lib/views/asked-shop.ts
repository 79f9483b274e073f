import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type ShopListed, shopHere } from '../data/shops';
import { shopsAndShown } from './shown-shop';

/**
 * The shop somebody asks about through the HTTP API: by its id, or else the one that is looked at.
 *
 * Refuses  'not-found'
 */
export async function askedShop(id: string | undefined): Promise<Outcome<ShopListed>> {
  const shop = id === undefined ? (await shopsAndShown()).shown : await shopHere(id);
  return shop ? accept(shop) : refuse({ code: 'not-found', what: 'shop', id: id ?? '' });
}
