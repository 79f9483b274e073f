import 'server-only';
import { damagedRecords } from '../data/check-records';

/**
 * What is known to be wrong with the records here, naming the first bad one, of whichever shop: nothing is told from a
 * database in which somebody changed a record. Null when every one is as it was sealed, or when they cannot be read.
 */
export async function damageHere(): Promise<string | null> {
  try {
    return [...(await damagedRecords()).values()][0] ?? null;
  } catch {
    // The board itself says that nothing can be read.
    return null;
  }
}
