import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { findIn } from '@/lib/engine/search/rank';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { findables } from '@/lib/views/findables';
import { Day } from '@/shared/time/day';

const file = demoShop(Day.parse('2026-03-03'));
for (const product of file.products) if (product.id === 'neem-extract') product.gtins = ['0042100005264'];

const things = findables(shopOfFile(file), ({ lot, place }) => ({
  href: `/shelf/bottle/${lot}/no-${place + 1}`,
  lotId: lot,
  number: place + 1,
}));
const found = (typed: string) => findIn(things, typed, ({ by }) => by).map(({ thing }) => thing.href);

test('a bar code finds its product in whichever length a scanner gives it', () => {
  for (const gtin of ['042100005264', '0042100005264', '00042100005264']) {
    expect(found(gtin)[0], gtin).toBe('/shelf/neem-extract');
  }
});

test('the code of a label, its lot, and its place find a bottle', () => {
  expect(found('BB1:silicate-c/2')).toEqual(['/shelf/bottle/silicate-c/no-2']);
  expect(found('silicate-c')).toEqual(['/shelf/bottle/silicate-c/no-1', '/shelf/bottle/silicate-c/no-2']);
  expect(found('potting shed')).toEqual(['/shelf/bottle/sulfur-a/no-1']);
});

test('of two bottles called alike, the one with something in it comes first', () => {
  const oils = found('light oil 98 %, 1 qt');
  expect(oils).toEqual(['/shelf/bottle/oil-b/no-1', '/shelf/bottle/oil-a/no-1']);
});

test('a bench is found by its plants, and a recipe by what is in it', () => {
  expect(found('mandarin')).toEqual(['/today#bench-citrus-house']);
  expect(found('wettable sulfur')).toContain('/mix/recipes/yard-wash');
});
