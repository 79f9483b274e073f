import { Each } from '@/shared/json/pieces';
import { moneyText } from '@/shared/measure/money';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import { compare, divide, type Exact, exact, toNumber, ZERO } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import { type Instant, instantText } from '@/shared/time/instant';
import type { Zone } from '@/shared/time/zone';
import { assumedIn, keepingAssumed } from '../buying/assumed';
import type { Flag } from '../rules/flag';
import type { Product } from '../shop';
import type { IngredientLine, Plan, ProductAhead, Spray, Spraying, Totals } from './plan';

export type PlanDocument = ReturnType<typeof planDocument>;

/**
 * A plan as the `shop` command and the HTTP API print it.
 *
 * Units   mL of a liquid and g of a powder as plain numbers, not rounded; money as decimal text with six places
 * Rounds  the cost per plant and per litre only, to six places, a half away from zero
 * Gives   null for whatever is unknown
 */
export const planDocument = (plan: Plan) => ({
  from: plan.today,
  weeks: plan.weeks,
  sprayings: plan.sprayings.map((spraying) => sprayingIn(spraying, plan.shop.zone)),
  products: plan.products.map(productIn),
  totals: totalsIn(plan.totals),
  flags: plan.flags.map(flagIn),
  assumed: assumedIn(keepingAssumed(plan.shop)),
});

/** How often a flag is said: on each of its days, or once with all of them. */
export type FlagsSaid = 'daily' | 'once';

/**
 * The same document to be written at once: each spraying, product and flag is made while it is written, so that a document
 * of 100 MB never stands in memory.
 */
export const planToWrite = (plan: Plan, flags: FlagsSaid) => ({
  from: plan.today,
  weeks: plan.weeks,
  sprayings: new Each(plan.sprayings, (spraying) => sprayingIn(spraying, plan.shop.zone)),
  products: new Each(plan.products, productIn),
  totals: totalsIn(plan.totals),
  flags: flags === 'once' ? flagsOnce(plan.flags) : new Each(plan.flags, flagIn),
  assumed: assumedIn(keepingAssumed(plan.shop)),
});

/**
 * Each flag once: the same rule, severity, program, benches and product on several days. Its message is that of the first
 * day, and `days` are all of them in their order.
 */
export function flagsOnce(flags: readonly Flag[]): (ReturnType<typeof flagIn> & { days: Day[] })[] {
  const byWhat = new Map<string, ReturnType<typeof flagIn> & { days: Day[] }>();
  for (const flag of flags) {
    const { severity, rule, program, benches, product, on } = flag;
    const what = JSON.stringify([severity, rule, program, benches, product]);
    const known = byWhat.get(what);
    if (!known) byWhat.set(what, { ...flagIn(flag), days: [on] });
    else if (known.days.at(-1) !== on) known.days.push(on);
  }
  return [...byWhat.values()];
}

const totalsIn = (totals: Totals) => ({
  materialCost: moneyText(totals.materialCost),
  labourCost: moneyText(totals.labourCost),
  wasteCost: moneyText(totals.wasteCost),
  unknownCosts: totals.unknownCosts,
  unknownLabour: totals.unknownLabour,
  unknownWaste: totals.unknownWaste,
});

/** A flag as every document prints it. */
export const flagIn = ({ severity, rule, on, program, benches, product, message }: Flag) => ({
  severity,
  rule,
  on,
  program,
  benches,
  product,
  message,
});

const sprayingIn = (spraying: Spraying, zone: Zone) => ({
  program: spraying.program.id,
  recipe: spraying.recipe.id,
  benches: spraying.program.benches.map(({ id }) => id),
  date: spraying.date,
  startsAt: instantText(spraying.startsAt, zone),
  endsAt: instantText(spraying.endsAt, zone),
  sprayMl: spraying.spray && toNumber(spraying.spray.total),
  plants: spraying.plants,
  fills: spraying.spray && fillsIn(spraying.spray),
  ingredients: spraying.lines.map(lineIn),
  materialCost: moneyOrNull(spraying.materialCost),
  labourCost: moneyOrNull(spraying.labourCost),
  costPerPlant: perUnit(spraying.materialCost, exact(BigInt(spraying.plants))),
  costPerLitre: perUnit(spraying.materialCost, spraying.spray && divide(spraying.spray.total, ML_PER_LITRE)),
  reopensAt: instantOrNull(spraying.reopensAt, zone),
});

const ML_PER_LITRE = exact(1_000n);

type Fills = { ml: number }[];

const fillsOf = new WeakMap<Spray, Fills>();

/** All fills are alike, and a program takes the same ones each time: they are one object in one list. */
function fillsIn(spray: Spray): Fills {
  const { fills, fill } = spray;
  const known = fillsOf.get(spray) ?? new Array<{ ml: number }>(fills).fill({ ml: toNumber(fill) });
  fillsOf.set(spray, known);
  return known;
}

const lineIn = ({ ingredient, amount, cost }: IngredientLine) => ({
  product: ingredient.product.id,
  amount: amount === null ? null : shown(amount),
  unit: unitOf(ingredient.product),
  cost: moneyOrNull(cost),
});

/** A cost spread over plants or litres. Null when the cost is unknown, or when there is nothing to spread it over. */
function perUnit(cost: Micros | null, over: Exact | null): string | null {
  if (cost === null || over === null || compare(over, ZERO) === 0) return null;
  return moneyText(wholeNearest<Micros>(divide(exact(BigInt(cost)), over)));
}

const productIn = ({ product, onHand, usable, weeks, runsOutOn, unknownSince, reorder, wasteCost }: ProductAhead) => ({
  product: product.id,
  unit: unitOf(product),
  onHand: shown(onHand),
  usable: shown(usable),
  weeks: weeks.map(({ week, need, needAtLeast, used, short, wasted, received, closing }) => ({
    week,
    need: need === null ? null : shown(need),
    needAtLeast: shown(needAtLeast),
    used: shown(used),
    short: shown(short),
    wasted: shown(wasted),
    received: shown(received),
    closing: shown(closing),
  })),
  runsOutOn,
  unknownSince,
  orderBy: reorder?.by ?? null,
  weeksUntilReorder: reorder?.weeks ?? null,
  wasteCost: moneyOrNull(wasteCost),
});

/** What the shelf counts in: a thousand of them make a mL or a g. */
const shown = (amount: Stock): number => amount / 1_000;

const unitOf = ({ form }: Product): 'mL' | 'g' => (form === 'liquid' ? 'mL' : 'g');

const moneyOrNull = (amount: Micros | null): string | null => (amount === null ? null : moneyText(amount));

const instantOrNull = (instant: Instant | null, zone: Zone): string | null =>
  instant === null ? null : instantText(instant, zone);
