import 'server-only';
import type { Clock } from '@/lib/clock';
import { removeGoods, tracesOf } from '@/lib/data/remove-goods';
import { shopFromRows } from '@/lib/data/shop-rows';
import { write } from '@/lib/data/writer';
import { type Removable, usesOf } from '@/lib/engine/exchange/uses';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';

export type RemoveFromShop = { commandId: string; shopId: string; actor?: string; what: Removable; id: string };

/**
 * Remove what was entered by mistake: a product, a supplier or an offer that nothing has ever used.
 *
 * Gives    the name of what was there, or its id where it has none
 * Refuses  'in-use' with every place in words; an offer always, since its prices are history. Then it can be put away:
 *          entered anew as it is, with `archived`. 'not-found'
 */
export async function removeFromShop(input: RemoveFromShop, clock: Clock): Promise<Outcome<{ name: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { what, id } = input;
  const command = { id: commandId, name: 'removeFromShop', shopId, body, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const file = await shopFromRows(rows, shopId);
    const name = file && nameOf(file, what, id);
    if (!file || name === null) return refuse({ code: 'not-found', what, id });
    const today = usesOf(file, what, id);
    const where = today.length > 0 ? today : await tracesOf(rows, shopId, what, id);
    if (where.length > 0) return refuse({ code: 'in-use', what, where });
    await removeGoods(rows, stamp.shopId, what, id);
    return accept({ name });
  });
}

function nameOf({ products, suppliers, offers }: ShopFile, what: Removable, id: string): string | null {
  const named = what === 'product' ? products : suppliers;
  if (what === 'offer') return offers.find((offer) => offer.id === id)?.id ?? null;
  return named.find((one) => one.id === id)?.name ?? null;
}
