import { expect, test } from 'vitest';
import { leftoverPlaces } from '@/lib/engine/mix/leftover';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { toNumber } from '@/shared/quantity/exact';
import { instantOf } from '@/shared/time/instant';
import { parsedOrThrow } from '../../data/any-shop-file';

const bench = (id: string, mlPerPlant: number | null = 20) => ({
  ...{ id, name: id, plants: [{ name: 'Ferns', count: 10, mlPerPlant }] },
});

const shopWith = (more: object = {}) =>
  shopOfFile(
    parsedOrThrow({
      format: 'bench-and-bottle/shop@1',
      shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
      products: [
        { id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', label: { reiHours: 12, minDaysBetween: 7 } },
      ],
      lots: [{ id: 'l', product: 'p', pack: '500 mL', paid: '74.00', receivedOn: '2026-02-02' }],
      benches: [bench('free'), bench('planned'), bench('closed'), bench('lately'), bench('untried', null)],
      recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '12 mL/gal' }] }],
      programs: [
        { id: 'g', recipes: ['r'], benches: ['planned'], startsOn: '2026-05-03', startTime: '17:30', minutes: 45 },
      ],
      applications: [
        {
          id: 'a',
          recipe: 'r',
          benches: ['closed'],
          startedAt: '2026-03-31T08:00:00Z',
          endedAt: '2026-03-31T09:00:00Z',
        },
        {
          id: 'b',
          recipe: 'r',
          benches: ['lately'],
          startedAt: '2026-03-27T08:00:00Z',
          endedAt: '2026-03-27T09:00:00Z',
        },
      ],
      ...more,
    }),
  );

test('what is left over goes where the bench is open, the label lets it and the plants take a known volume, planned ones first', () => {
  const shop = shopWith();
  const [recipe] = shop.recipes;
  if (!recipe) throw new Error('the shop has a recipe');
  const places = leftoverPlaces(shop, recipe, shop.benches, instantOf(Date.UTC(2026, 2, 31, 12)));
  expect(places.map(({ bench: { id }, roomMl, inProgram }) => [id, toNumber(roomMl), inProgram])).toEqual([
    ['planned', 200, true],
    ['free', 200, false],
  ]);
});
