import { expect, test } from 'vitest';
import { projectionOf } from '@/lib/engine/ahead/projection';
import { arrivalOn } from '@/lib/engine/buying/bought';
import { areTaken } from '@/lib/engine/buying/orders';
import { type PurchasePlan, purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import type { Container } from '@/lib/engine/shop';
import { highsSolver } from '@/lib/solver/highs';
import { dayFromNumber } from '@/shared/time/day';
import { TODAY } from './any-market';
import { anyShop } from './any-shop';

/*
 * 40 shops in an ordinary run; the 1,000 that are asked for once in a while with BUYING_SHOPS=1000 take about four
 * minutes.
 */
const SHOPS = Number(process.env.BUYING_SHOPS ?? 40);
const WEEKS = 16;

test(`${SHOPS} shops: what is bought meets every need day by day, and costs no more than either habit`, async () => {
  const wrong: unknown[] = [];
  for (let seed = 1; seed <= SHOPS; seed++) {
    const ends = performance.now() + 1_000;
    const solver = await highsSolver({ secondsLeft: () => (ends - performance.now()) / 1_000, told: () => {} });
    const shop = anyShop(seed);
    const plan = purchasePlanOf(shop, TODAY, WEEKS, solver);
    const { total } = plan.cost;
    const isCheapest = total <= plan.habits.smallestPack && total <= plan.habits.cheapestPerMl && plan.bound <= total;
    const short = shortAfter(plan);
    if (!isCheapest || short.length > 0 || !areTaken(plan.orders))
      wrong.push({ seed, total, habits: plan.habits, bound: plan.bound, short, taken: areTaken(plan.orders) });
  }
  expect(wrong).toEqual([]);
});

/** What the plan of the weeks ahead lacks once everything that is to be bought stands in it, and nobody said so. */
function shortAfter(plan: PurchasePlan): unknown[] {
  const { shop, today, weeks } = plan;
  const bought = plan.parts.flatMap(({ purchase }) => purchase.packs);
  const containers = bought.map(
    ({ pack, orderOn }, at): Container => ({
      ...{
        lot: `~${String(at).padStart(4, '0')}`,
        place: 0,
        product: pack.offer.product,
        packText: pack.offer.packText,
      },
      ...{ size: pack.size, remaining: pack.size, paid: null, openedOn: null, expiresOn: null, keptIn: null },
      receivedOn: dayFromNumber(arrivalOn(pack, plan.horizon, orderOn)),
      ...{ order: null, offer: null },
    }),
  );
  const replayed = projectionOf({ ...shop, containers: [...shop.containers, ...containers] }, today, weeks);
  const late = new Set(plan.late.map(({ product, on }) => `${product.id} ${on}`));
  return replayed.sprayings.flatMap(({ date, lines }) =>
    lines.flatMap(({ ingredient: { product }, short }) =>
      short > 0 && !late.has(`${product.id} ${date}`) ? [{ product: product.id, date, short }] : [],
    ),
  );
}
