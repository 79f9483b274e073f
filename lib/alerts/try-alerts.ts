import 'server-only';
import type { Clock } from '@/lib/clock';
import { alertSettingsOf } from '@/lib/data/alert-settings';
import { shopHere } from '@/lib/data/shops';
import { shopFileOf } from '@/lib/data/snapshot';
import { type AlertWay, waysOf } from '@/shared/alerts/alert-settings';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { Zone } from '@/shared/time/zone';
import { testMessage } from './alert-message';
import { handOver } from './hand-over';

/** What became of a test, for each way that is set up. */
export type Tried = { way: AlertWay; ok: boolean; message: string };

/**
 * Hand a test message over in every way that is set up, whether it is quiet or not. Nothing is noted as sent.
 *
 * Refuses  'not-found'
 */
export async function tryAlerts(shopId: string, clock: Clock): Promise<Outcome<Tried[]>> {
  if (!(await shopHere(shopId))) return refuse({ code: 'not-found', what: 'shop', id: shopId });
  const saved = await alertSettingsOf(shopId);
  if (!saved) return accept([]);
  const { shop } = await shopFileOf(shopId);
  const message = testMessage({ name: shop.name, zone: Zone.parse(shop.timeZone) }, clock.now());
  const tried: Tried[] = [];
  for (const way of waysOf(saved.settings)) {
    const told = await handOver(way, saved.settings, message);
    tried.push({ way, ok: told.ok, message: told.ok ? told.value : told.message });
  }
  return accept(tried);
}
