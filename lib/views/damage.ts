import 'server-only';
import { damageOfShop } from '../data/check-records';
import { shopsAndShown } from './shown-shop';

/**
 * What is known to be wrong with the records of the shop that is looked at, naming the first bad one: nothing is told
 * from records that somebody changed. Null when every one is as it was sealed, or when they cannot be read.
 */
export async function damageHere(): Promise<string | null> {
  const { shown } = await shopsAndShown();
  try {
    return shown && (await damageOfShop(shown.id));
  } catch {
    // The board itself says that nothing can be read.
    return null;
  }
}
