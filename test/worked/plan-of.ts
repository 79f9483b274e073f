import type { z } from 'zod';
import type { IngredientLine, Plan, ProductAhead, Spraying } from '@/lib/engine/ahead/plan';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { moneyText } from '@/shared/measure/money';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import { toNumber } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { readDay } from '@/shared/time/day';
import { instantText } from '@/shared/time/instant';

/*
 * Whole small shops, worked by hand: the file goes in as text, through the same door as any shop file, and what comes
 * out is written as the contract writes it (mL, g, money with six places), so that a figure can be compared with the
 * one beside its derivation.
 */

/** A shop file as somebody may write it, with whatever may be left out left out. */
export type Written = z.input<typeof ShopFile>;
type Parts = Partial<Omit<Written, 'format' | 'shop'>> & { shop?: Partial<Written['shop']> };

/** A shop with a 10 L sprayer, no loss, no measuring step, in a zone whose clock never changes. */
export const shopWith = ({ shop, ...parts }: Parts): Written => ({
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'Worked by hand', timeZone: 'Africa/Abidjan', currency: 'USD', fillCapacity: '10 L', ...shop },
  ...parts,
});

/** The plan of a written shop. Throws, with every fault, when the file is refused. */
export function planOf(file: unknown, today: string, weeks: number): Plan {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(`the worked shop was refused: ${JSON.stringify(parsed.faults)}`);
  const day = readDay(today);
  if (!day.ok) throw new Error(day.message);
  return planAhead(shopOfFile(parsed.file), day.value, weeks);
}

export const money = (amount: Micros | null): string | null => (amount === null ? null : moneyText(amount));

/** µL as mL, mg as g. */
export const units = (amount: Stock | null): number | null => (amount === null ? null : amount / 1000);

export const sprayingFigures = (plan: Plan) => plan.sprayings.map((spraying) => figuresOf(plan, spraying));

const figuresOf = ({ shop }: Plan, spraying: Spraying) => ({
  date: spraying.date,
  recipe: spraying.recipe.id,
  startsAt: instantText(spraying.startsAt, shop.zone),
  endsAt: instantText(spraying.endsAt, shop.zone),
  reopensAt: spraying.reopensAt === null ? null : instantText(spraying.reopensAt, shop.zone),
  fills: spraying.spray?.fills ?? null,
  fillMl: spraying.spray && toNumber(spraying.spray.fill),
  sprayMl: spraying.spray && toNumber(spraying.spray.total),
  plants: spraying.plants,
  lines: spraying.lines.map(lineFigures),
  materialCost: money(spraying.materialCost),
  labourCost: money(spraying.labourCost),
});

const lineFigures = ({ ingredient, amount, cost }: IngredientLine) => ({
  product: ingredient.product.id,
  amount: units(amount),
  cost: money(cost),
});

/** One product's figures. Throws when there is no such product. */
export function productFigures(plan: Plan, id: string) {
  const found = plan.products.find(({ product }) => product.id === id);
  if (!found) throw new Error(`no product ${id} in the plan`);
  return {
    onHand: units(found.onHand),
    usable: units(found.usable),
    runsOutOn: found.runsOutOn,
    orderBy: found.reorder?.by ?? null,
    weeksUntilReorder: found.reorder?.weeks ?? null,
    wasteCost: money(found.wasteCost),
    weeks: weekRows(found),
  };
}

/** The same with what is known and what is not of its need: since when, and the known part of each week. */
export function needFigures(plan: Plan, id: string) {
  const found = plan.products.find(({ product }) => product.id === id);
  return {
    ...productFigures(plan, id),
    unknownSince: found?.unknownSince ?? null,
    atLeast: found?.weeks.map(({ needAtLeast }) => units(needAtLeast)),
  };
}

/** Week by week: need, used, short, wasted, received, closing. */
const weekRows = ({ weeks }: ProductAhead) =>
  weeks.map(({ need, used, short, wasted, received, closing }) =>
    [need, used, short, wasted, received, closing].map(units),
  );

/** The flags of a plan as severity, rule and day. */
export const flagRows = (plan: Plan): string[] =>
  plan.flags.map(({ severity, rule, on }) => `${severity} ${rule} ${on}`);
