import 'server-only';
import type { UnreadThing } from '@/shared/shop-file/unread';
import type { Clock } from '../clock';
import { shopNow } from './house';
import { unreadOfSentence, unreadSentence } from './unread';

/** What of the shop that is looked at cannot be read, in one sentence; null when all can, or when the board itself says that nothing can. */
export async function unreadHere(clock: Clock): Promise<string | null> {
  try {
    const here = await shopNow(clock);
    return here && unreadSentence(here.file);
  } catch (error) {
    // What Next throws to itself carries a digest of its own.
    if (error instanceof Error && 'digest' in error) throw error;
    return null;
  }
}

/** One thing of a shop by its id, or a whole list. */
type Of = { list: Exclude<UnreadThing['list'], 'shop'>; id?: string };

/** What of one thing or one list cannot be read, in one sentence; null when all of it can. */
export async function unreadOf(clock: Clock, of: Of): Promise<string | null> {
  const here = await shopNow(clock);
  return here && unreadOfSentence(here.file, of);
}
