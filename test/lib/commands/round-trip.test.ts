import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { demoShop } from '@/lib/demo/demo-shop';
import { canonical } from '@/lib/engine/exchange/canonical';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { runs } from '@/test/runs';
import { anyShopFile, parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, freshDatabase } from '../data/fresh-database';
import { SMALL, smallShop } from './small-shop';

async function throughANewShop(file: ShopFile): Promise<ShopFile> {
  const outcome = await importShopFile({ commandId: newId(), file, into: { isDemo: false } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return shopFileOf(outcome.value.shopId);
}

test('a shop that is exported and imported into a new shop is exported as the same file', {
  timeout: 120_000,
}, async () => {
  await freshDatabase();
  await fc.assert(
    fc.asyncProperty(anyShopFile, async (file) => {
      const first = await throughANewShop(file);
      expect(first).toEqual(canonical(file));
      expect(JSON.stringify(await throughANewShop(parsedOrThrow(first)))).toBe(JSON.stringify(first));
    }),
    { numRuns: runs(8, 200) },
  );
});

test.each(['2026-03-31', '2026-11-01'])('the demo shop of %s comes out as it went in', async (day) => {
  await freshDatabase();
  const file = parsedOrThrow(demoShop(Day.parse(day)));
  expect(await throughANewShop(file)).toEqual(canonical(file));
});

test.each(['one', 'two', 'three'])('worked shop %s comes out as it went in', async (which) => {
  await freshDatabase();
  const given = JSON.parse(readFileSync(new URL(`../../worked/given/plan-${which}.json`, import.meta.url), 'utf8'));
  const file = parsedOrThrow(given.shop);
  const out = await throughANewShop(file);
  expect(out).toEqual(canonical(file));
  const as = (lots: ShopFile['lots']) => lots.map(({ remaining, paid, ...lot }) => lot);
  expect(as(out.lots)).toEqual(as(file.lots));
});

test('a shop with more rows of each kind than a query may name comes out as it went in', async () => {
  const many = Array.from({ length: 1_500 }, (_, number) => number);
  const [bench] = SMALL.benches;
  const [application] = SMALL.applications;
  const [lot] = SMALL.lots;
  if (!bench || !application || !lot) throw new Error('the small shop has one of each');
  const large = {
    ...SMALL,
    lots: many.map((number) => ({ ...lot, id: `l${number}` })),
    benches: [bench, ...many.map((number) => ({ ...bench, id: `b${number}` }))],
    applications: many.map((number) => ({ ...application, id: `a${number}` })),
  };
  const shopId = await smallShop(large);
  const { lots, benches, applications } = await shopFileOf(shopId);
  expect({ lots, benches, applications }).toEqual({
    lots: canonical(large).lots,
    benches: large.benches,
    applications: canonical(large).applications,
  });
});
