import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { isTooMuchAhead, MOST_AHEAD, MOST_LISTED } from '@/shared/shop-file/limits';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';

/* A file that is accepted can be worked out; one that is too large is refused with the limit and the place. */

const numbers = (count: number) => Array.from({ length: count }, (_, index) => index);

function shop({ programs, repeat, plants = 10 }: { programs: number; repeat: string; plants?: number }) {
  return {
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'Large', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '1 L' },
    products: [{ id: 'p', name: 'P', kind: 'nutrient', form: 'liquid' }],
    benches: [{ id: 'b', name: 'B', plants: [{ name: 'x', count: plants, mlPerPlant: 10 }] }],
    recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p', dose: '1 mL/L' }] }],
    programs: numbers(programs).map((id) => ({
      ...{ id: `g${id}`, recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', repeat },
      ...{ startTime: '18:00', minutes: 10 },
    })),
  };
}

function faultsOf(file: unknown) {
  const parsed = parseShopFile(JSON.stringify(file));
  return parsed.ok ? [] : parsed.faults;
}

test('programs that come to too many sprayings are refused once, at the first that is too much', () => {
  const most = Math.floor(MOST_AHEAD.sprayings / 728);
  expect(faultsOf(shop({ programs: most, repeat: 'FREQ=DAILY' }))).toEqual([]);
  expect(faultsOf(shop({ programs: 2_000, repeat: 'FREQ=DAILY' }))).toEqual([
    {
      path: `programs[${most}]`,
      message: `All programs together come to ${((most + 1) * 728).toLocaleString('en-US')} sprayings in 104 weeks; at most 100,000 can be planned. Spray less often, or in fewer programs.`,
    },
  ]);
});

test('500 weekly programs on 2,000 products are no fault', () => {
  const large = shop({ programs: 500, repeat: 'FREQ=WEEKLY' });
  const products = numbers(2_000).map((id) => ({ ...large.products[0], id: `p${id}`, name: `P${id}` }));
  const recipes = [
    { id: 'r', name: 'R', ingredients: numbers(10).map((id) => ({ product: `p${id}`, dose: '1 mL/L' })) },
  ];
  expect(faultsOf({ ...large, products, recipes })).toEqual([]);
});

test('fills of the sprayer are limited for one spraying, and for all together', () => {
  expect(faultsOf(shop({ programs: 1, repeat: 'FREQ=DAILY', plants: 100_001 }))).toMatchObject([
    { path: 'programs[0].benches', message: expect.stringContaining('at most 1,000 can be planned') },
  ]);
  expect(faultsOf(shop({ programs: 2, repeat: 'FREQ=DAILY', plants: 100_000 }))).toMatchObject([
    { path: 'programs[1]', message: expect.stringContaining('fills of the sprayer in 104 weeks; at most 1,000,000') },
  ]);
});

test('lists say how many things they may hold, in the file and in its schema', () => {
  const many = numbers(MOST_LISTED.suppliers + 1).map((id) => ({ id: `s${id}`, name: `S${id}` }));
  expect(faultsOf({ ...shop({ programs: 1, repeat: 'FREQ=DAILY' }), suppliers: many })).toMatchObject([
    { path: 'suppliers', message: 'There are 2,001 here; at most 2,000 can be kept.' },
  ]);
});

test('a shop that was kept before there were limits is not worked out, and says why', () => {
  const parsed = parseShopFile(JSON.stringify(shop({ programs: 1, repeat: 'FREQ=DAILY' })));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const { file } = parsed;
  const [program] = file.programs;
  const programs = numbers(2_000).map((id) => ({ ...program, id: `g${id}` }));
  const kept = shopOfFile({ ...file, programs: programs as typeof file.programs });
  let thrown: unknown = null;
  try {
    planAhead(kept, Day.parse('2026-03-02'), 26);
  } catch (error) {
    thrown = error;
  }
  expect(isTooMuchAhead(thrown)).toBe(true);
  expect((thrown as Error).message).toContain('sprayings in 104 weeks; at most 100,000');
});

test('the fills of a program are one list of one object, however often it is sprayed', () => {
  const parsed = parseShopFile(JSON.stringify(shop({ programs: 1, repeat: 'FREQ=DAILY', plants: 90_000 })));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const { sprayings } = planDocument(planAhead(shopOfFile(parsed.file), Day.parse('2026-03-02'), 26));
  expect(sprayings).toHaveLength(182);
  expect(new Set(sprayings.map(({ fills }) => fills)).size).toBe(1);
  expect(new Set(sprayings[0]?.fills ?? []).size).toBe(1);
  expect(sprayings[0]?.fills).toHaveLength(900);
});
