import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Plan } from '@/lib/engine/ahead/plan';
import { toNumber } from '@/shared/quantity/exact';
import { readInstant } from '@/shared/time/instant';
import { money, planOf, units } from './plan-of';

/*
 * Three whole shops with the plan that they must give, to every figure. Source: computed independently from the public
 * definitions, by another program in another language.
 */

type GivenSpraying = {
  program: string;
  recipe: string;
  date: string;
  startsAt: string;
  endsAt: string;
  reopensAt: string | null;
  sprayMl: number;
  fills: number;
  fillMl: number;
  plants: number;
  ingredients: { product: string; amount: number | null; cost: string | null }[];
  materialCost: number | null;
  costPerPlant: number | null;
  labourCost: number | null;
};

type GivenProduct = {
  onHand: number;
  usable: number;
  runsOutOn: string | null;
  orderBy: string | null;
  weeksUntilReorder: number | null;
  wasteCost: number | null;
  weeks: { need: number; used: number; short: number; wasted: number; closing: number }[];
};

type Given = {
  today: string;
  weeks: number;
  shop: unknown;
  plan: { sprayings: GivenSpraying[]; products: Record<string, GivenProduct> };
};

function given(name: string): { expected: Given['plan']; plan: Plan } {
  const file: Given = JSON.parse(readFileSync(new URL(`./given/${name}.json`, import.meta.url), 'utf8'));
  return { expected: file.plan, plan: planOf(file.shop, file.today, file.weeks) };
}

const NAMES = ['plan-one', 'plan-two', 'plan-three'];
const WHOLE = 1_000_000;

test.each(NAMES)('%s: every spraying, to every figure', (name) => {
  const { expected, plan } = given(name);
  const found = plan.sprayings.map((spraying) => ({
    program: spraying.program.id,
    recipe: spraying.recipe.id,
    date: spraying.date,
    startsAt: spraying.startsAt,
    endsAt: spraying.endsAt,
    reopensAt: spraying.reopensAt,
    sprayMl: spraying.spray && toNumber(spraying.spray.total),
    fills: spraying.spray?.fills ?? null,
    fillMl: spraying.spray && toNumber(spraying.spray.fill),
    plants: spraying.plants,
    ingredients: spraying.lines.map(({ ingredient, amount, cost }) => ({
      product: ingredient.product.id,
      amount: units(amount),
      cost: money(cost),
    })),
    materialCost: spraying.materialCost === null ? null : spraying.materialCost / WHOLE,
    labourCost: spraying.labourCost === null ? null : spraying.labourCost / WHOLE,
  }));
  expect(found).toEqual(
    expected.sprayings.map(({ costPerPlant: _, ...spraying }) => ({
      ...spraying,
      startsAt: moment(spraying.startsAt),
      endsAt: moment(spraying.endsAt),
      reopensAt: spraying.reopensAt === null ? null : moment(spraying.reopensAt),
    })),
  );
});

function moment(text: string): number {
  const instant = readInstant(text);
  if (!instant.ok) throw new Error(instant.message);
  return instant.value;
}

test.each(NAMES)('%s: the cost of a plant, to a billionth of it', (name) => {
  const { expected, plan } = given(name);
  plan.sprayings.forEach(({ materialCost, plants }, index) => {
    const cost = expected.sprayings[index]?.costPerPlant ?? null;
    if (cost === null || materialCost === null) expect(materialCost).toBe(cost);
    else expect(Math.abs(materialCost / WHOLE / plants - cost)).toBeLessThanOrEqual(1e-9 * cost);
  });
});

test.each(NAMES)('%s: every product, to every week', (name) => {
  const { expected, plan } = given(name);
  const found = plan.products.map((ahead): [string, GivenProduct] => [
    ahead.product.id,
    {
      onHand: ahead.onHand / 1000,
      usable: ahead.usable / 1000,
      runsOutOn: ahead.runsOutOn,
      orderBy: ahead.reorder?.by ?? null,
      weeksUntilReorder: ahead.reorder?.weeks ?? null,
      wasteCost: ahead.wasteCost === null ? null : ahead.wasteCost / WHOLE,
      // What was given says of a week with an unknown amount only the part that is known.
      weeks: ahead.weeks.map(({ needAtLeast, used, short, wasted, closing }) => ({
        need: needAtLeast / 1000,
        used: used / 1000,
        short: short / 1000,
        wasted: wasted / 1000,
        closing: closing / 1000,
      })),
    },
  ]);
  expect(Object.fromEntries(found)).toEqual(expected.products);
});
