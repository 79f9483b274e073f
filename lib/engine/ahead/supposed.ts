import { readWhatIf, type WhatIfAsked, type WhatIfFields } from '@/shared/forms/what-if';
import type { Fault } from '@/shared/outcome';
import { addDays, type Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Product, Program } from '../shop';
import type { Projection } from './plan';
import { horizonEnd } from './sprayings';

/** What somebody supposes beside what is planned. Percent of what it is now: 100 is as it is. */
export type Supposed = {
  /** Whose price and use are another; null: those of every product. */
  product: Product | null;
  pricePercent: number;
  usePercent: number;
  /** One spraying more, as a program does it, on a day. */
  extra: { program: Program; on: Day } | null;
  /** Seven days from this one on, in which nothing is sprayed. */
  lostFrom: Day | null;
  /** A further bench of a program: so many plants that take so much each. */
  bench: { program: Program; plants: number; mlPerPlant: number } | null;
};

/** Nothing but what is planned. */
export const NOTHING_SUPPOSED: Supposed = {
  product: null,
  pricePercent: 100,
  usePercent: 100,
  extra: null,
  lostFrom: null,
  bench: null,
};

/** Whether it is anything else than what is planned. Whose price and use are meant alone is not. */
export const isOtherwise = ({ product: _, ...supposed }: Supposed): boolean =>
  Object.entries(supposed).some(([part, value]) => value !== NOTHING_SUPPOSED[part as keyof Supposed]);

/**
 * What was typed, as this shop can suppose it. What the shop does not have any more, and a day that the weeks ahead do
 * not reach, is not supposed, and said.
 */
export function supposedOf(as: Projection, fields: WhatIfFields): { supposed: Supposed; faults: Fault[] } {
  const { asked, faults } = readWhatIf(fields);
  const missing = [...goneFrom(as, asked), ...outside(as, asked)];
  const isThere = (field: keyof WhatIfFields) => missing.every(({ path }) => path !== field);
  const program = (id: string) => as.shop.programs.find((one) => one.id === id);
  const [more, wider] = [asked.extra && program(asked.extra.program), asked.bench && program(asked.bench.program)];
  return {
    supposed: {
      product: as.shop.products.find(({ id }) => id === asked.product) ?? null,
      // A product that is gone must not become every product.
      pricePercent: isThere('product') ? asked.pricePercent : 100,
      usePercent: isThere('product') ? asked.usePercent : 100,
      extra: asked.extra && more && isThere('extraOn') ? { program: more, on: asked.extra.on } : null,
      lostFrom: isThere('lost') ? asked.lostFrom : null,
      bench: asked.bench && wider ? { ...asked.bench, program: wider } : null,
    },
    faults: [...faults, ...missing],
  };
}

const GONE = 'is no longer in the shop. Load the page anew to choose another.';

function goneFrom({ shop: { products, programs } }: Projection, { product, extra, bench }: WhatIfAsked): Fault[] {
  const isKnown = (id: string) => programs.some((program) => program.id === id);
  return [
    ...(product === null || products.some(({ id }) => id === product)
      ? []
      : [fault('product', `That product ${GONE}`)]),
    ...(extra === null || isKnown(extra.program) ? [] : [fault('extra', `What would be sprayed once more ${GONE}`)]),
    ...(bench === null || isKnown(bench.program) ? [] : [fault('bench', `What a further bench would get ${GONE}`)]),
  ];
}

/** A lost week may have begun before today, and then ends within it. */
function outside({ today, weeks }: Projection, { extra, lostFrom }: WhatIfAsked): Fault[] {
  const last = horizonEnd(today, weeks);
  const days = (from: Day) => `Give a day from ${showDay(from, today)} to ${showDay(last, today)}.`;
  const first = addDays(today, -6);
  return [
    ...(extra && (extra.on < today || extra.on > last) ? [fault('extraOn', days(today))] : []),
    ...(lostFrom && (lostFrom < first || lostFrom > last) ? [fault('lost', days(first))] : []),
  ];
}

const fault = (path: keyof WhatIfFields, message: string): Fault => ({ path, message });
