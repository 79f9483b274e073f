import 'server-only';
import type { Clock } from '@/lib/clock';
import type { Rows } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { saveShop } from '@/lib/data/save-shop';
import { shopFromRows } from '@/lib/data/shop-rows';
import { type Stamp, write } from '@/lib/data/writer';
import { COLLECTIONS, type Collection, compare } from '@/lib/engine/exchange/compare';
import { withKnownHistory } from '@/lib/engine/exchange/known-history';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { FORMAT, type ShopFile, type WrittenShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';

/** Things of a shop as a shop file writes them. What has the id of something that is there takes its place. */
export type ShopPart = Partial<Pick<WrittenShopFile, Collection>> & { shop?: Partial<WrittenShopFile['shop']> };

/** How something stood when a person began to change it; null when it was to be new. */
export type Expected = { list: Collection; id: string; fingerprint: string | null };

export type ChangeShop = {
  commandId: string;
  shopId: string;
  actor?: string;
  part: ShopPart;
  /** What the person had before their eyes. Left out: whatever stands there is changed. */
  expecting?: Expected[];
};

/** How one thing of a shop stands, for `expecting`. */
export const fingerprintOf = (thing: unknown): string => fingerprint(thing);

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
    const current = await shopFromRows(rows, shopId);
    if (!current) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const other = (input.expecting ?? []).find((one) => !stands(current, one));
    if (other) return refuse({ code: 'changed-meanwhile', id: other.id });

    return savePart(rows, stamp, current, input.part);
  });
}

/**
 * Save things of a shop as a step of a larger command.
 *
 * Takes    the shop as it stands in the rows
 * Refuses  'faults' as `changeShop` does
 */
export async function savePart(
  rows: Rows,
  stamp: Stamp,
  current: ShopFile,
  part: ShopPart,
): Promise<Outcome<{ added: number; changed: number }>> {
  const parsed = parseShopFile(JSON.stringify(withPart(current, part)));
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  const changed = withKnownHistory(current, parsed.file);
  const comparison = compare(current, changed);
  if (comparison.faults.length > 0) return refuse({ code: 'faults', faults: comparison.faults });
  await saveShop(rows, stamp, changed, comparison);
  const changes = COLLECTIONS.map((list) => comparison.collections[list]);
  return accept({
    added: changes.reduce((count, { added }) => count + added.length, 0),
    changed:
      changes.reduce((count, { changed }) => count + changed.length, 0) + (comparison.settings.length > 0 ? 1 : 0),
  });
}

function stands(current: ShopFile, { list, id, fingerprint: expected }: Expected): boolean {
  const things: readonly { id: string }[] = current[list];
  const there = things.find((thing) => thing.id === id);
  return (there ? fingerprintOf(there) : null) === expected;
}

/** The shop as it would stand. What comes in stands first in each list, so that a fault has its place in the part. */
function withPart(current: ShopFile, { shop, ...lists }: ShopPart): WrittenShopFile {
  const whole: WrittenShopFile = { ...current, format: FORMAT, shop: { ...current.shop, ...shop } };
  for (const list of COLLECTIONS) {
    const incoming: readonly { id: string }[] = lists[list] ?? [];
    const ids = new Set(incoming.map(({ id }) => id));
    const left: readonly { id: string }[] = current[list];
    Object.assign(whole, { [list]: [...incoming, ...left.filter(({ id }) => !ids.has(id))] });
  }
  return whole;
}
