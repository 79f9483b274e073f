import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import type { Progress } from '@/lib/engine/buying/solver';
import { onThread } from '@/lib/solver/on-thread';
import { BuyAnswer } from '@/shared/api/buying-answers';
import { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { generatedShop } from '../../bench/generated-shop';

const TODAY = Day.parse('2026-04-14');
const file = ShopFile.parse(demoShop(TODAY));
const plan = { what: 'purchase plan', file, today: TODAY, weeks: 12 } as const;

test('a search runs on a thread of its own, tells how far it is, and leaves this one free', async () => {
  const told: Progress[] = [];
  let turns = 0;
  const ticking = setInterval(() => turns++, 5);
  const found = await onThread({ ...plan, seconds: 2 }, { told: (progress) => told.push(progress) });
  clearInterval(ticking);
  expect(BuyAnswer.safeParse(buyDocument(found)).success).toBe(true);
  expect(told.length).toBeGreaterThan(0);
  for (const { best, bound } of told) expect(bound).toBeLessThanOrEqual(best + 1);
  expect(turns).toBeGreaterThan(20);
});

test('whoever stops it gets the best that was found so far', async () => {
  // A shop that is not proven in the time a test has: unheard, the stop would let it run on.
  const large = ShopFile.parse(generatedShop({ products: 60, programs: 40, benches: 20 }));
  const stop = new AbortController();
  const asked = { ...plan, file: large, weeks: 104, seconds: 600 };
  const found = await onThread(asked, { told: () => stop.abort(), signal: stop.signal });
  expect(found.cost.total).toBeLessThanOrEqual(Math.min(found.habits.smallestPack, found.habits.cheapestPerMl));
});

test('two questions at once are answered one after the other, and a failed one does not hold up the next', async () => {
  const broken = {
    ...plan,
    file: { ...file, offers: [{ ...file.offers[0], supplier: 'nobody' }] } as typeof file,
    seconds: 1,
  };
  const [first, second] = await Promise.allSettled([onThread(broken), onThread({ ...plan, seconds: 1 })]);
  expect(first).toMatchObject({ status: 'rejected' });
  expect(second).toMatchObject({ status: 'fulfilled' });
});

test('what could stand in a recipe is answered there too', async () => {
  const recipe = file.recipes.find(({ ingredients }) => ingredients.some(({ product }) => product === 'spinosad-half'));
  const asked = {
    what: 'equivalents',
    recipe: recipe?.id ?? '',
    product: 'spinosad-half',
    file,
    today: TODAY,
  } as const;
  const found = await onThread({ ...asked, weeks: 12, seconds: 5 });
  expect(found?.candidates.map(({ product }) => product.id)).toContain('spinosad-12');
  expect(await onThread({ ...asked, recipe: 'none', weeks: 12, seconds: 1 })).toBeNull();
});
