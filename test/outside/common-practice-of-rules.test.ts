import { describe, expect, test } from 'vitest';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { firstPart } from '@/lib/engine/mix/acid-doses';
import { orderOfAddition } from '@/lib/engine/mix/order';
import { readInstant } from '@/shared/time/instant';
import { acid } from '../lib/engine/mix/some-products';
import {
  application,
  bench,
  type Fields,
  once,
  planOf,
  product,
  recipe,
  smallShop,
} from '../lib/engine/rules/small-shop';
import { water } from './acid-tables';

const at = (text: string) => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

/*
 * Common practice, no source: rules, the unknown and the mix, as common-practice.test.ts has bench, money and shelf.
 */

describe('rules', () => {
  const labelled = (label: Fields, parts: object = {}) =>
    planOf({ products: [product('p1', label)], ...parts }, '2026-03-02', 104);
  const firedOn = (rule: string, plan: ReturnType<typeof planOf>) =>
    plan.flags.filter((flag) => flag.rule === rule).map(({ on }) => on);
  const twice = (first: string, second: string) => ({ programs: [once('g1', first), once('g2', second)] });

  test('"in a year" is the 365 days that end with the spraying', () => {
    const label = { maxApplicationsPerYear: 1 };
    expect(firedOn('too-many-applications', labelled(label, twice('2026-03-02', '2027-03-01')))).toEqual([
      '2027-03-01',
    ]);
    expect(firedOn('too-many-applications', labelled(label, twice('2026-03-02', '2027-03-02')))).toEqual([]);
  });
  test('seven days between 2 and 9 March are seven, and one less is too soon', () => {
    const label = { minDaysBetween: 7 };
    expect(firedOn('too-soon', labelled(label, twice('2026-03-02', '2026-03-08')))).toEqual(['2026-03-08']);
    expect(firedOn('too-soon', labelled(label, twice('2026-03-02', '2026-03-09')))).toEqual([]);
  });
  // Days before harvest by one active on five crops: Mississippi State University Extension, Follow label directions for
  // garden product use, 2024 (seen); "if it says three day PHI, wait three days from when you spray", Kansas State
  // University, Pesticides: When Can I Harvest?, kansashealthyyards.org (seen).
  test.each([0, 1, 3, 7, 14])(
    'a pre-harvest interval of %i days has passed that many days after spraying (seen)',
    (phiDays) => {
      const sprayedBefore = (days: number) => {
        const on = new Date(Date.UTC(2026, 2, 20 - days)).toISOString().slice(0, 10);
        const benches = [bench('b1', { harvestOn: '2026-03-20' })];
        return firedOn('phi-reaches-harvest', labelled({ phiDays }, { benches, programs: [once('g1', on)] }));
      };
      expect(sprayedBefore(phiDays)).toEqual([]);
      if (phiDays > 0) expect(sprayedBefore(phiDays - 1)).toHaveLength(1);
    },
  );
  test('a mix to be used within 2 h is in time after two hours, and not a minute later', () => {
    const lasting = (minutes: number) =>
      firedOn(
        'mixed-too-long',
        planOf({
          recipes: [{ ...recipe('r1', 'p1'), useWithinHours: 2 }],
          programs: [once('g1', '2026-03-02', { minutes })],
        }),
      );
    expect([lasting(120), lasting(121)]).toEqual([[], ['2026-03-02']]);
  });
  test('a dose above the label is a stop, one at its end is none', () => {
    const dosed = (dose: string) =>
      planOf({
        products: [product('p1', { rates: [{ use: 'foliar', min: '1 mL/L', max: '2 mL/L' }] })],
        recipes: [recipe('r1', { product: 'p1', dose, use: 'foliar' })],
        programs: [once('g1', '2026-03-02')],
      }).flags.map(({ rule, severity }) => `${severity} ${rule}`);
    expect([dosed('2 mL/L'), dosed('2.01 mL/L'), dosed('0.9 mL/L')]).toEqual([
      [],
      ['stop dose-outside-label'],
      ['warn dose-outside-label'],
    ]);
  });
  test('a bench that customers reach is flagged from the minute at which it is closed while the shop is open', () => {
    const closed = (startTime: string) =>
      firedOn(
        'closed-in-opening-hours',
        planOf({
          settings: { openingHours: { mon: [['09:00', '18:00']] } },
          products: [product('p1', { reiHours: 1 })],
          benches: [bench('b1', { customers: true })],
          programs: [once('g1', '2026-03-02', { startTime, minutes: 30 })],
        }),
      );
    expect([closed('07:30'), closed('07:31'), closed('17:59'), closed('18:00')]).toEqual([
      [],
      ['2026-03-02'],
      ['2026-03-02'],
      [],
    ]);
  });
});

describe('unknown is never zero', () => {
  const spooned = (gramsPerTeaspoon: number | null) =>
    planOf({
      products: [product('p1', {}, { form: 'powder', gramsPerTeaspoon })],
      recipes: [recipe('r1', { product: 'p1', dose: '1 tsp/gal' })],
      programs: [once('g1', '2026-03-02')],
    });
  test('a powder by the spoon that nobody weighed has no need and no cost that anybody knows', () => {
    const document = planDocument(spooned(null));
    expect(document.products[0]?.weeks[0]?.need).toBeNull();
    expect(document.sprayings[0]?.materialCost).toBeNull();
    expect(planDocument(spooned(5)).products[0]?.weeks[0]?.need).toBeGreaterThan(0);
  });
  test('a bench after a mix without an interval is kept out of, and so is one of which nobody noted the end', () => {
    const state = (reiHours: number | null, endedAt: string | null) =>
      keepOut(
        smallShop({
          products: [product('p1', { reiHours })],
          applications: [application('a', '2026-03-02T08:00:00Z', endedAt)],
        }),
        at('2026-03-12T08:00:00Z'),
      ).map((one) => one.state);
    expect([state(12, '2026-03-02T09:00:00Z'), state(null, '2026-03-02T09:00:00Z'), state(12, null)]).toEqual([
      ['open'],
      ['unknown'],
      ['unknown'],
    ]);
  });
  test('the last of several intervals decides, to the minute at which it has passed', () => {
    const shop = smallShop({
      products: [product('p1', { reiHours: 12 })],
      applications: [
        application('a', '2026-03-02T08:00:00Z', '2026-03-02T09:00:00Z'),
        application('b', '2026-03-02T10:00:00Z', '2026-03-02T11:00:00Z'),
      ],
    });
    const states = ['2026-03-02T21:30:00Z', '2026-03-02T22:59:59Z', '2026-03-02T23:00:00Z'].map(
      (text) => keepOut(shop, at(text))[0]?.state,
    );
    expect(states).toEqual(['closed', 'closed', 'open']);
  });
});

describe('the mix', () => {
  test('an alkali silicate goes into plain water before everything else, and an acid last', () => {
    const { recipes } = smallShop({
      products: [
        product('acid', {}, { kind: 'pH adjuster' }),
        product('feed', {}, { kind: 'nutrient', formulation: 'SL' }),
        product('silicate', {}, { kind: 'nutrient', formulation: 'SL', alkaliSilicate: true }),
      ],
      recipes: [recipe('r1', 'acid', 'feed', 'silicate')],
    });
    const order = orderOfAddition(recipes[0]?.ingredients ?? []).map(({ ingredient }) => ingredient.product.id);
    expect(order).toEqual(['silicate', 'feed', 'acid']);
  });
  test('two thirds of the acid go in first', () => {
    const first = firstPart(water(100, 8), {
      product: acid('a', ['100 g/L nitric acid']),
      perLitre: 0.9,
      missing: null,
    });
    expect(first?.perLitre).toBeCloseTo(0.6, 12);
  });
});
