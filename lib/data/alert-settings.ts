import 'server-only';
import { AlertSettings } from '@/shared/alerts/alert-settings';
import { database, type Rows } from './database';
import type { Stamp } from './writer';

/** The settings of a shop with when they were saved, which tells one version from another. */
export type AlertSettingsSaved = { settings: AlertSettings; savedAt: string };

/** Where the alerts of a shop go; null when that was never set up. Holds a password: never hand it to a page. */
export async function alertSettingsOf(shopId: string, from?: Rows): Promise<AlertSettingsSaved | null> {
  const rows = from ?? (await database()).reader;
  const row = await rows.alertSettings.findUnique({ where: { shopId } });
  return row && { settings: AlertSettings.parse(row.settings), savedAt: String(row.savedAt) };
}

/** The shops that have set up where their alerts go, perhaps nowhere. */
export async function shopsWithAlertSettings(): Promise<string[]> {
  const { reader } = await database();
  return (await reader.alertSettings.findMany({ select: { shopId: true } })).map(({ shopId }) => shopId);
}

export async function putAlertSettings(rows: Rows, stamp: Stamp, settings: AlertSettings): Promise<void> {
  const { shopId, commandId, actor, recordedAt } = stamp;
  stamp.touched.addOutside();
  const saved = { settings: AlertSettings.parse(settings), commandId, actor, savedAt: BigInt(recordedAt) };
  await rows.alertSettings.upsert({ where: { shopId }, create: { shopId, ...saved }, update: saved });
}
