import 'server-only';
import type { Clock } from '@/lib/clock';
import type { Rows } from '@/lib/data/database';
import { versionsIn } from '@/lib/data/record-versions';
import { removeGoods, tracesOf } from '@/lib/data/remove-goods';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { write } from '@/lib/data/writer';
import { type Removable, usesOf } from '@/lib/engine/exchange/uses';
import { recordMayGoOn } from '@/lib/engine/record/retention';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, type Refusal, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';

export type RemoveFromShop = {
  commandId: string;
  shopId: string;
  actor?: string;
  what: Removable | 'application';
  id: string;
};

/**
 * Remove what was entered by mistake: a product, a supplier or an offer that nothing has ever used.
 *
 * Gives    the name of what was there, or its id where it has none
 * Refuses  'in-use' with every place in words; an offer always, since its prices are history. Then it can be put away:
 *          entered anew as it is, with `archived`. 'must-be-kept' for every record of a spraying: before the day until
 *          which it must be kept it may not go, and after it nothing that is sealed does. 'not-found'
 */
export async function removeFromShop(input: RemoveFromShop, clock: Clock): Promise<Outcome<{ name: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { what, id } = input;
  const command = { id: commandId, name: 'removeFromShop', shopId, body, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const file = await shopInWrite(rows, shopId);
    if (what === 'application') return refuse(await whyKept(rows, shopId, file, id, clock));
    const name = file && nameOf(file, what, id);
    if (!file || name === null) return refuse({ code: 'not-found', what, id });
    const today = usesOf(file, what, id);
    const where = today.length > 0 ? today : await tracesOf(rows, shopId, what, id);
    if (where.length > 0) return refuse({ code: 'in-use', what, where });
    await removeGoods(rows, stamp.shopId, what, id);
    return accept({ name });
  });
}

async function whyKept(rows: Rows, shopId: string, file: ShopFile | null, id: string, clock: Clock): Promise<Refusal> {
  const versions = await versionsIn(rows, shopId, id);
  if (!file || versions.length === 0) return { code: 'not-found', what: 'application', id };
  const shop = shopOfFile(file);
  const until = recordMayGoOn(versions, shop);
  return { code: 'must-be-kept', until, isPast: clock.today(shop.zone) >= until };
}

function nameOf({ products, suppliers, offers }: ShopFile, what: Removable, id: string): string | null {
  const named = what === 'product' ? products : suppliers;
  if (what === 'offer') return offers.find((offer) => offer.id === id)?.id ?? null;
  return named.find((one) => one.id === id)?.name ?? null;
}
