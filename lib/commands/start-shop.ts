import 'server-only';
import type { Clock } from '@/lib/clock';
import { ownedBy } from '@/lib/data/save-people';
import { createShop } from '@/lib/data/save-shop';
import { write } from '@/lib/data/writer';
import { canonical } from '@/lib/engine/exchange/canonical';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { FORMAT } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { dayOf, Zone } from '@/shared/time/zone';

/** What a shop starts with: its settings as a shop file writes them. What is left out gets the file's own defaults. */
export type StartShop = {
  commandId: string;
  /** Who starts it, and owns it then; null where nobody signs in. */
  ownerId?: string | null;
  actor?: string;
  settings: { name: string; timeZone: string; currency: string; fillCapacity: string; units?: 'us' | 'metric' };
};

/**
 * Start a shop with nothing in it.
 *
 * Refuses  'faults' when a setting cannot be: an unknown time zone or currency, a sprayer that holds nothing
 */
export async function startShop(input: StartShop, clock: Clock): Promise<Outcome<{ shopId: string }>> {
  const parsed = parseShopFile(JSON.stringify({ format: FORMAT, shop: input.settings, ...NOTHING }));
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  const { shop } = canonical(parsed.file);
  const now = clock.now();
  const { commandId: id, ownerId = null, actor } = input;
  const command = { id, name: 'startShop', shopId: null, body: input.settings, actor };

  return write(command, now, async (rows, stamp) => {
    const createdOn = dayOf(Zone.parse(shop.timeZone), now);
    await createShop(rows, stamp, { isDemo: false, createdOn }, shop);
    await ownedBy(rows, stamp, ownerId);
    return accept({ shopId: stamp.shopId });
  });
}

const NOTHING = {
  suppliers: [],
  products: [],
  offers: [],
  lots: [],
  benches: [],
  recipes: [],
  programs: [],
  applications: [],
};
