import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { planOf } from '@/lib/views/mix-doing';
import { mixAsked, mixSeen } from '@/lib/views/mix-screen';
import { MixPlan } from '@/shared/mix/mix-plan';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';

const today = Day.parse('2026-03-03');
const now = instantOf(Date.UTC(2026, 2, 3, 21));
const demo = demoShop(today);

/** The demo, and two recipes that pour citric acid of their own: one to be gone on with, one far beyond its target. */
const shop = shopOfFile({
  ...demo,
  recipes: [
    ...demo.recipes,
    ...['0.02 g/L', '1 g/L'].map((dose) => ({
      ...{ id: dose, name: dose, targetPh: 6.4, useWithinHours: null },
      ingredients: [{ product: 'citric-acid', dose, use: null, order: null }],
    })),
  ],
});
const here: Parameters<typeof planOf>[0] & { today: Day } = {
  id: 'demo',
  shop,
  now,
  today,
  certainty: { doubt: null, lag: null },
  ways: { units: shop.units, currency: shop.currency, zone: shop.zone, today },
};

/** A mix as its sheet and as somebody who follows it step by step sees it. */
function both(recipe: string, volume: string, within = here) {
  const mix = mixAsked(within, [
    ['recipe', recipe],
    ['volume', volume],
  ]);
  if (!mix.ok) throw new Error(mix.message);
  const spots = (lotId: string, place: number) => ({ lotId, place });
  return { sheet: mixSeen(within, mix.value, spots), plan: MixPlan.parse(planOf(within, mix.value, spots, 'Ada')) };
}

test('step by step the same is poured and the same acid added as the sheet says, of every recipe', () => {
  for (const { id } of shop.recipes) {
    for (const volume of ['200 mL', '1.5 gal']) {
      const { sheet, plan } = both(id, volume);
      const { chemistry } = sheet;
      const hasTarget = chemistry.pH.target !== null;
      expect(plan.acids.map(({ product, firstText }) => [product, firstText])).toEqual(
        chemistry.acids.map(({ product, firstText }) => [product.id, firstText]),
      );
      expect(plan.pH?.own ?? null).toBe(hasTarget ? (chemistry.own?.message ?? null) : null);
      expect(plan.pH?.message ?? null).toBe(hasTarget ? chemistry.pH.message : null);
      expect(chemistry.unknown.join(' ')).toContain(plan.pH?.unreckoned ?? '');
      for (const pour of plan.pours) {
        const step = sheet.steps.find(({ product }) => product.id === pour.product);
        const isFar = step?.measured?.isFarOff ?? false;
        expect(pour.farOff !== null).toBe(isFar);
        expect(pour.measuredText).toBe(isFar ? null : (step?.measured?.text ?? step?.perFillText ?? null));
        expect(pour.exactText).toBe(step?.perFillText ?? null);
      }
    }
  }
});

test('an amount that nothing comes near is planned exactly, with what is off about the nearest measure', () => {
  const [pour] = both('0.02 g/L', '1.5 gal').plan.pours;
  expect(pour).toMatchObject({
    ...{ perFill: 114, exactText: '0.114 g', measuredText: null, measuredWith: null },
    farOff: expect.stringMatching(
      /^Nothing here measures that\. The nearest, .+, is off by \+\d+ %: do not pour it\.$/,
    ),
  });
});

test('a recipe that pours its own acid is gone on with beside it, or told that no acid raises a pH', () => {
  const more = both('0.02 g/L', '1.5 gal').plan;
  expect(more).toMatchObject({ ownAcid: 'citric-acid', pH: { own: expect.stringContaining('takes more') } });
  expect(more.acids.length).toBeGreaterThan(1);
  const over = both('1 g/L', '1.5 gal').plan;
  expect(over).toMatchObject({
    ownAcid: 'citric-acid',
    acids: [],
    pH: { own: expect.stringContaining('cannot raise it') },
  });
});

test('two lines of one product are one pour, of which each amount is told even where nothing measures one of them', () => {
  const lines = ['1 g/L', '0.02 g/L'].map((dose) => ({ product: 'citric-acid', dose, use: null, order: null }));
  const twice = { id: 'twice', name: 'Twice', targetPh: null, useWithinHours: null, ingredients: lines };
  const plan = both('twice', '1.5 gal', {
    ...here,
    shop: shopOfFile({ ...demo, recipes: [...demo.recipes, twice] }),
  }).plan;
  const [alone] = both('0.02 g/L', '1.5 gal').plan.pours;
  const [of, ...more] = plan.pours;
  expect(more).toEqual([]);
  expect(of).toMatchObject({
    exactText: expect.stringMatching(/^5\.\d+ g and 0\.114 g$/),
    ...{ measuredText: null, measuredWith: null, farOff: alone?.farOff, coarse: alone?.coarse },
  });
});

test('what is left over goes to no bench that the board keeps people out of', () => {
  const offered = (within: typeof here) => both('calcium-feed', '1.5 gal', within).plan.leftover.map(({ id }) => id);
  const places = offered(here);
  expect(places).toContain('fern-wall');
  // It was to be sprayed an hour ago, and nobody has said what became of that.
  const [program] = demo.programs;
  if (!program) throw new Error('the demo has a program');
  const due = { ...program, id: 'due', benches: ['fern-wall'], startsOn: today, startTime: '15:00', repeat: null };
  const unrecorded = shopOfFile({ ...demo, programs: [...demo.programs, { ...due, changes: [] }] });
  expect(offered({ ...here, shop: unrecorded })).toEqual(places.filter((id) => id !== 'fern-wall'));
  expect(offered({ ...here, certainty: { doubt: 'clock', lag: null } })).toEqual([]);
});
