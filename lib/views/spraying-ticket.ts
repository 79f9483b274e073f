import { divide, toNumber } from '@/shared/quantity/exact';
import type { Instant } from '@/shared/time/instant';
import type { Spraying } from '../engine/ahead/plan';
import type { Flag } from '../engine/rules/flag';
import type { Product } from '../engine/shop';
import { type Liquid, liquidOf } from './bottle-seen';
import type { Fig } from './figures';
import { gravestFirst } from './flags-by-gravity';
import type { House } from './house';
import { plannedQuery } from './planned-query';
import { type Reopening, reopeningOf } from './reopening-words';
import { sprayingFlags } from './spraying-flags';

/** One planned spraying as a page shows it. */
export type SprayingTicket = {
  /** Unique on a page, and fit for an anchor. */
  id: string;
  recipe: string;
  /** What stands after the question mark of its mix sheet. */
  query: string;
  benches: string[];
  startsAt: Instant;
  endsAt: Instant;
  /** The part of the sprayer that one fill takes, 0 to 1; 0 when it is not known. */
  level: number;
  liquid: Liquid;
  spray: Fig;
  fills: Fig | null;
  /** What one fill measures. */
  eachMl: number | null;
  plants: Fig;
  materialCost: Fig;
  labourCost: Fig;
  costPerPlant: Fig;
  reopensAt: Fig;
  reopening: Reopening;
  lines: TicketLine[];
  flags: Flag[];
};

type TicketLine = {
  product: Pick<Product, 'id' | 'name'>;
  dose: string;
  amount: Fig;
  cost: Fig;
  short: boolean;
};

/** One planned spraying with every figure of it, and what is flagged about it. */
export function sprayingTicket({ shop, plan, figure }: House, spraying: Spraying): SprayingTicket {
  const { program, recipe, date, spray, lines } = spraying;
  const its = (...path: (string | number)[]) => figure('spraying', program.id, date, ...path);
  return {
    id: ticketId(spraying),
    recipe: recipe.name,
    query: plannedQuery(spraying),
    benches: program.benches.map(({ name }) => name),
    startsAt: spraying.startsAt,
    endsAt: spraying.endsAt,
    level: spray ? toNumber(divide(spray.fill, (program.sprayer ?? shop.sprayer).capacity)) : 0,
    liquid: recipe.ingredients[0] ? liquidOf(recipe.ingredients[0].product) : 'other',
    spray: its('sprayMl'),
    fills: spray && its('fills'),
    eachMl: spray && toNumber(spray.fill),
    plants: its('plants'),
    materialCost: its('materialCost'),
    labourCost: its('labourCost'),
    costPerPlant: its('costPerPlant'),
    reopensAt: its('reopensAt'),
    reopening: reopeningOf(shop, spraying),
    lines: lines.map(({ ingredient, short }, number) => ({
      product: { id: ingredient.product.id, name: ingredient.product.name },
      dose: ingredient.dose.text,
      amount: its('line', number, 'amount'),
      cost: its('line', number, 'cost'),
      short: short > 0,
    })),
    flags: gravestFirst(sprayingFlags(plan, spraying)),
  };
}

/** Where a spraying stands on a page of its week. */
export const ticketId = ({ program, date }: Spraying): string =>
  `spraying-${program.id}-${date}`.replace(/[^\w-]/g, '_');
