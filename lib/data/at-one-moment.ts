import 'server-only';
import type { Database, Rows } from './database';
import { AT_ONCE, GIVING_WAY, type Pace } from './pace';
import { isSmall, shopSize } from './shop-size';

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/** Several large shops wait for each other, and each gives way to whoever asks for anything else. */
const LONG_PATIENCE = { maxWait: 600_000, timeout: 600_000 };

/**
 * Read from a shop in one transaction, so that all of it is of one moment. A large shop is read in small parts, on a
 * connection of its own: between two parts others are answered, and none of them reads inside this transaction.
 */
export async function atOneMoment<T>(
  opened: Database,
  shopId: string,
  read: (rows: Rows, pace: Pace) => Promise<T>,
): Promise<T> {
  if (isSmall(await shopSize(shopId))) return opened.reader.$transaction((rows) => read(rows, AT_ONCE), PATIENCE);
  const reader = await opened.longReader();
  await GIVING_WAY.pause();
  return reader.$transaction((rows) => read(rows, GIVING_WAY), LONG_PATIENCE);
}
