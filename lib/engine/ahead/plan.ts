import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { Flag } from '../rules/flag';
import type { Container, Ingredient, Offer, Product, Program, Recipe, Shop } from '../shop';

/** What the shop will do in the days ahead, what it takes, and what goes wrong. */
export type Plan = {
  shop: Shop;
  today: Day;
  weeks: number;
  /** In the order they happen. */
  sprayings: Spraying[];
  /** One per product, in the shop's order. */
  products: ProductAhead[];
  totals: Totals;
  flags: Flag[];
};

/** A plan before any rule has looked at it. */
export type Projection = Omit<Plan, 'flags'>;

/** How much is sprayed on some benches, and how it is split over sprayer fills. mL, exact. */
export type Spray = { onPlants: Exact; fills: number; fill: Exact; total: Exact };

export type Spraying = {
  program: Program;
  recipe: Recipe;
  /** Which occurrence of its program this is, 0 for the first ever. */
  occurrence: number;
  date: Day;
  startsAt: Instant;
  endsAt: Instant;
  /** Null when the REI of something in the mix is unknown. */
  reopensAt: Instant | null;
  /** Null when the mL per plant of some plants is unknown. */
  spray: Spray | null;
  plants: number;
  lines: IngredientLine[];
  /** Null when the cost of any line is unknown. */
  materialCost: Micros | null;
  labourCost: Micros | null;
};

export type IngredientLine = {
  ingredient: Ingredient;
  /** µL of a liquid, mg of a powder; null when it cannot be worked out. */
  amount: Stock | null;
  /** Percent of what the dose takes, where somebody supposes another use. */
  supposedPercent?: number;
  draws: Draw[];
  /** The part of the amount that no usable container could give. */
  short: Stock;
  /** What the short part would cost to buy; null without an offer. Zero when nothing is short. */
  shortCost: Micros | null;
  cost: Micros | null;
};

/** Taken from one container, for one line. `before` and `after` count what has left that container, ever. */
export type Draw = { container: Container; amount: Stock; before: Stock; after: Stock; cost: Micros | null };

export type StockWeek = {
  /** The first day of these seven. */
  week: Day;
  opening: Stock;
  /** What the sprayings take; null as soon as one amount is unknown. */
  need: Stock | null;
  /** The part of the need that is known. `used`, `short`, `wasted` and `closing` are those of this part. */
  needAtLeast: Stock;
  used: Stock;
  short: Stock;
  wasted: Stock;
  received: Stock;
  closing: Stock;
};

/** What is left in a container the day after its last usable day. */
export type Waste = { container: Container; on: Day; amount: Stock; cost: Micros | null };

export type ProductAhead = {
  product: Product;
  onHand: Stock;
  usable: Stock;
  weeks: StockWeek[];
  wastes: Waste[];
  /** Null when the cost of any waste is unknown. */
  wasteCost: Micros | null;
  /** The first day with a shortage. With `unknownSince`, null means that nobody knows. */
  runsOutOn: Day | null;
  /** The day of the first spraying that takes an unknown amount; null when every amount is known. */
  unknownSince: Day | null;
  reorder: Reorder | null;
};

/** When to order, and on what grounds; null when nothing runs out, or no offer says how long it takes. */
export type Reorder = { by: Day; weeks: number; neededOn: Day; offer: Offer };

/** Sums of what is known, and beside each how many sprayings or wastes are not known and so not in it. */
export type Totals = {
  materialCost: Micros;
  labourCost: Micros;
  wasteCost: Micros;
  unknownCosts: number;
  unknownLabour: number;
  unknownWaste: number;
};
