import { expect, test } from 'vitest';
import { recordFindings } from '@/lib/engine/rules/record-findings';
import { tooHot } from '@/lib/engine/rules/too-hot';
import { application, type Fields, once, planOf, product, type SmallShop, smallShop } from './small-shop';

const HIGHS = (march: number) => [10, 15, march, 20, 24, 28, 31, 33, 28, 22, 16, 11];
const OIL = { contents: [{ substance: 'mineral oil', amount: 80, basis: '% w/w' }] };
const shop = (label: Fields, rest: Fields, march: number | null): SmallShop => ({
  settings: { oilHotC: 32, monthlyHighsC: march === null ? null : HIGHS(march) },
  products: [product('p1', label, rest)],
  programs: [once('g1', '2026-03-31')],
});
const severities = (parts: SmallShop) => tooHot(planOf(parts, '2026-03-20')).map(({ severity }) => severity);

test.each([
  { what: 'an oil', rest: OIL, march: 31.9, flags: [] },
  { what: 'an oil', rest: OIL, march: 32, flags: ['warn'] },
  { what: 'an oil', rest: OIL, march: null, flags: ['note'] },
  { what: 'a soap', rest: { name: 'Soap' }, march: 32, flags: ['warn'] },
  { what: 'neither', rest: {}, march: 45, flags: [] },
  { what: 'neither', rest: {}, march: null, flags: [] },
])('$what in a month that reaches $march °C, where oils and soaps are hot from 32 on', ({ rest, march, flags }) => {
  expect(severities(shop({}, rest, march))).toEqual(flags);
});

test.each([
  { march: 27, flags: [] },
  { march: 27.1, flags: ['warn'] },
  { march: null, flags: ['note'] },
])('a label that says not above 27, in a month that reaches $march °C', ({ march, flags }) => {
  expect(severities(shop({ hotAboveC: 27 }, {}, march))).toEqual(flags);
});

test('the stricter of label and shop counts, whichever it is', () => {
  expect(severities(shop({ hotAboveC: 27 }, OIL, 28))).toEqual(['warn']);
  expect(severities(shop({ hotAboveC: 40 }, OIL, 33))).toEqual(['warn']);
});

test('each month has its own temperature', () => {
  const parts = { ...shop({}, OIL, 32), programs: [once('g1', '2026-03-31'), once('g2', '2026-04-01')] };
  expect(tooHot(planOf(parts, '2026-03-20')).map(({ program }) => program)).toEqual(['g1']);
});

test('the message says what is known, and what to do', () => {
  const [flag] = tooHot(planOf(shop({ hotAboveC: 30 }, OIL, 33.5), '2026-03-20'));
  expect(flag?.message).toBe(
    'In March it gets as warm as 33.5 °C here. The label of Product p1 says not to spray it above 30 °C. From 32 °C on, Product p1 may burn leaves. Measure first, and spray in a cool hour, or use something else.',
  );
});

const recorded = (rest: Fields, label: Fields = { hotAboveC: 30 }, useWithinHours: number | null = null) => {
  const made = smallShop({
    settings: { oilHotC: 32 },
    products: [product('p1', label, OIL)],
    recipes: [{ id: 'r1', name: 'Oil', useWithinHours, ingredients: [{ product: 'p1', dose: '10 mL/L' }] }],
    applications: [application('a1', '2026-03-02T18:00:00Z', '2026-03-02T19:00:00Z', rest)],
  });
  return made.applications
    .flatMap((one) => recordFindings(made, one))
    .map(({ rule, severity }) => `${severity} ${rule}`);
};

test.each([
  { temperatureC: null, found: [] },
  { temperatureC: 30, found: [] },
  { temperatureC: 30.1, found: ['stop too-hot'] },
])('a record at $temperatureC °C of a product that may not be sprayed above 30', ({ temperatureC, found }) => {
  expect(recorded({ temperatureC })).toEqual(found);
});

test('a record at the temperature from which oils burn leaves', () => {
  expect(recorded({ temperatureC: 31.9 }, {})).toEqual([]);
  expect(recorded({ temperatureC: 32 }, {})).toEqual(['warn too-hot']);
});

test.each([
  { mixedAt: '2026-03-02T15:00:00Z', found: [] },
  { mixedAt: '2026-03-02T14:59:59Z', found: ['warn mixed-too-long'] },
  { mixedAt: null, found: [] },
])('a spray to be used within four hours, mixed at $mixedAt and out at 19:00', ({ mixedAt, found }) => {
  expect(recorded({ mixedAt }, {}, 4)).toEqual(found);
});

test('where nobody noted when it was mixed, its start is the latest that it can have been', () => {
  expect(recorded({}, {}, 1)).toEqual([]);
  expect(recorded({}, {}, 0.9)).toEqual(['warn mixed-too-long']);
});
