import 'server-only';
import type { Clock } from '../clock';
import { shopNow } from './house';
import { unreadSentence } from './unread';

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
