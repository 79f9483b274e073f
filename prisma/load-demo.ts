import type { Clock } from '@/lib/clock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { shopsHere } from '@/lib/data/shops';
import { demoShop } from '@/lib/demo/demo-shop';
import { explain } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Zone } from '@/shared/time/zone';

/**
 * Load the demo shop into a database without any shop, by the command that a person's own file goes through.
 *
 * Gives    the demo's id; null when there was a shop already, which is left alone
 * Throws   Error when the demo itself is refused, which is a fault in it
 */
export async function loadDemo(clock: Clock): Promise<string | null> {
  if ((await shopsHere()).length > 0) return null;
  const { timeZone } = demoShop(clock.today(Zone.parse('UTC'))).shop;
  const text = JSON.stringify(demoShop(clock.today(Zone.parse(timeZone))));
  const parsed = parseShopFile(text);
  if (!parsed.ok) throw new Error(`The demo shop has faults: ${JSON.stringify(parsed.faults)}`);
  const outcome = await importShopFile({ commandId: newId(), file: parsed.file, into: { isDemo: true } }, clock);
  if (!outcome.ok) throw new Error(`The demo shop was refused: ${explain(outcome.refusal)}`);
  return outcome.value.shopId;
}
