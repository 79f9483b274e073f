import { clock } from '@/lib/clock';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { solverFor } from '@/lib/solver/timed';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type Answer, type Options, secondsIn, todayIn, weeksIn, wrongIn } from './options';

const WEEKS = '52';
const SECONDS = '10';

export const BUY_OPTIONS = { '--today': '2026-03-02', '--weeks': WEEKS, '--seconds': SECONDS };

/** What to buy, when and from whom, for all that a shop file plans to spray. */
export async function buy(file: ShopFile, options: Options): Promise<Answer> {
  const ours = shopOfFile(file);
  const today = todayIn(ours, options.get('--today'));
  const weeks = weeksIn(options.get('--weeks') ?? WEEKS);
  const seconds = secondsIn(options.get('--seconds') ?? SECONDS);
  if (!today.ok || !weeks.ok || !seconds.ok) return { ok: false, messages: wrongIn([today, weeks, seconds]) };
  const solver = await solverFor(seconds.value, clock);
  return { ok: true, value: buyDocument(purchasePlanOf(ours, today.value, weeks.value, solver)) };
}
