import { expect, test } from 'vitest';
import { projectionOf } from '@/lib/engine/ahead/projection';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { candidatesFor, wantedIn } from '@/lib/engine/equivalents/candidate';
import { equivalentsOf, seasonCurve } from '@/lib/engine/equivalents/equivalents';
import { equivalentsAnswerOf } from '@/lib/engine/equivalents/equivalents-answer';
import { equivalentsDocument } from '@/lib/engine/equivalents/equivalents-document';
import { standInsFor, useUp } from '@/lib/engine/equivalents/stand-ins';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import type { Shop } from '@/lib/engine/shop';
import { highsSolver } from '@/lib/solver/highs';
import { EquivalentsAnswer } from '@/shared/api/buying-answers';
import { exact, toNumber } from '@/shared/quantity/exact';
import { Day, WEEKDAYS } from '@/shared/time/day';
import { planOf, shopWith } from '../../../worked/plan-of';

/*
 * Ten litres each Monday with 60 mg/L of an active: 12 mL/L of a half-percent ready-made, or 0.5 mL/L of a twelve-percent
 * concentrate. A third one's label stops below that dose, and nobody knows how strong a fourth is.
 */
const TODAY = Day.parse('2026-03-02');
const WHEN = { today: TODAY, weeks: 26 };
const solver = () => highsSolver({ secondsLeft: () => 60, told: () => {} });

const rates = (max: string) => ({ rates: [{ use: 'ornamentals', min: null, max }], reiHours: 4, modes: ['IRAC 5'] });
const active = (amount: number, basis = 'g/L' as const) => [{ substance: 'Spinosad', amount, basis }];

function shop(more: object = {}): Shop {
  const insecticide = { kind: 'insecticide' as const, form: 'liquid' as const, shelfLife: { openedDays: 365 } };
  return planOf(
    shopWith({
      suppliers: [{ id: 's', name: 'Seller', freightPerOrder: '10.00' }],
      products: [
        { ...insecticide, id: 'half', name: 'Half', contents: active(5), label: rates('20 mL/L') },
        {
          ...insecticide,
          id: 'twelve',
          name: 'Twelve',
          contents: active(120),
          label: { ...rates('1 mL/L'), reiHours: 12 },
        },
        { ...insecticide, id: 'weak', name: 'Weak', contents: active(10), label: rates('4 mL/L') },
        {
          ...{ ...insecticide, id: 'unknown', name: 'Unknown', label: rates('9 mL/L') },
          contents: [{ substance: 'spinosad', amount: 3, basis: '% w/w' as const }],
        },
        {
          ...{
            ...insecticide,
            id: 'both',
            name: 'Both',
            label: { ...rates('20 mL/L'), modes: ['irac5', 'IRAC 3a', 'NC'] },
          },
          contents: [...active(60), { substance: 'pyrethrins', amount: 10, basis: 'g/L' as const }],
        },
      ],
      offers: [
        { id: 'half-1', supplier: 's', product: 'half', pack: '1 L', price: '20.00' },
        { id: 'twelve-1', supplier: 's', product: 'twelve', pack: '1 L', price: '240.00' },
        { id: 'both-1', supplier: 's', product: 'both', pack: '100 mL', price: '50.00' },
      ],
      benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'plants', count: 100, mlPerPlant: 100 }] }],
      recipes: [{ id: 'r', name: 'Thrips', ingredients: [{ product: 'half', dose: '12 mL/L', use: 'ornamentals' }] }],
      programs: [
        {
          ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-09', startTime: '08:00', minutes: 10 },
          repeat: 'FREQ=WEEKLY;BYDAY=MO',
        },
      ],
      ...more,
    }),
    TODAY,
    26,
  ).shop;
}

const asked = (ours: Shop, id = 'half') => {
  const [recipe] = ours.recipes;
  const product = ours.products.find((one) => one.id === id);
  if (!recipe || !product) throw new Error('the shop has a recipe and the product');
  return { recipe, product };
};

test('everything with the substance, at the equal dose, allowed or not and why', async () => {
  const ours = shop();
  const found = equivalentsOf(ours, asked(ours), WHEN, await solver());
  if (!found) throw new Error('there is something to compare');
  const document = equivalentsDocument(found);
  expect(EquivalentsAnswer.parse(document)).toEqual(document);
  expect(document).toMatchObject({ substance: 'Spinosad', mgPerL: 60 });
  expect(document.candidates.map(({ product, dose, allowed }) => [product, dose, allowed])).toEqual([
    ['half', 12, true],
    ['twelve', 0.5, true],
    ['weak', 6, false],
    ['unknown', null, false],
    ['both', 1, true],
  ]);
  const [half, twelve, weak, unknown, both] = document.candidates;
  expect(weak?.reasons).toEqual([expect.stringMatching(/^Weak is dosed at 6 mL\/L; its label allows up to 4 mL\/L/)]);
  expect(unknown?.reasons).toEqual(['Enter the density of Unknown in g/mL, from its label.']);
  expect(both?.alsoBrings).toEqual(['pyrethrins 10 g/L', 'IRAC 3A']);
  expect(twelve?.alsoBrings).toEqual(['REI 12 h']);
  // 20 per L at 5 g/L; 240 per L at 120 g/L; 12 mL of a litre for 20, half a mL of a litre for 240.
  expect([half?.costPerGram, twelve?.costPerGram]).toEqual(['4.000000', '2.000000']);
  expect([half?.costPerLitre, twelve?.costPerLitre]).toEqual(['0.240000', '0.120000']);
  expect([weak?.seasonCost, unknown?.seasonCost]).toEqual([null, null]);
});

test('the season decides: whole packs, opened life and freight, not the price of a gram', async () => {
  const ours = shop();
  const found = equivalentsOf(ours, asked(ours), WHEN, await solver());
  const total = (id: string) => found?.candidates.find(({ product }) => product.id === id)?.season;
  // 25 sprayings of 120 mL are 3 L: three bottles, which may come in one order. Of the concentrate 125 mL are used.
  expect(total('half')?.packs.map(({ offer, count }) => [offer.id, count])).toEqual([['half-1', 3]]);
  expect(total('twelve')?.packs).toMatchObject([{ count: 1 }]);
  expect(found?.best?.product.id).toBe('half');
  const flip = found?.breakEven.flips.find(({ between: [a, b] }) => a.id === 'half' && b.id === 'twelve');
  expect(flip && toNumber(flip.seasonMl)).toBeGreaterThan(250_000);
});

test('a season costs what the purchase plan for it alone costs, from an empty shelf and without waiting', async () => {
  const waiting = { leadDays: 12, workingDays: ['tue' as const] };
  const ours = shop({
    shop: { safetyDays: 9, capitalPerYear: 0.4 },
    suppliers: [{ id: 's', name: 'Seller', freightPerOrder: '10.00', workingDays: waiting.workingDays }],
    offers: [{ id: 'half-1', supplier: 's', product: 'half', pack: '1 L', price: '20.00', leadDays: waiting.leadDays }],
    lots: [{ id: 'l', product: 'half', pack: '1 L', paid: '5.00', receivedOn: '2026-02-02' }],
  });
  const run = await solver();
  const season = equivalentsOf(ours, asked(ours), WHEN, run)?.candidates[0]?.season;
  const atOnce = shop({
    shop: { safetyDays: 0, capitalPerYear: 0.4 },
    suppliers: [{ id: 's', name: 'Seller', freightPerOrder: '10.00', workingDays: [...WEEKDAYS] }],
    offers: [{ id: 'half-1', supplier: 's', product: 'half', pack: '1 L', price: '20.00', leadDays: 0 }],
  });
  expect(season?.total).toBe(purchasePlanOf(atOnce, TODAY, 26, run).cost.total);
});

test('a break-even is where the order turns: before it one is cheaper, behind it the other', async () => {
  const ours = shop();
  const run = await solver();
  const found = equivalentsOf(ours, asked(ours), WHEN, run);
  const flip = found?.breakEven.flips.find(({ between: [, b] }) => b.id === 'twelve');
  const ingredients = ['half', 'twelve'].flatMap(
    (id) => found?.candidates.find(({ product }) => product.id === id)?.ingredient ?? [],
  );
  if (!found || !flip) throw new Error('the order turns somewhere');
  const curve = seasonCurve(found.season, ingredients, run, 8).map(({ sprayMl, seasons: [a, b] }) => ({
    isBefore: toNumber(sprayMl) < toNumber(flip.seasonMl),
    isCheaper: (a?.total ?? 0) < (b?.total ?? 0),
  }));
  expect(curve.filter(({ isBefore }) => isBefore).every(({ isCheaper }) => isCheaper)).toBe(true);
});

test.each([200, 500, 600, 800])(
  'what is priced when the time is over, after %i looks at it, turns no order',
  async (looks) => {
    const ours = shop();
    let looked = 0;
    const run = await highsSolver({ secondsLeft: () => (++looked > looks ? 0 : 60), told: () => {} });
    const found = equivalentsOf(ours, asked(ours), WHEN, run);
    if (!found) throw new Error('there is something to compare');
    for (const { before } of found.breakEven.flips) {
      const [best = 0, other = 0] = before.seasons.map((season) => season?.total);
      expect(best).toBeLessThanOrEqual(other);
    }
    expect(found.breakEven.isWhole).toBe(looked <= looks);
  },
);

test('what is priced when the time is over is no point of a curve', async () => {
  const ours = shop();
  const found = equivalentsOf(ours, asked(ours), WHEN, await solver());
  const ingredients = found?.candidates.flatMap(({ ingredient, season }) => (season ? (ingredient ?? []) : [])) ?? [];
  const over = await highsSolver({ secondsLeft: () => 0, told: () => {} });
  const points = found ? seasonCurve(found.season, ingredients, over, 2) : [];
  expect(points.flatMap(({ seasons }) => seasons)).toEqual(Array.from({ length: 4 * ingredients.length }, () => null));
});

test('what may not share the tank, or is in the recipe already, cannot stand in it', () => {
  const ours = shop({
    recipes: [
      {
        ...{ id: 'r', name: 'Two' },
        ingredients: [
          { product: 'half', dose: '12 mL/L', use: 'ornamentals' },
          { product: 'both', dose: '0.1 mL/L', use: 'ornamentals' },
        ],
      },
    ],
  });
  const { recipe, product } = asked(ours);
  const both = ours.products.find(({ id }) => id === 'both');
  both?.label.doNotMixWith.push('Twelve');
  const wanted = wantedIn(ours, recipe, product);
  const found = wanted && candidatesFor(ours, wanted);
  const reasons = (id: string) => found?.find((one) => one.product.id === id)?.reasons ?? [];
  expect(reasons('both')).toEqual(['Both is in this recipe already. Change its dose there instead.']);
  expect(reasons('twelve')).toEqual([expect.stringMatching(/says not to mix it with Twelve/)]);
});

test('a pesticide whose label rates nobody entered is not allowed; a feed is', () => {
  const ours = shop();
  const { recipe, product } = asked(ours);
  const twelve = ours.products.find(({ id }) => id === 'twelve');
  const wanted = wantedIn(ours, recipe, product);
  if (!twelve || !wanted) throw new Error('the shop has both');
  twelve.label.rates = [];
  const isAllowed = () => candidatesFor(ours, wanted).find((one) => one.product === twelve)?.allowed;
  expect(isAllowed()).toBe(false);
  twelve.kind = 'nutrient';
  expect(isAllowed()).toBe(true);
});

test('a bottle is told where it can stand in', () => {
  const ours = shop();
  const places = standInsFor(ours, asked(ours, 'twelve').product);
  expect(places).toMatchObject([
    { recipe: { id: 'r' }, candidate: { allowed: true, ingredient: { dose: { text: '0.5 mL/L' } } } },
  ]);
  expect(standInsFor(ours, asked(ours, 'half').product)).toEqual([]);
});

test('what dies unused is used up where it may stand in, and saves what it stands in for', () => {
  // 20 mL of the concentrate keep to a Sunday: three sprayings of 5 mL before it, each in place of 120 mL at 20 a litre.
  const ours = shop({
    lots: [
      { id: 'l', product: 'twelve', pack: '20 mL', paid: '5.00', receivedOn: '2026-02-02', expiresOn: '2026-03-29' },
    ],
  });
  const [first, ...rest] = useUp(projectionOf(ours, TODAY, 26));
  expect(first).toMatchObject({ amount: 15_000, spared: 360_000, saves: 3 * 2_400_000, recipe: { id: 'r' } });
  expect(first?.used).toHaveLength(3);
  expect(rest).toEqual([]);
});

test('a question about what is not there is refused in a sentence', async () => {
  const ours = shop();
  const run = await solver();
  const refusal = (recipe: string, product: string) => equivalentsAnswerOf(ours, { recipe, product }, WHEN, run);
  expect(refusal('none', 'half')).toMatchObject({ ok: false, refusal: { code: 'not-found', what: 'recipe' } });
  expect(refusal('r', 'none')).toMatchObject({ ok: false, refusal: { code: 'not-found', what: 'product' } });
  expect(refusal('r', 'weak')).toMatchObject({ ok: false, refusal: { code: 'faults' } });
});

test('a dose in ppm says what it brings, as the mix sheet does, whatever is unknown about the product', async () => {
  const ours = shop({
    recipes: [
      { id: 'r', name: 'Thrips', ingredients: [{ product: 'unknown', dose: '60 ppm spinosad', use: 'ornamentals' }] },
    ],
  });
  const found = equivalentsOf(ours, asked(ours, 'unknown'), WHEN, await solver());
  const document = found && equivalentsDocument(found);
  expect(document).toMatchObject({ mgPerL: 60 });
  // 60 mg/L of 5 g/L are 12 mL/L, and of 120 g/L half a mL.
  const doses = document?.candidates.map(({ product, dose }) => [product, dose]);
  expect(doses).toEqual([
    ['unknown', null],
    ['half', 12],
    ['twelve', 0.5],
    ['weak', 6],
    ['both', 1],
  ]);
  const mix = mixAnswerOf(ours, { recipe: 'r', ml: exact(1000n), area: null }, WHEN.today);
  expect(mix.ok && mix.value.strength).toMatchObject([{ mgPerL: 60 }]);
});
