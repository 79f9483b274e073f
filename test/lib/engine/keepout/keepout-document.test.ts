import { expect, test } from 'vitest';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { keepoutDocument } from '@/lib/engine/keepout/keepout-document';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { instantOf } from '@/shared/time/instant';
import { smallShop } from '../../../shared/shop-file/small-shop';

test('closed benches are printed with the moment they reopen, on the shop’s own clock', () => {
  const parsed = parseShopFile(JSON.stringify(smallShop()));
  if (!parsed.ok) throw new Error('the small shop was refused');
  const shop = shopOfFile(parsed.file);
  const at = (moment: string) => {
    const now = instantOf(Date.parse(moment));
    return keepoutDocument(now, keepOut(shop, now), shop.zone);
  };
  // The spraying ended at 23:10 UTC, and the longest interval in it is 12.5 hours.
  expect(at('2026-02-25T11:39:59Z')).toEqual({
    now: '2026-02-25T06:39:59-05:00',
    benches: [
      { bench: 'b1', state: 'closed', until: '2026-02-25T06:40:00-05:00', because: ['a1'] },
      { bench: 'b2', state: 'open', until: null, because: [] },
    ],
  });
  expect(at('2026-02-25T11:40:00Z').benches[0]).toEqual({ bench: 'b1', state: 'open', until: null, because: [] });
});
