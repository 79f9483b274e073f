import { type Micros, micros, plus, type Stock } from '@/shared/quantity/amounts';
import { ofEach } from '@/shared/quantity/rounding';
import { addDays, type Day } from '@/shared/time/day';
import type { Bench, Offer, Product, Program, Shop } from '../shop';
import type { IngredientLine, ProductAhead, Projection, Spraying } from './plan';
import { projectionWith } from './projection';
import { horizonEnd, newLine, sprayingsBetween } from './sprayings';
import type { Supposed } from './supposed';

/** What one thing comes to as it is, and as it would be. */
export type Change<T> = { from: T; to: T };

/** What would be otherwise. Costs are those of the whole horizon, as far as they are known; micros. */
export type WhatIf = {
  /** What is sprayed, at what it cost or would cost to buy. */
  material: Change<Micros>;
  /** The part of that which is not on the shelf, at the cheapest offers. */
  toBuy: Change<Micros>;
  waste: Change<Micros>;
  labour: Change<Micros>;
  unknownCosts: Change<number>;
  sprayings: Change<number>;
  /** The products that run out, or have to be ordered, on another day. */
  products: ProductOtherwise[];
};

export type ProductOtherwise = { product: Product; runsOutOn: Change<Day | null>; orderBy: Change<Day | null> };

/** What is otherwise in the weeks ahead as somebody supposes them than in the weeks ahead as they are planned. */
export function whatIf(as: Projection, next: Projection): WhatIf {
  const change = <T>(of: (projection: Projection) => T): Change<T> => ({ from: of(as), to: of(next) });
  return {
    material: change(({ totals }) => totals.materialCost),
    toBuy: change(toBuyOf),
    waste: change(({ totals }) => totals.wasteCost),
    labour: change(({ totals }) => totals.labourCost),
    unknownCosts: change(({ totals }) => totals.unknownCosts),
    sprayings: change(({ sprayings }) => sprayings.length),
    products: as.products.flatMap((ahead, number) => otherwise(ahead, next.products[number])),
  };
}

/** What all that is short would cost to buy, as far as it is known. */
function toBuyOf({ sprayings }: Projection): Micros {
  let sum = micros(0);
  for (const { lines } of sprayings) for (const { shortCost } of lines) sum = plus(sum, shortCost ?? micros(0));
  return sum;
}

function otherwise(ahead: ProductAhead, next: ProductAhead | undefined): WhatIf['products'] {
  if (!next) return [];
  const runsOutOn = { from: ahead.runsOutOn, to: next.runsOutOn };
  const orderBy = { from: ahead.reorder?.by ?? null, to: next.reorder?.by ?? null };
  const isAsKnown = (ahead.unknownSince === null) === (next.unknownSince === null);
  const isSame = isAsKnown && runsOutOn.from === runsOutOn.to && orderBy.from === orderBy.to;
  return isSame ? [] : [{ product: ahead.product, runsOutOn, orderBy }];
}

/**
 * The weeks ahead as somebody supposes them. Nothing is changed by asking.
 *
 * Takes    the projection as it is
 * Rounds   scaled prices and amounts once each, to the nearest whole
 */
export function supposedProjection(as: Projection, supposed: Supposed): Projection {
  const { shop, today, weeks } = as;
  const its = supposedShop(shop, supposed);
  const only = onlyProductOf(supposed);
  if (only) {
    const known = new Map(as.products.map((ahead) => [ahead.product, ahead]));
    known.delete(only);
    return projectionWith(
      its,
      as.sprayings.map((one) => afresh(one, only, supposed.usePercent)),
      today,
      weeks,
      known,
    );
  }
  const sprayings = sprayingsBetween(its, today, horizonEnd(today, weeks)).filter(
    ({ date }) => !isLost(date, supposed),
  );
  for (const { lines } of sprayings) {
    for (const line of lines) {
      const isMeant = supposed.product === null || line.ingredient.product === supposed.product;
      if (isMeant) takeOtherwise(line, supposed.usePercent);
    }
  }
  return projectionWith(its, sprayings, today, weeks);
}

/** The one product that anything is otherwise for; null where sprayings change, or every product does. */
const onlyProductOf = ({ product, extra, lostFrom, bench }: Supposed): Product | null =>
  extra === null && lostFrom === null && bench === null ? product : null;

/** A spraying as it was before anything was drawn of one product for it, with another use of that. */
const afresh = (spraying: Spraying, product: Product, usePercent: number): Spraying => ({
  ...spraying,
  lines: spraying.lines.map((known) => {
    if (known.ingredient.product !== product) return known;
    const line = newLine(known.ingredient, known.amount);
    takeOtherwise(line, usePercent);
    return line;
  }),
});

function takeOtherwise(line: IngredientLine, percent: number): void {
  if (percent === 100) return;
  line.supposedPercent = percent;
  if (line.amount !== null) line.amount = percentOf<Stock>(line.amount, percent);
}

const isLost = (date: Spraying['date'], { lostFrom }: Supposed): boolean =>
  lostFrom !== null && date >= lostFrom && date < addDays(lostFrom, 7);

const percentOf = <T extends number>(of: T, percent: number): T => ofEach<T, number>(of, percent, 100);

function supposedShop(shop: Shop, { product, pricePercent, extra, bench }: Supposed): Shop {
  const programs = shop.programs.map((program) => (bench && program === bench.program ? withBench(bench) : program));
  return {
    ...shop,
    programs: extra ? [...programs, onceMore(programs, extra)] : programs,
    offers:
      pricePercent === 100
        ? shop.offers
        : shop.offers.map((offer) => (product && offer.product !== product ? offer : atPrice(offer, pricePercent))),
  };
}

const atPrice = (offer: Offer, percent: number): Offer => ({
  ...offer,
  supposedPercent: percent,
  price: percentOf<Micros>(offer.price, percent),
  breaks: offer.breaks.map(({ atLeast, price }) => ({ atLeast, price: percentOf<Micros>(price, percent) })),
});

/** A bench whose plants and mL are known and whose ground is not. */
function withBench({ program, plants, mlPerPlant }: NonNullable<Supposed['bench']>): Program {
  const [like] = program.benches;
  if (!like) return program;
  const group = { name: 'plants', pot: null, count: plants, mlPerPlant };
  const bench: Bench = {
    ...like,
    id: `${like.id} supposed`,
    name: 'A bench more',
    area: null,
    coverage: 1,
    plants: [group],
  };
  return { ...program, benches: [...program.benches, bench] };
}

/** The spraying of a program on that day, with the first of its recipes. */
function onceMore(programs: readonly Program[], { program, on }: NonNullable<Supposed['extra']>): Program {
  const as = programs.find(({ id }) => id === program.id) ?? program;
  return { ...as, id: `${as.id} once more`, startsOn: on, endsOn: on, repeat: null, changes: [] };
}
