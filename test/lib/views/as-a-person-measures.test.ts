import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { planOf } from '@/lib/views/mix-doing';
import { mixAsked, mixSeen } from '@/lib/views/mix-screen';
import { MixPlan } from '@/shared/mix/mix-plan';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { runs } from '../../runs';

/*
 * Whatever a shop mixes and whatever tools it has: each amount on the sheet, on the screens and on paper can be measured
 * with those tools, or the first screen says that it cannot. The tools are read here from their words alone.
 */

const ML: Record<string, number> = { mL: 1, L: 1000, gal: 3785.411784, tsp: 4.92892159375, tbsp: 14.78676478125 };
const G: Record<string, number> = { g: 1, kg: 1000 };

type Tool = { name: string; holds: string; step: string };
const TOOLS: Tool[] = [
  { name: '1 mL syringe', holds: '1 mL', step: '0.01 mL' },
  { name: '10 mL syringe', holds: '10 mL', step: '0.5 mL' },
  { name: '60 mL syringe', holds: '60 mL', step: '1 mL' },
  { name: '100 mL cylinder', holds: '100 mL', step: '1 mL' },
  { name: 'teaspoon', holds: '1 tsp', step: '1/4 tsp' },
  { name: 'kitchen scale', holds: '2 kg', step: '1 g' },
  { name: 'fine scale', holds: '200 g', step: '0.1 g' },
];
const SPRAYERS = [
  { name: 'jug', capacity: '1 gal', measuringStep: '0.25 gal' },
  { name: 'tank', capacity: '8 L', measuringStep: '0.5 L' },
  { name: 'knapsack', capacity: '15 L', measuringStep: '1 L' },
];
const DOSES = {
  liquid: ['1 mL/L', '6 drops/gal', '1/4 tsp/gal', '2 tsp per gal', '0.5 %', '1 fl oz/gal', '0.02 mL/L', '12 mL/gal'],
  powder: ['1 g/L', '1 tsp/gal', '0.5 g/gal', '3 g/L', '0.01 g/L', '1 oz/100 gal'],
};

const anyMix = fc.record({
  tools: fc.subarray(TOOLS),
  sprayer: fc.constantFrom(...SPRAYERS),
  dropMl: fc.constantFrom(0.05, 0.04, 0.033),
  volume: fc.integer({ min: 3, max: 300 }).map((tenths) => `${tenths / 10} L`),
  isAcid: fc.boolean(),
  lines: fc.array(
    fc.oneof(
      fc.constantFrom(...DOSES.liquid).map((dose) => ({ form: 'liquid' as const, dose, grams: null })),
      fc.record({
        form: fc.constant('powder' as const),
        dose: fc.constantFrom(...DOSES.powder),
        grams: fc.constantFrom(null, 4.2),
      }),
    ),
    { minLength: 1, maxLength: 4 },
  ),
});
type AnyMix = typeof anyMix extends fc.Arbitrary<infer T> ? T : never;

const today = Day.parse('2026-03-03');
const now = instantOf(Date.UTC(2026, 2, 3, 21));

function seen({ tools, sprayer, dropMl, volume, isAcid, lines }: AnyMix) {
  const label = { rates: [], reiHours: 4 };
  const products = lines.map(({ form, grams }, at) => ({
    ...{ id: `p${at}`, name: `Product ${at}`, kind: 'insecticide', form, label, shelfLife: { unopenedDays: 3650 } },
    ...(grams === null ? {} : { gramsPerTeaspoon: grams }),
  }));
  const acid = {
    ...{ id: 'sour', name: 'Sour', kind: 'pH adjuster', form: 'liquid', densityGPerMl: 1.2, label },
    contents: [{ substance: 'citric acid', amount: 50, basis: '% w/v' }],
  };
  const parsed = parseShopFile(
    JSON.stringify({
      format: 'bench-and-bottle/shop@1',
      shop: {
        ...{ name: 'Any', timeZone: 'America/New_York', currency: 'USD', units: 'us', dropMl },
        ...{ measures: tools, sprayers: [sprayer], water: { alkalinityMgPerLCaCO3: 150, pH: 7.6 } },
      },
      products: [...products, acid],
      benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'ferns', count: 10, mlPerPlant: 20 }] }],
      recipes: [
        {
          ...{ id: 'r', name: 'Recipe', ...(isAcid && { targetPh: 6 }) },
          ingredients: lines.map(({ dose }, at) => ({ product: `p${at}`, dose })),
        },
      ],
    }),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const shop = shopOfFile(parsed.file);
  const ways = { units: shop.units, currency: shop.currency, zone: shop.zone, today };
  const here = { id: 'any', shop, now, today, ways, certainty: { doubt: null, lag: null } };
  const mix = mixAsked(here, [
    ['recipe', 'r'],
    ['volume', volume],
  ]);
  if (!mix.ok) return null;
  const spots = (lotId: string, place: number) => ({ lotId, place });
  return {
    plan: MixPlan.parse(planOf(here, mix.value, spots, 'Ada')),
    sheet: mixSeen(here, mix.value, spots),
    fill: mix.value.batch.spray.fill,
  };
}

/** "1 1/2 tsp" → [1.5, "tsp"]. */
function readText(text: string): [number, string] {
  const [, whole = '0', over = '0', under = '1', unit = ''] =
    /^(?:([\d.,]+)(?!\/)(?:\s+|$))?(?:(\d+)\/(\d+)\s+)?(.*)$/.exec(text) ?? [];
  return [Number(whole.replace(',', '')) + Number(over) / Number(under), unit.trim()];
}

/** An amount in mL or g; a spoon of a powder by what a level one of it weighs. */
function amountIn(text: string, grams: number | null): number {
  const [number, unit] = readText(text);
  const spoon = grams !== null && unit in ML ? grams / (ML.tsp ?? 1) : 1;
  return number * (ML[unit] ?? G[unit] ?? Number.NaN) * spoon;
}

const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-6;

/** What the words of a measuring come to, in mL or g, and by how much they may be misread; null when no tool here has such marks. */
function byTools(
  words: string,
  { tools, dropMl }: AnyMix,
  grams: number | null,
): { amount: number; off: number } | null {
  const drops = /^dropper, (\d+) drops?$/.exec(words);
  if (drops) return { amount: Number(drops[1]) * dropMl, off: 0 };
  for (const { name, holds, step } of tools) {
    const [, full = '', to = ''] =
      new RegExp(`^${name}, (?:(full|\\d+ full)(?: and 1 )?)?(?:,? ?to (.+))?$`).exec(words) ?? [];
    if (full === '' && to === '') continue;
    const count = full === 'full' ? 1 : Number.parseInt(full || '0', 10);
    const [most, least] = [amountIn(holds, grams), amountIn(step, grams)];
    const mark = to === '' ? 0 : amountIn(to, grams);
    if (!isWhole(mark / least) || mark >= most) return null;
    return { amount: count * most + mark, off: (least / 2) * (count + (mark > 0 ? 1 : 0)) };
  }
  return null;
}

const said = (text: string) => text.toLowerCase();

test('every amount of any mix can be measured with the tools of the shop, or the first screen says so', () => {
  let measuredOnes = 0;
  fc.assert(
    fc.property(anyMix, (mix) => {
      const shown = seen(mix);
      if (!shown) return;
      const { plan, sheet } = shown;
      for (const [at, pour] of plan.pours.entries()) {
        const line = mix.lines[at];
        const name = `Product ${pour.product.slice(1)}`;
        const its = mix.lines[Number(pour.product.slice(1))] ?? line;
        const step = sheet.steps.find(({ product }) => product.id === pour.product);
        const isAnnounced =
          pour.farOff !== null || pour.missing !== null || plan.warnings.some((text) => text.includes(name));
        // What stands on the sheet and on paper is what stands on the screen.
        if (pour.farOff === null) expect(step?.measured?.mark ?? null).toBe(pour.markText);
        expect(step?.measured?.isFarOff ?? false).toBe(pour.farOff !== null);
        if (isAnnounced) continue;
        const exactly = Number(/^[\d.,]+/.exec(pour.exactText ?? '')?.[0].replace(',', ''));
        const tool = byTools(pour.measuredWith ?? '', mix, its?.grams ?? null);
        expect(tool, `${pour.measuredWith} for ${pour.exactText}`).not.toBeNull();
        if (!tool) continue;
        measuredOnes += 1;
        // Texts have four digits.
        expect((Math.abs(tool.amount - exactly) + tool.off) / exactly).toBeLessThan(0.051);
        if (its?.dose.includes('drops')) expect(pour.markText).toMatch(/drops?$/);
        else expect(amountIn(pour.markText ?? '', its?.grams ?? null)).toBeCloseTo(tool.amount, 4);
      }
      const [acid] = plan.acids;
      if (acid?.firstWith) {
        const tool = byTools(acid.firstWith, mix, null);
        expect(amountIn(acid.firstText ?? '', null)).toBeCloseTo(tool?.amount ?? Number.NaN, 4);
      }
      // The jug is filled to a mark that is printed on it.
      const [step, holds] = [amountIn(mix.sprayer.measuringStep, null), amountIn(mix.sprayer.capacity, null)];
      const fill = amountIn(plan.fillText, null);
      expect(isWhole(fill / step) || Math.abs(fill - holds) < 1e-6, plan.fillText).toBe(true);
      expect(sheet.fillText).toBe(plan.fillText);
      expect(said(plan.fillText)).toContain(said(mix.sprayer.capacity.split(' ')[1] ?? ''));
    }),
    { numRuns: runs(60, 500) },
  );
  expect(measuredOnes).toBeGreaterThan(20);
});
