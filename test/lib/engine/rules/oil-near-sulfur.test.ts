import { expect, test } from 'vitest';
import { isOil, isSoap, isSulfur } from '@/lib/engine/rules/oil-and-sulfur';
import { oilNearSulfur } from '@/lib/engine/rules/oil-near-sulfur';
import {
  application,
  bench,
  type Fields,
  once,
  planOf,
  product,
  recipe,
  type SmallShop,
  smallShop,
} from './small-shop';

const holding = (id: string, substance: string, rest: Fields = {}) =>
  product(id, {}, { contents: [{ substance, amount: 80, basis: '% w/w' }], ...rest });

/** An oil, sulfur and both in one tank. The shop keeps 14 days between them. */
const shop = (parts: SmallShop): SmallShop => ({
  settings: { oilSulfurDays: 14 },
  products: [holding('oil', 'mineral oil'), holding('sulfur', 'sulfur')],
  recipes: [recipe('ro', 'oil'), recipe('rs', 'sulfur'), recipe('both', 'oil', 'sulfur')],
  ...parts,
});
const on = (id: string, day: string, mix: string, rest: Fields = {}) => once(id, day, { recipes: [mix], ...rest });
const flags = (parts: SmallShop) =>
  oilNearSulfur(planOf(shop(parts), '2026-03-02', 6)).map(({ severity, program, product: its, benches }) => [
    severity,
    program,
    its,
    benches,
  ]);

test.each([
  { gap: 0, first: 'rs', second: 'ro', on: '2026-03-03', fires: true },
  { gap: 13, first: 'rs', second: 'ro', on: '2026-03-16', fires: true },
  { gap: 14, first: 'rs', second: 'ro', on: '2026-03-17', fires: false },
  { gap: 13, first: 'ro', second: 'rs', on: '2026-03-16', fires: true },
  { gap: 14, first: 'ro', second: 'rs', on: '2026-03-17', fires: false },
])('$second planned $gap days after $first, where the shop keeps 14', ({ first, second, on: date, fires }) => {
  const programs = [on('g1', '2026-03-03', first), on('g2', date, second, { startTime: '19:00' })];
  const its = second === 'ro' ? 'oil' : 'sulfur';
  expect(flags({ programs })).toEqual(fires ? [['stop', 'g2', its, ['b1']]] : []);
});

test('a record counts as well, each bench by itself', () => {
  const parts = {
    benches: [bench('b1'), bench('b2')],
    applications: [
      application('a1', '2026-02-20T18:00:00Z', '2026-02-20T18:30:00Z', { recipe: 'rs', benches: ['b2'] }),
    ],
    programs: [on('g1', '2026-03-05', 'ro', { benches: ['b1', 'b2'] })],
  };
  expect(flags(parts)).toEqual([['stop', 'g1', 'oil', ['b2']]]);
  expect(oilNearSulfur(planOf(shop(parts)))[0]?.message).toBe(
    'Product oil follows sulfur in Recipe rs, sprayed on Bench b2 13 days before, on Fri 20 February. This shop keeps 14 days between oil and sulfur on a bench, since together they burn leaves; keep to the label where it asks for more. Leave one of the two out, or move this to Fri 6 March or later.',
  );
});

test('both in one tank are too near, said once, and 0 days keeps nothing apart', () => {
  const programs = [on('g1', '2026-03-05', 'both')];
  expect(flags({ programs })).toEqual([['stop', 'g1', 'oil', ['b1']]]);
  expect(flags({ programs, settings: { oilSulfurDays: 0 } })).toEqual([]);
  expect(flags({ programs, settings: { oilSulfurDays: 1 } })).toHaveLength(1);
});

test('two oils, or sulfur after sulfur, are not kept apart', () => {
  expect(flags({ programs: [on('g1', '2026-03-03', 'ro'), on('g2', '2026-03-04', 'ro')] })).toEqual([]);
  expect(flags({ programs: [on('g1', '2026-03-03', 'rs'), on('g2', '2026-03-04', 'rs')] })).toEqual([]);
});

const named = (fields: Fields) => {
  const [found] = smallShop({ products: [product('p1', {}, fields), holding('src', 'mineral oil')] }).products;
  if (!found) throw new Error('there is a product');
  return { oil: isOil(found), soap: isSoap(found), sulfur: isSulfur(found) };
};
const NEITHER = { oil: false, soap: false, sulfur: false };

test.each([
  { what: 'an oil by name', fields: { name: 'Winter oil' }, is: { oil: true } },
  {
    what: 'an oil by substance',
    fields: { contents: [{ substance: 'clarified NEEM OIL', amount: 70, basis: '% w/w' }] },
    is: { oil: true },
  },
  { what: 'carried in oil', fields: { formulation: 'OD' }, is: { oil: true } },
  { what: 'soil, which is none', fields: { name: 'Soil wetter', formulation: 'SL' }, is: {} },
  {
    what: 'a soap',
    fields: { contents: [{ substance: 'potassium salts of fatty acids', amount: 49, basis: '% w/w' }] },
    is: { soap: true },
  },
  { what: 'sulphur', fields: { name: 'Wettable sulphur' }, is: { sulfur: true } },
  {
    what: 'lime sulfur by what it holds',
    fields: { contents: [{ substance: 'calcium polysulfides', amount: 29, basis: '% w/w' }] },
    is: { sulfur: true },
  },
  { what: 'sulfur by its mode group', fields: { label: { rates: [], modes: ['FRAC M02'] } }, is: { sulfur: true } },
  {
    what: 'sulfur by the older name of its group',
    fields: { label: { rates: [], modes: ['M2'] } },
    is: { sulfur: true },
  },
  { what: 'another multi-site group', fields: { label: { rates: [], modes: ['FRAC M03', 'FRAC M20'] } }, is: {} },
  { what: 'a sulfate', fields: { contents: [{ substance: 'magnesium sulfate', amount: 98, basis: '% w/w' }] }, is: {} },
  { what: 'made from an oil', fields: { madeFrom: [{ product: 'src', dose: '100 mL/L' }] }, is: { oil: true } },
])('it is recognised: $what', ({ fields, is }) => {
  expect(named(fields)).toEqual({ ...NEITHER, ...is });
});
