import { expect, test, vi } from 'vitest';
import { shopFileOf } from '@/lib/data/snapshot';
import { equivalentsNow } from '@/lib/views/equivalents-now';
import { Day } from '@/shared/time/day';
import { smallShop } from '../commands/small-shop';

const onThread = vi.hoisted(() => vi.fn());
vi.mock('@/lib/solver/on-thread', () => ({ onThread }));

const answer = (isWhole: boolean) => ({
  breakEven: { flips: [], isWhole },
  candidates: [{ season: { inTime: true } }],
});

test.each([
  ['worked out once for a shop as it stands', true, 1],
  ['asked for anew a minute later where there was no time to finish it', false, 2],
])('a comparison is %s', async (_, isWhole, times) => {
  onThread.mockReset().mockResolvedValue(answer(isWhole));
  const id = await smallShop();
  const here = { id, file: await shopFileOf(id), today: Day.parse('2026-03-31') };
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  try {
    for (const wait of [0, 1_000, 61_000]) {
      vi.advanceTimersByTime(wait);
      await equivalentsNow(here, { recipe: 'r', product: 'p' });
    }
    expect(onThread).toHaveBeenCalledTimes(times);
  } finally {
    vi.useRealTimers();
  }
});
