import { expect, test } from 'vitest';
import { type Fields, once, planOf, product, recipe } from '../lib/engine/rules/small-shop';

/*
 * Common practice, no source: flags that say what any grower would say, each at the edge at which it begins.
 */

const raised = (rule: string, parts: Parameters<typeof planOf>[0]) =>
  planOf({ recipes: [recipe('r1', 'p1')], programs: [once('g1', '2026-03-02')], ...parts }, '2026-03-02', 8)
    .flags.filter((flag) => flag.rule === rule)
    .map(({ severity, on }) => `${severity} ${on}`);

test('must-not-mix: a pair that a label forbids is a stop, and each by itself is none', () => {
  const products = [product('p1', { doNotMixWith: ['p2'] }), product('p2')];
  expect(raised('must-not-mix', { products, recipes: [recipe('r1', 'p1', 'p2')] })).toEqual(['stop 2026-03-02']);
  expect(raised('must-not-mix', { products })).toEqual([]);
});

test('ph-outside-range: a label from pH 5 to 7 takes a target of 7 and doubts one of 7.1', () => {
  const products = [product('p1', { sprayPh: { min: 5, max: 7 } })];
  const to = (targetPh: number) =>
    raised('ph-outside-range', { products, recipes: [{ ...recipe('r1', 'p1'), targetPh }] });
  expect([to(7), to(7.1).length]).toEqual([[], 1]);
});

test('rei-unknown: a label without an interval says so, one of 0 h is an interval', () => {
  const of = (reiHours: number | null) => raised('rei-unknown', { products: [product('p1', { reiHours })] });
  expect([of(null).length, of(0)]).toEqual([1, []]);
});

test('bench-closed: a second spraying may begin at the minute at which the first reopens, and not one earlier', () => {
  const products = [product('p1', { reiHours: 12 })];
  const second = (startTime: string) =>
    raised('bench-closed', {
      products,
      programs: [
        once('g1', '2026-03-02', { startTime: '06:00', minutes: 60 }),
        once('g2', '2026-03-02', { startTime, minutes: 30 }),
      ],
    });
  expect([second('18:59'), second('19:00')]).toEqual([['stop 2026-03-02'], []]);
});

// 10 plants at 20 mL and 2 mL/L take 0.4 mL.
const lot = (rest: Fields) => ({ ...{ id: 'l1', product: 'p1', pack: '1 L', receivedOn: '2026-01-05' }, ...rest });

test('short, unknown-cost: 0.4 mL for 0.4 mL are enough, and a bottle without a price has no cost that anybody knows', () => {
  const left = (remaining: string) => raised('short', { lots: [lot({ remaining, paid: '10.00' })] });
  expect([left('0.4 mL'), left('0.399 mL')]).toEqual([[], ['stop 2026-03-02']]);
  const paid = (fields: Fields) => raised('unknown-cost', { lots: [lot(fields)] }).length;
  expect([paid({ paid: '10.00' }), paid({})]).toEqual([0, 1]);
});

test('lot-expired: the printed day is still a good one, the day after it is not', () => {
  const printed = (expiresOn: string) => raised('lot-expired', { lots: [lot({ expiresOn, paid: '10.00' })] }).length;
  expect([printed('2026-03-02'), printed('2026-03-01')]).toEqual([0, 1]);
});

test('unknown-need: a powder by the spoon that nobody weighed says so, and a weighed one does not', () => {
  const spooned = (gramsPerTeaspoon: number | null) =>
    raised('unknown-need', {
      products: [product('p1', {}, { form: 'powder', gramsPerTeaspoon })],
      recipes: [recipe('r1', { product: 'p1', dose: '1 tsp/gal' })],
    }).length;
  expect([spooned(null), spooned(5)]).toEqual([1, 0]);
});

test('unknown-expiry: a bottle that lasts nobody knows how long says so', () => {
  const lasting = (shelfLife: Fields) =>
    raised('unknown-expiry', { products: [product('p1', {}, { shelfLife })] }).length;
  expect([lasting({}), lasting({ unopenedDays: 730 })]).toEqual([1, 0]);
});
