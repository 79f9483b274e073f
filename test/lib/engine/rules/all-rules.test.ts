import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { flagsOf } from '@/lib/engine/rules/all-rules';
import { RULES } from '@/lib/engine/rules/flag';
import { minutes } from '@/shared/quantity/amounts';
import { application, bench, day, once, planOf, product, recipe, type SmallShop, smallShop } from './small-shop';

/** A shop in which every rule has something to say. */
const troubled: SmallShop = {
  settings: { openingHours: { tue: [['09:00', '18:00']] }, water: { alkalinityMgPerLCaCO3: 90, pH: 7.5 } },
  products: [
    product('p1', {
      rates: [{ use: 'foliar', max: '1 mL/L' }],
      maxApplicationsPerYear: 1,
      minDaysBetween: 7,
      modes: ['IRAC 3A'],
      doNotMixWith: ['p2'],
      reiHours: 48,
    }),
    product('p2', { reiHours: null, sprayPh: { min: 5, max: 7 } }),
    product('p3', { phiDays: 30 }, { shelfLife: {}, name: 'Winter oil' }),
    product('p4', {}, { name: 'Wettable sulfur' }),
  ],
  lots: [
    { id: 'l1', product: 'p1', pack: '1 qt', receivedOn: '2026-01-01', paid: null },
    { id: 'l2', product: 'p2', pack: '1 L', remaining: '5 mL', receivedOn: '2025-01-01', expiresOn: '2026-01-01' },
    { id: 'l3', product: 'p3', pack: '2 gal', receivedOn: '2026-01-01' },
  ],
  benches: [bench('b1', { customers: true }), bench('b2', { harvestOn: '2026-03-10' })],
  recipes: [
    recipe('r1', 'p1', 'p2', { product: 'p4', dose: '1 g/L' }),
    { ...recipe('r2', 'p3', 'p4'), useWithinHours: 1 },
  ],
  programs: [
    once('late', '2026-03-03', { startTime: '17:00' }),
    once('early', '2026-03-03', { startTime: '16:00', benches: ['b1', 'b2'] }),
    once('weekly', '2026-03-02', { repeat: 'FREQ=WEEKLY' }),
    once('long', '2026-03-04', { recipes: ['r2'], benches: ['b2'], minutes: 90 }),
  ],
  applications: [
    application('a1', '2026-02-24T18:00:00Z', '2026-02-24T18:30:00Z'),
    application('a2', '2026-03-01T18:00:00Z', '2026-03-01T18:30:00Z'),
  ],
};

test('every rule speaks up in a troubled shop, and none in an orderly one', () => {
  const spoken = new Set(planOf(troubled).flags.map(({ rule }) => rule));
  // How an amount is measured is a matter of the mix, which has a test of its own.
  expect(RULES.filter((rule) => !spoken.has(rule))).toEqual(['measured-roughly']);
  expect(planOf({ programs: [once('g1', '2026-03-03')] }).flags).toEqual([]);
});

test('flags come by date, then the gravest first, then by program and by rule', () => {
  const { flags } = planOf(troubled);
  const gravity = { stop: 0, warn: 1, note: 2 };
  const keys = flags.map(({ on, severity, program, rule }) =>
    [on, gravity[severity], program ?? '', String(RULES.indexOf(rule)).padStart(2, '0')].join(' '),
  );
  expect(keys).toEqual([...keys].sort());
  expect(flagsOf(planOf(troubled))).toEqual(flags);
});

test('a message is there however a flag is copied, is whole sentences, and never says safe', () => {
  const { flags } = planOf(troubled);
  const copies: typeof flags = JSON.parse(JSON.stringify(flags));
  expect(copies).toEqual(flags.map((flag) => ({ ...flag })));
  for (const { message } of copies) {
    expect(message).toMatch(/^[A-Z0-9].*\.$/);
    expect(message).not.toMatch(/safe|undefined|NaN|null/i);
  }
});

const DOSES = ['2 mL/L', '1 tsp/gal', '0.5 %', '8 fl oz/100 gal'];
const PACKS = ['1 qt', '2.5 gal', '10 mL', '0.5 L'];
const shops = DOSES.flatMap((dose) =>
  PACKS.map((pack) =>
    smallShop({
      settings: { openingHours: { wed: [['08:00', '18:00']] } },
      products: [product('p1', { rates: [{ use: 'x', min: '1 mL/gal', max: '1 fl oz/gal' }] })],
      lots: [{ id: 'l1', product: 'p1', pack, receivedOn: '2026-01-01', paid: '12.00' }],
      benches: [bench('b1', { customers: true })],
      recipes: [recipe('r1', { product: 'p1', dose })],
      programs: [once('g1', '2026-03-02', { repeat: 'FREQ=DAILY;INTERVAL=2', startTime: '17:30' })],
    }),
  ),
);

test('the units that pages are set to change no flag, whatever the shop', () => {
  const anyShop = fc.record({
    shop: fc.constantFrom(...shops),
    rei: fc.constantFrom(minutes(0), minutes(240), minutes(750), null),
    maxApplicationsPerYear: fc.constantFrom(null, 0, 1, 3),
    minDaysBetween: fc.constantFrom(null, 0, 7, 14),
    count: fc.integer({ min: 0, max: 3_000 }),
  });
  fc.assert(
    fc.property(anyShop, ({ shop, count, ...label }) => {
      for (const { label: its } of shop.products) Object.assign(its, label);
      for (const { plants } of shop.benches) for (const group of plants) group.count = count;
      // The sentences name amounts in the units of the pages; which flags there are must not depend on them.
      const flagsIn = (units: 'us' | 'metric') =>
        planAhead({ ...shop, units }, day('2026-03-02'), 1).flags.map(
          ({ severity, rule, on, program, benches, product }) => ({ severity, rule, on, program, benches, product }),
        );
      expect(flagsIn('us')).toEqual(flagsIn('metric'));
    }),
    { numRuns: 1_000 },
  );
});
