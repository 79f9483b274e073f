import 'server-only';
import type { Clock } from '@/lib/clock';
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
  const command = { id: input.commandId, name: 'startShop', shopId: null, body: input.settings };

  return write(command, now, async (rows, stamp) => {
    const createdOn = dayOf(Zone.parse(shop.timeZone), now);
    await createShop(rows, stamp, { isDemo: false, createdOn }, shop);
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
