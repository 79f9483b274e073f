import 'server-only';
import type { Clock } from '@/lib/clock';
import { fingerprint, fingerprintOf } from '@/lib/data/fingerprint';
import { savePart } from '@/lib/data/save-part';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { write } from '@/lib/data/writer';
import type { Collection } from '@/lib/engine/exchange/compare';
import { type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';

/** Things of a shop as a shop file writes them. What has the id of something that is there takes its place. */
export type ShopPart = Parameters<typeof savePart>[3];

/**
 * How something stood when a person began to change it; null when it was to be new. Of the shop itself it is how what is
 * to be changed of it stood: who changes its water need not know that somebody changes its tools.
 */
export type Expected = { list: Collection | 'shop'; id: string; fingerprint: string | null };

export type ChangeShop = {
  commandId: string;
  shopId: string;
  actor?: string;
  part: ShopPart;
  /** What the person had before their eyes. Left out: whatever stands there is changed. */
  expecting?: Expected[];
};

/**
 * Enter things into a shop or change them, by hand: what is new is added, what is there is changed, all else stays.
 *
 * Gives    how many things were added and changed
 * Refuses  'faults', each with its path in the part, when the shop with it would not be one, or when the books say
 *          otherwise; 'changed-meanwhile' when something is not what the person had before their eyes; 'not-found'
 */
export async function changeShop(
  input: ChangeShop,
  clock: Clock,
): Promise<Outcome<{ added: number; changed: number }>> {
  const { commandId, shopId, actor, ...body } = input;
  const command = { id: commandId, name: 'changeShop', shopId, body, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const current = await shopInWrite(rows, shopId);
    if (!current) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const other = (input.expecting ?? []).find((one) => !stands(current, input.part, one));
    if (other) return refuse({ code: 'changed-meanwhile', id: other.id });

    return savePart(rows, stamp, current, input.part);
  });
}

function stands(current: ShopFile, part: ShopPart, { list, id, fingerprint: expected }: Expected): boolean {
  if (list === 'shop') return fingerprintOf(current.shop, Object.keys(part.shop ?? {})) === expected;
  const things: readonly { id: string }[] = current[list];
  const there = things.find((thing) => thing.id === id);
  return (there ? fingerprint(there) : null) === expected;
}
