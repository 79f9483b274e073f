import { expect, test } from 'vitest';
import { STOCK, TODAY } from './flag-case';
import { flagRows, planOf, shopWith } from './plan-of';

/* Source: worked by hand from the definitions of the shop file. */

test('an application of another mode breaks the row; one without any mode does not', () => {
  /*
   * The bench got A on 1 and 8 May, then either B or a plain feed on 15 May. A again on 1 June is the third in a row
   * that carries a mode at all only after the feed.
   */
  const after = (between: 'b' | 'feed') => {
    const product = (id: string, modes: string[]) => ({
      id,
      name: id,
      kind: 'insecticide' as const,
      form: 'liquid' as const,
      label: { reiHours: 0, modes },
    });
    const card = (id: string) => ({ id, name: id, ingredients: [{ product: id, dose: '1 mL/L' }] });
    const record = (recipe: string, day: string) => ({
      id: day,
      recipe,
      benches: ['b1'],
      startedAt: `${day}T12:00:00Z`,
      endedAt: `${day}T12:30:00Z`,
    });
    const plan = planOf(
      shopWith({
        products: [product('a', ['IRAC 5']), product('b', ['IRAC UN']), product('feed', [])],
        lots: [{ ...STOCK, product: 'a' }],
        benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 1, mlPerPlant: 10 }] }],
        recipes: ['a', 'b', 'feed'].map(card),
        programs: [{ id: 'g1', recipes: ['a'], benches: ['b1'], startsOn: TODAY, startTime: '10:00', minutes: 5 }],
        applications: [record('a', '2026-05-01'), record('a', '2026-05-08'), record(between, '2026-05-15')],
      }),
      TODAY,
      1,
    );
    return flagRows(plan);
  };
  expect(after('b')).toEqual([]);
  expect(after('feed')).toEqual(['warn mode-repeated 2026-06-01']);
});
