import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Plan } from '@/lib/engine/ahead/plan';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { runs } from '@/test/runs';

const TODAY = Day.parse('2026-03-02');
const RUNS = { numRuns: runs(250, 5_000) };

const DOSES = ['5 mL/gal', '1 1/2 tsp per gal', '8 fl oz/100 gal', '0.5 %', '2.5 mL/L', '6 drops/gal', '1.5 g/L'];
const RULES = ['FREQ=DAILY;INTERVAL=3', 'FREQ=WEEKLY;BYDAY=TU,SA', 'FREQ=MONTHLY;BYMONTHDAY=-1', null];

const someShop = fc.record({
  units: fc.constantFrom('us', 'metric'),
  loss: fc.constantFrom<string>('0 mL', '60 mL', '2 fl oz'),
  step: fc.constantFrom<string>('0 mL', '100 mL', '0.5 L'),
  wagePerHour: fc.constantFrom(null, '17.35'),
  plants: fc.array(
    fc.record({ count: fc.nat(300), ml: fc.option(fc.integer({ min: 10, max: 600 }), { freq: 12, nil: null }) }),
    {
      minLength: 1,
      maxLength: 3,
    },
  ),
  doses: fc.array(fc.constantFrom(...DOSES), { minLength: 1, maxLength: 4 }),
  lots: fc.array(
    fc.record({
      product: fc.nat(2),
      pack: fc.constantFrom('1 qt', '250 mL', '1 gal'),
      paid: fc.constantFrom(null, '19.99', '212.00'),
      count: fc.integer({ min: 1, max: 3 }),
      ageDays: fc.integer({ min: -20, max: 300 }),
    }),
    { maxLength: 5 },
  ),
  offers: fc.array(
    fc.record({ product: fc.nat(2), price: fc.constantFrom('30.00', '99.95'), leadDays: fc.constantFrom(null, 4) }),
    {
      maxLength: 3,
    },
  ),
  rules: fc.array(fc.constantFrom(...RULES), { minLength: 1, maxLength: 3 }),
});
type SomeShop = typeof someShop extends fc.Arbitrary<infer T> ? T : never;

function fileOf(shop: SomeShop, times = 1) {
  const id = (prefix: string) => (_: unknown, index: number) => `${prefix}${index}`;
  const receivedOn = (ageDays: number) => new Date(Date.UTC(2026, 2, 2 - ageDays)).toISOString().slice(0, 10);
  return {
    format: 'bench-and-bottle/shop@1',
    shop: {
      name: 'A shop',
      timeZone: 'America/New_York',
      currency: 'USD',
      units: shop.units,
      openingHours: { tue: [['09:00', '18:00']] },
      fillCapacity: '2 gal',
      lossPerFill: shop.loss,
      measuringStep: shop.step,
      wagePerHour: shop.wagePerHour,
    },
    suppliers: [{ id: 's', name: 'Supplier' }],
    products: [0, 1, 2].map((product) => ({
      id: `p${product}`,
      name: `Product ${product}`,
      kind: 'nutrient',
      form: 'liquid',
      densityGPerMl: product === 2 ? null : 1.2,
      label: { reiHours: product === 1 ? null : 4 },
      shelfLife: { unopenedDays: 200, openedDays: 20 },
    })),
    offers: shop.offers.map((offer, index) => ({
      id: id('o')(offer, index),
      supplier: 's',
      product: `p${offer.product}`,
      pack: '1 qt',
      price: offer.price,
      leadDays: offer.leadDays,
    })),
    lots: shop.lots.map((lot, index) => ({
      id: id('l')(lot, index),
      product: `p${lot.product}`,
      pack: lot.pack,
      paid: lot.paid,
      count: lot.count,
      receivedOn: receivedOn(lot.ageDays),
    })),
    benches: shop.plants.map(({ count, ml }, index) => ({
      id: id('b')(null, index),
      name: `Bench ${index}`,
      customers: index === 0,
      plants: [{ name: 'plants', count: count * times, mlPerPlant: ml === null ? null : ml / 10 }],
    })),
    recipes: [
      { id: 'r', name: 'Mix', ingredients: shop.doses.map((dose, index) => ({ product: `p${index % 3}`, dose })) },
    ],
    programs: shop.rules.map((repeat, index) => ({
      id: id('g')(repeat, index),
      recipes: ['r'],
      benches: shop.plants.map(id('b')),
      startsOn: '2026-02-24',
      repeat,
      startTime: `${10 + index}:30`,
      minutes: 40,
    })),
  };
}

function planOf(file: object) {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return planAhead(shopOfFile(parsed.file), TODAY, 6);
}

test('showing other units changes no figure and no flag', () => {
  fc.assert(
    fc.property(someShop, (shop) => {
      const [us, metric] = (['us', 'metric'] as const).map((units) => figuresOf(planOf(fileOf({ ...shop, units }))));
      expect(JSON.stringify(us)).toBe(JSON.stringify(metric));
    }),
    RUNS,
  );
});

/** All that is decided, without the sentences, which name amounts in the units of the shop. */
function figuresOf(plan: Plan) {
  const flags = plan.flags.map(({ severity, rule, on, program, product, benches }) => ({
    severity,
    rule,
    on,
    program,
    product,
    benches,
  }));
  return { ...planDocument({ ...plan, flags: [] }), flags };
}

test('the lines of a batch add up to it, the batches to the total, and nothing unknown counts as zero', () => {
  fc.assert(
    fc.property(someShop, (shop) => {
      const plan = planOf(fileOf(shop));
      let [material, unknown] = [0, 0];
      for (const { lines, materialCost, spray } of plan.sprayings) {
        const costs = lines.map(({ cost }) => cost);
        const isKnown = spray !== null && costs.every((cost) => cost !== null);
        expect(materialCost).toBe(isKnown ? costs.reduce((sum: number, cost) => sum + (cost ?? 0), 0) : null);
        material += materialCost ?? 0;
        unknown += materialCost === null ? 1 : 0;
      }
      expect(plan.totals).toMatchObject({ materialCost: material, unknownCosts: unknown });
    }),
    RUNS,
  );
});

test('every amount asked for is drawn or short, and never drawn from a bottle that is dead or not yet here', () => {
  fc.assert(
    fc.property(someShop, (shop) => {
      for (const { lines, date } of planOf(fileOf(shop)).sprayings) {
        for (const { amount, draws, short } of lines) {
          if (amount === null) continue;
          expect(draws.reduce((sum, draw) => sum + draw.amount, 0) + short).toBe(amount);
          for (const { container } of draws) expect(container.receivedOn <= date).toBe(true);
        }
      }
    }),
    RUNS,
  );
});

test('k times the plants take k times the amounts, before the sprayer rounds', () => {
  const exactly = someShop.map((shop) => ({
    ...shop,
    loss: '0 mL',
    step: '0 mL',
    doses: shop.doses.map(() => '2 mL/L'),
  }));
  fc.assert(
    fc.property(exactly, fc.integer({ min: 2, max: 9 }), (shop, k) => {
      const [one, many] = [planOf(fileOf(shop)), planOf(fileOf(shop, k))];
      for (const [index, spraying] of one.sprayings.entries()) {
        for (const [number, line] of spraying.lines.entries()) {
          const scaled = many.sprayings[index]?.lines[number]?.amount;
          if (line.amount === null) expect(scaled).toBeNull();
          else expect(Math.abs((scaled ?? 0) - k * line.amount)).toBeLessThanOrEqual(k / 2);
        }
      }
    }),
    RUNS,
  );
});

test('a program that ends at an instant sprays up to it, in the zone of the shop', () => {
  const shop = {
    units: 'us',
    loss: '0 mL',
    step: '0 mL',
    wagePerHour: null,
    plants: [{ count: 10, ml: 200 }],
    lots: [],
    offers: [],
  } as const;
  const rules = ['FREQ=DAILY;UNTIL=20260305T153000Z', 'FREQ=DAILY;UNTIL=20260305T152900Z'];
  const { sprayings } = planOf(
    fileOf({ ...shop, plants: [...shop.plants], lots: [], offers: [], doses: ['5 mL/L'], rules }),
  );
  const last = (program: string) => sprayings.filter((one) => one.program.id === program).at(-1)?.date;
  // The first begins at 10:30 in New York, which is 15:30 UTC; the second at 11:30.
  expect([last('g0'), last('g1')]).toEqual(['2026-03-05', '2026-03-04']);
});
