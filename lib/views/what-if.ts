import 'server-only';
import { type WhatIfFields, whatIfText } from '@/shared/forms/what-if';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import type { Plan } from '../engine/ahead/plan';
import { planDifferences } from '../engine/ahead/plan-differences';
import { isOtherwise } from '../engine/ahead/supposed';
import { type Change, type ProductOtherwise, type WhatIf, whatIf } from '../engine/ahead/what-if';
import { flagsOf } from '../engine/rules/all-rules';
import type { Flag } from '../engine/rules/flag';
import { supposedIn } from '../engine/working/what-if-figures';
import { aheadKept } from './ahead-kept';
import { type Fig, type FigAt, figuresOf } from './figures';

/** One sum, as it is planned and as it would be, and what that is more or less. */
export type SumOtherwise = { what: string; from: Fig; to: Fig; more: Fig; isMore: boolean };

/** When a product is ordered and runs out: whole weeks until then, below zero when it is late; null when there is no day. */
export type OrderWhen = { weeks: number | null; weeksUntilReorder: Fig; orderBy: Fig; runsOutOn: Fig };

/** One product that would be ordered, or run out, on another day. */
export type ProductSaid = { product: { id: string; name: string }; from: OrderWhen; to: OrderWhen };

/** What would be otherwise: the sums first, then product by product, late ones first; and what could not be read. */
export type WhatIfSaid = {
  /** Whether anything could be supposed at all. */
  isSupposed: boolean;
  weeks: number;
  sums: SumOtherwise[];
  products: ProductSaid[];
  /** How many of them would have to be ordered before, and how many after the day that is planned, or not at all. */
  sooner: number;
  later: number;
  /** What would stop a spraying more, or stop others because of it, and does not now. */
  stops: Flag[];
  faults: Fault[];
};

/** What supposing something does to cost, waste and order days. Nothing is changed by asking. Refuses 'not-found'. */
export async function whatIfAnswer(
  { shop: id, ...fields }: WhatIfFields & { shop: string },
  clock: Clock,
): Promise<Outcome<WhatIfSaid>> {
  const plan = await aheadKept(id, clock);
  if (!plan) return refuse({ code: 'not-found', what: 'shop', id });
  return accept(whatIfSaid(plan, figuresOf({ plan, benches: [], now: clock.now() }), fields));
}

/** The same for a plan that is there already. */
export function whatIfSaid(plan: Plan, figure: FigAt, fields: WhatIfFields): WhatIfSaid {
  const text = whatIfText(fields);
  const { supposed, faults, next } = supposedIn(plan, text);
  const otherwise = whatIf(plan, next);
  const of: Figs = {
    planned: figure,
    supposed: (...path) => figure('what-if', text, ...path),
    more: (...path) => figure('what-if', text, 'change', ...path),
  };
  const days = otherwise.products.map(({ orderBy }) => orderBy);
  return {
    isSupposed: isOtherwise(supposed),
    weeks: plan.weeks,
    sums: SUMS.flatMap((sum) => sumSaid(of, otherwise, sum)),
    products: otherwise.products.toSorted(byOrderDay).map((product) => productSaid(of, plan, next, product)),
    sooner: days.filter(isSooner).length,
    later: days.filter(({ from, to }) => isSooner({ from: to, to: from })).length,
    stops: supposed.extra ? newStops(plan, next) : [],
    faults,
  };
}

/** That a product is short is said by the day on which it runs out. */
const newStops = (plan: Plan, next: Plan): Flag[] =>
  planDifferences(plan, { ...next, flags: flagsOf(next) }).newFlags.filter(
    ({ severity, rule }) => severity === 'stop' && rule !== 'short',
  );

/** Finds a figure as it is planned, as it would be, and what that is more or less. */
type Figs = { planned: FigAt; supposed: FigAt; more: FigAt };

const SUMS = [
  { of: 'material', figure: 'materialCost', what: 'Product sprayed' },
  { of: 'toBuy', figure: 'toBuy', what: 'Of it, to buy' },
  { of: 'labour', figure: 'labourCost', what: 'Labour' },
  { of: 'waste', figure: 'wasteCost', what: 'Wasted' },
  { of: 'sprayings', figure: 'sprayings', what: 'Sprayings' },
  { of: 'unknownCosts', figure: 'unknownCosts', what: 'Of unknown cost' },
] as const;

function sumSaid(
  { planned, supposed, more }: Figs,
  otherwise: WhatIf,
  { of, figure, what }: (typeof SUMS)[number],
): SumOtherwise[] {
  const { from, to } = otherwise[of];
  if (from === to) return [];
  const path = ['totals', figure];
  return [{ what, from: planned(...path), to: supposed(...path), more: more(...path), isMore: to > from }];
}

function productSaid({ planned, supposed }: Figs, plan: Plan, next: Plan, { product }: ProductOtherwise): ProductSaid {
  const { id, name } = product;
  const when = ({ products }: Plan, figure: FigAt): OrderWhen => {
    const reorder = products.find((ahead) => ahead.product === product)?.reorder;
    return {
      weeks: reorder?.weeks ?? null,
      weeksUntilReorder: figure('product', id, 'weeksUntilReorder'),
      orderBy: figure('product', id, 'orderBy'),
      runsOutOn: figure('product', id, 'runsOutOn'),
    };
  };
  return { product: { id, name }, from: when(plan, planned), to: when(next, supposed) };
}

const NEVER = '9999-12-31';

const isSooner = ({ from, to }: Change<Day | null>): boolean => (to ?? NEVER) < (from ?? NEVER);

/** Late ones have the earliest day to order by, and so come first. */
function byOrderDay(a: ProductOtherwise, b: ProductOtherwise): number {
  const day = ({ orderBy, runsOutOn }: ProductOtherwise) => orderBy.to ?? runsOutOn.to ?? NEVER;
  return day(a).localeCompare(day(b)) || a.product.name.localeCompare(b.product.name);
}
