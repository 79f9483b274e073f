import 'server-only';
import type { AlertWay } from '@/shared/alerts/alert-settings';
import { database, type Rows } from './database';
import type { Stamp } from './writer';

/** Which of some alerts were handed over already, in one way. */
export async function keysSent(shopId: string, way: AlertWay, keys: readonly string[], from?: Rows) {
  const rows = from ?? (await database()).reader;
  const sent = await rows.alertSent.findMany({ where: { shopId, way, key: { in: [...keys] } }, select: { key: true } });
  return new Set(sent.map(({ key }) => key));
}

/** Note that alerts were handed over in one way. What was noted before stays as it was. */
export async function insertSent(rows: Rows, stamp: Stamp, way: AlertWay, keys: readonly string[]): Promise<void> {
  const { shopId, recordedAt } = stamp;
  stamp.touched.addOutside();
  const before = await keysSent(shopId, way, keys, rows);
  const fresh = [...new Set(keys)].filter((key) => !before.has(key));
  await rows.alertSent.createMany({ data: fresh.map((key) => ({ shopId, key, way, sentAt: BigInt(recordedAt) })) });
}
