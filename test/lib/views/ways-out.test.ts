import { expect, test } from 'vitest';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates } from '@/lib/views/bench-states';
import { reasonsOf } from '@/lib/views/keep-out-words';
import { waysOutOf } from '@/lib/views/ways-out';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { SMALL } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';

/* A spraying planned for 3 March, and nobody said what became of it; four weeks and two years later. */

const [product] = SMALL.products;
const withInterval = (reiHours: number | null, applications: object[] = []) =>
  shopOfFile(
    parsedOrThrow({
      ...SMALL,
      products: SMALL.products.map((one) => ({ ...one, label: { ...product?.label, reiHours } })),
      applications,
    }),
  );

function seen(shop: ReturnType<typeof withInterval>, now: string) {
  const at = instantOf(Date.parse(now));
  const today = Day.parse(now.slice(0, 10));
  return benchStates(shop, at, { doubt: null, lag: null }).map((standing) => ({
    state: standing.state,
    because: reasonsOf(standing, { zone: shop.zone, today, now: at }),
    ways: waysOutOf(standing, today),
  }));
}

test('a missed spraying with an unknown interval keeps people out for good, and the board names both ways out', () => {
  const shop = withInterval(null);
  for (const now of ['2026-03-31T15:00:00Z', '2028-03-31T15:00:00Z']) {
    expect(seen(shop, now)).toMatchObject([
      {
        state: 'unknown',
        ways: [
          { words: 'Say what became of it', at: 'missed' },
          { words: `Enter the interval of ${product?.name}`, at: { of: 'product', field: 'label.reiHours' } },
        ],
      },
    ]);
  }
  expect(seen(shop, '2026-03-31T15:00:00Z')[0]?.because.join()).toContain('no interval entered for');
  expect(seen(withInterval(4), '2026-03-31T15:00:00Z')).toMatchObject([{ state: 'open', ways: [] }]);
});

test('a record without an end leads to the record, and one with an unknown interval to the label', () => {
  const record = { id: 'a', recipe: 'r', benches: ['b'], startedAt: '2026-03-03T22:30:00Z' };
  const [running] = seen(withInterval(4, [record]), '2026-03-31T15:00:00Z');
  expect(running).toMatchObject({ state: 'unknown', ways: [{ at: { of: 'record', id: 'a' } }] });
  const [unlabelled] = seen(
    withInterval(null, [{ ...record, endedAt: '2026-03-03T23:00:00Z' }]),
    '2026-03-31T15:00:00Z',
  );
  expect(unlabelled).toMatchObject({ state: 'unknown', ways: [{ at: { of: 'product' } }] });
});
