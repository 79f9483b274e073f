import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { unreadIn, unreadInWords } from '@/shared/shop-file/unread';

/** What the log was told already, so that a page that is looked at every 25 seconds says it once. */
const told = new Set<string>();

/** Tell the log of each thing of a shop that cannot be read, once while the program runs. */
export function tellUnread(shopId: string, file: ShopFile): void {
  for (const thing of unreadIn(file)) {
    const sentence = `In shop ${shopId} something cannot be read: ${unreadInWords(thing)}`;
    if (told.has(sentence)) continue;
    told.add(sentence);
    console.error(`${sentence} The Setup page says what to do.`);
  }
}
