import { describe, expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { replacementOf } from '@/lib/engine/ahead/replace-cost';
import { sprayPerPlantByLeaves } from '@/lib/engine/bench/spray-per-plant';
import { sprayFor } from '@/lib/engine/bench/spray-volume';
import { overBenches } from '@/lib/engine/budget/over-benches';
import { batchFor } from '@/lib/engine/mix/batch';
import { measurableBatch } from '@/lib/engine/mix/measurable-batch';
import { mixSheet } from '@/lib/engine/mix/mix-sheet';
import { orderSums } from '@/shared/measure/order-sums';
import { workMinutes } from '@/shared/mix/work-minutes';
import { micros } from '@/shared/quantity/amounts';
import { exact, toNumber } from '@/shared/quantity/exact';
import { shareOut } from '@/shared/quantity/rounding';
import { readInstant } from '@/shared/time/instant';
import { bench, day, once, planOf, recipe, smallShop } from '../lib/engine/rules/small-shop';
import { productFigures, shopWith, sprayingFigures, planOf as workedPlan } from '../worked/plan-of';

const _at = (text: string) => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

/*
 * Common practice, no source: formulas that the trade uses and nobody publishes a figure for, and what this program fixed
 * for itself. Each is held to arithmetic that anybody can follow on paper.
 */

describe('from bench to bottle', () => {
  const sprayer = (capacity: string, loss: string, step: string) =>
    ({ capacity: exact(capacity), lossPerFill: exact(loss), measuringStep: exact(step) }) as Parameters<
      typeof sprayFor
    >[1];
  const plants = (count: number, mlPerPlant: number, coverage = 1) => [
    { coverage, plants: [{ name: 'plants', pot: null, count, mlPerPlant }] },
  ];
  const figures = (spray: ReturnType<typeof sprayFor>) =>
    spray && [spray.fills, toNumber(spray.fill), toNumber(spray.total)];

  test('as few fills as possible, equal in size: 10 L in a sprayer of 8 L are two of 5 L', () => {
    expect(figures(sprayFor(plants(100, 100), sprayer('8000', '0', '0')))).toEqual([2, 5000, 10_000]);
  });
  test('each fill carries its loss, and what is lost is no room for spray', () => {
    expect(figures(sprayFor(plants(100, 100), sprayer('8000', '200', '0')))).toEqual([2, 5200, 10_400]);
    // 7.9 L reach the plants with one fill of 8 L only where nothing is lost.
    expect(figures(sprayFor(plants(79, 100), sprayer('8000', '200', '0')))).toEqual([2, 4150, 8300]);
  });
  test('a fill is measured up to a mark: 5.2 L to half litres are 5.5 L', () => {
    expect(figures(sprayFor(plants(100, 100), sprayer('8000', '200', '500')))).toEqual([2, 5500, 11_000]);
  });
  test('a coverage of 1.1 takes a tenth more', () => {
    expect(figures(sprayFor(plants(100, 100, 1.1), sprayer('20000', '0', '0')))).toEqual([1, 11_000, 11_000]);
  });
  test('leaves of 450 cm², both sides, at 100 mL on a square metre are 9 mL', () => {
    expect(sprayPerPlantByLeaves(450, 2, { mlPerSquareMetre: 100, source: 'made up' }).mlPerPlant).toBeCloseTo(9, 12);
  });
  test('an amount that cannot be measured takes a batch in which it can: 0.3 mL to marks of 1 mL', () => {
    const syringe = {
      name: 's',
      kind: 'volume' as const,
      holds: exact(10_000),
      step: exact(1000),
      holdsText: '10 mL',
      stepText: '1 mL',
    };
    const wanted = { amount: exact(300), product: { form: 'liquid' as const, gramsPerTeaspoon: null }, most: null };
    // 1 mL is 5 % more than 0.95238 mL, which is 0.3 mL of a batch 3.1746 times as large.
    expect(toNumber(measurableBatch(wanted, [syringe], exact(1000)) ?? exact(0n))).toBe(3175);
  });
});

describe('money', () => {
  const MADE = {
    lots: [{ id: 'l', product: 'p1', pack: '1 L', paid: '100.00', receivedOn: '2026-01-01' }],
    recipes: [recipe('r1', { product: 'p1', dose: '10 mL/L' })],
  };
  test('work is minutes ÷ 60 × wage: 45 minutes at 18.00 are 13.50', () => {
    const plan = workedPlan(
      shopWith({
        shop: { wagePerHour: '18.00' },
        products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid' }],
        benches: [{ id: 'b1', name: 'B', plants: [{ name: 'plant', count: 10, mlPerPlant: 10 }] }],
        recipes: [{ id: 'r1', name: 'R', ingredients: [{ product: 'p1', dose: '1 mL/L' }] }],
        programs: [
          { id: 'g', recipes: ['r1'], benches: ['b1'], startsOn: '2026-03-02', startTime: '10:00', minutes: 45 },
        ],
      }),
      '2026-03-02',
      1,
    );
    expect(sprayingFigures(plan).map(({ labourCost }) => labourCost)).toEqual(['13.500000']);
  });
  test('12 plants at a quarter of a minute and 20 minutes for the batch are 23 minutes', () => {
    expect(toNumber(workMinutes({ minutesPerPlant: 0.25, minutesPerBatch: 20 }, 12) ?? exact(0n))).toBe(23);
  });
  test('10 mL of a litre that cost 100.00 are 1.00: 1.00 for the litre mixed, 0.05 for each of 20 plants, and work apart', () => {
    const shop = smallShop({ ...MADE, settings: { wagePerHour: '18.00' } });
    const [first] = shop.recipes;
    const plants = [{ name: 'ferns', pot: null, count: 20, mlPerPlant: 50 }];
    const batch = batchFor({ kind: 'plants', plants, coverage: 1, area: null }, shop.sprayer);
    if (!first || !batch.ok) throw new Error('there is a mix');
    const { cost } = mixSheet(shop, first, batch.value, day('2026-03-02'), exact(23n));
    expect(cost).toEqual({ material: 1_000_000, perLitre: 1_000_000, perPlant: 50_000, labour: 6_900_000 });
    const ahead = planDocument(
      planAhead(
        smallShop({ ...MADE, benches: [bench('b1', { plants })], programs: [once('g1', '2026-03-02')] }),
        day('2026-03-02'),
        1,
      ),
    );
    expect(ahead.sprayings.map(({ costPerPlant, costPerLitre }) => [costPerPlant, costPerLitre])).toEqual([
      ['0.050000', '1.000000'],
    ]);
  });
  test('a price shared over equal bottles: the cents that are left go to the first', () => {
    expect(shareOut(micros(100), 3)).toEqual([34, 33, 33]);
  });
  test('an order is goods and freight, which is free from a value on', () => {
    const terms = { freightPerOrder: micros(12), freeFreightOver: micros(150), minimumOrder: null };
    const total = (price: number) => orderSums([{ count: 1, price: micros(price) }], terms, null).total;
    expect([149, 150, 151].map(total)).toEqual([161, 150, 151]);
  });
  test('a cost over benches goes by the spray they take: 10 plants at 30 mL and 20 at 10 mL are 3 to 2', () => {
    const { benches } = smallShop({
      benches: [
        bench('b1', { plants: [{ name: 'a', count: 10, mlPerPlant: 30 }] }),
        bench('b2', { plants: [{ name: 'b', count: 20, mlPerPlant: 10 }] }),
      ],
    });
    const piece = { benches, cost: micros(500) } as unknown as Parameters<typeof overBenches>[0];
    expect(overBenches(piece).map(({ cost }) => cost)).toEqual([300, 200]);
  });
  test('what stands on the shelf is replaced in whole packs: 600 mL in packs of 250 mL are three', () => {
    const shop = smallShop({
      suppliers: [{ id: 's', name: 'S', freightPerOrder: '0' }],
      offers: [{ id: 'o', supplier: 's', product: 'p1', pack: '250 mL', price: '10.00' }],
      lots: [{ id: 'l', product: 'p1', pack: '1 L', remaining: '600 mL', paid: '9.00', receivedOn: '2026-01-01' }],
    });
    const [line] = replacementOf(shop, planOf({}).today).lines;
    expect([line?.buy?.packs, line?.cost]).toEqual([3, 30_000_000]);
  });
});

describe('the shelf', () => {
  const walked = (lots: object[], repeat = 'FREQ=DAILY') =>
    workedPlan(
      shopWith({
        products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', shelfLife: { openedDays: 2 } }],
        lots: lots.map((lot, at) => ({
          id: `l${at}`,
          product: 'p1',
          pack: '100 mL',
          paid: '1.00',
          receivedOn: '2026-01-01',
          ...lot,
        })),
        benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 1, mlPerPlant: 1000 }] }],
        recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: '10 mL/L' }] }],
        programs: [
          { id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', repeat, startTime: '10:00', minutes: 1 },
        ],
      }),
      '2026-03-02',
      2,
    );
  const drawnOn = (lots: object[]) =>
    walked(lots, 'FREQ=DAILY;COUNT=1').sprayings.flatMap(({ lines }) =>
      lines.flatMap(({ draws }) => draws.map(({ container }) => container.lot)),
    );

  test('of bottles that die on the same day the open one goes first, then the one that came first', () => {
    const same = { expiresOn: '2026-03-03' };
    expect(drawnOn([same, { ...same, openedOn: '2026-03-01', receivedOn: '2026-02-01' }])).toEqual(['l1']);
    expect(drawnOn([{ ...same, receivedOn: '2026-02-01' }, same])).toEqual(['l1']);
  });
  test('a bottle that is opened on the way dies after its opened life, and is poured away the day after', () => {
    // Opened on Monday the 2nd, usable to Wednesday the 4th: 30 mL used, 70 poured away; then nothing is left.
    const plan = walked([{}]);
    expect(productFigures(plan, 'p1')).toMatchObject({
      runsOutOn: '2026-03-05',
      usable: 100,
      weeks: [
        [70, 30, 40, 70, 0, 0],
        [70, 0, 70, 0, 0, 0],
      ],
      wasteCost: '0.700000',
    });
    expect(plan.products[0]?.wastes.map(({ on }) => on)).toEqual(['2026-03-05']);
  });
  test('what is past its last day is on hand and not usable', () => {
    expect(productFigures(walked([{ expiresOn: '2026-03-01' }, { expiresOn: '2026-03-02' }]), 'p1')).toMatchObject({
      onHand: 200,
      usable: 100,
    });
  });
  test('what was drawn and what was poured away cost what was paid, to the micro', () => {
    // 8 µL of 32 mL for 0.01 are 2.5 micros, which are 3; so what is left is 9,997, and not the 9,997.5 that it comes to alone.
    const plan = workedPlan(
      shopWith({
        products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid' }],
        lots: [
          { id: 'l', product: 'p1', pack: '32 mL', paid: '0.01', receivedOn: '2026-01-01', expiresOn: '2026-03-02' },
        ],
        benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 1, mlPerPlant: 1000 }] }],
        recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: '0.008 mL/L' }] }],
        programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', startTime: '10:00', minutes: 1 }],
      }),
      '2026-03-02',
      1,
    );
    expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual(['0.000003']);
    expect(productFigures(plan, 'p1').wasteCost).toBe('0.009997');
  });
  test('a price counts from the day on which it holds, and one that is still to come does not', () => {
    const shortOn = (today: string) =>
      sprayingFigures(
        workedPlan(
          shopWith({
            suppliers: [{ id: 's', name: 'S' }],
            products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid' }],
            offers: [
              {
                ...{ id: 'o', supplier: 's', product: 'p1', pack: '1 L', price: '50.00', since: '2026-03-02' },
                earlier: [{ since: '2026-01-01', price: '40.00' }],
              },
            ],
            benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 4, mlPerPlant: 250 }] }],
            recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: '10 mL/L' }] }],
            programs: [
              { id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', startTime: '10:00', minutes: 1 },
            ],
          }),
          today,
          1,
        ),
      ).map(({ materialCost }) => materialCost);
    expect([shortOn('2026-03-01'), shortOn('2026-03-02')]).toEqual([['0.400000'], ['0.500000']]);
  });
  test('what is short is priced at the cheapest pack by what each mL of it costs', () => {
    const plan = workedPlan(
      shopWith({
        suppliers: [{ id: 's', name: 'S' }],
        products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid' }],
        offers: [
          { id: 'small', supplier: 's', product: 'p1', pack: '100 mL', price: '4.00' },
          { id: 'large', supplier: 's', product: 'p1', pack: '1 L', price: '25.00' },
        ],
        benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 4, mlPerPlant: 250 }] }],
        recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: '10 mL/L' }] }],
        programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', startTime: '10:00', minutes: 1 }],
      }),
      '2026-03-02',
      1,
    );
    expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual(['0.250000']);
  });
});
