import 'server-only';
import type { Clock } from '@/lib/clock';
import { noteAlertsSent } from '@/lib/commands/note-alerts-sent';
import { alertSettingsOf, shopsWithAlertSettings } from '@/lib/data/alert-settings';
import { keysSent } from '@/lib/data/alerts-sent';
import { planKept } from '@/lib/data/plan-kept';
import { shopOf } from '@/lib/data/snapshot';
import type { Alert } from '@/lib/engine/alerts/alert';
import { alertsOf } from '@/lib/engine/alerts/alerts';
import { isQuiet } from '@/lib/engine/alerts/quiet-hours';
import type { Shop } from '@/lib/engine/shop';
import { benchStates, certaintyNow } from '@/lib/views/bench-states';
import { type AlertSettings, type AlertWay, waysOf } from '@/shared/alerts/alert-settings';
import { stillToSpray } from '../engine/ahead/turns-on-record';
import { messageOf } from './alert-message';
import { handOver } from './hand-over';
import { isTooSoon, noteTry } from './tries';

/**
 * Look at every shop that has set up alerts once, and hand over what is to be told and was not yet.
 *
 * Nothing of this is inside of a write: a message is handed over first, and noted after that. When the program ends in
 * between, the same message goes once more, under the same id, and no more often than that.
 *
 * In quiet hours nothing is handed over. What still holds when they end is then; what no longer holds is not.
 */
export async function alertRound(clock: Clock): Promise<void> {
  for (const shopId of await shopsWithAlertSettings()) {
    try {
      await roundOf(shopId, clock);
    } catch (error) {
      console.error(`The alerts of shop ${shopId} could not be looked at:`, error);
    }
  }
}

async function roundOf(shopId: string, clock: Clock): Promise<void> {
  const saved = await alertSettingsOf(shopId);
  if (!saved || waysOf(saved.settings).length === 0) return;
  const shop = await shopOf(shopId);
  if (isQuiet(saved.settings.quiet, shop.zone, clock.now())) return;
  const alerts = await alertsNow(shopId, shop, clock);
  for (const way of waysOf(saved.settings))
    await goOneWay({ shopId, shop, way, settings: saved.settings }, alerts, clock);
}

/** What is to be told of a shop now. */
async function alertsNow(shopId: string, shop: Shop, clock: Clock): Promise<Alert[]> {
  const now = clock.now();
  const today = clock.today(shop.zone);
  const plan = await planKept(shop, today);
  return alertsOf(
    { ...plan, sprayings: stillToSpray(plan, today) },
    benchStates(shop, now, await certaintyNow(clock, shopId)),
    now,
  );
}

type OneWay = { shopId: string; shop: Shop; way: AlertWay; settings: AlertSettings };

async function goOneWay({ shopId, shop, way, settings }: OneWay, alerts: Alert[], clock: Clock): Promise<void> {
  if (isTooSoon(shopId, way, clock.now())) return;
  const sent = await keysSent(
    shopId,
    way,
    alerts.map(({ key }) => key),
  );
  const fresh = alerts.filter(({ key }) => !sent.has(key));
  if (fresh.length === 0) return;
  const told = await handOver(way, settings, messageOf(shop, clock.now(), fresh));
  noteTry(shopId, way, { at: clock.now(), ok: told.ok, message: told.ok ? told.value : told.message });
  if (!told.ok) return;
  await noteAlertsSent({ shopId, way, keys: fresh.map(({ key }) => key) }, clock);
}
