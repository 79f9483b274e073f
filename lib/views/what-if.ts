import 'server-only';
import { readWhatIf, type WhatIfAsked, type WhatIfFields } from '@/shared/forms/what-if';
import { showMoney } from '@/shared/measure/show';
import { accept, type Fault, type Outcome } from '@/shared/outcome';
import type { Micros } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { shopMarks } from '../data/shop-marks';
import { shopFileOf } from '../data/snapshot';
import type { Projection } from '../engine/ahead/plan';
import { projectionOf } from '../engine/ahead/projection';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import { type Change, type WhatIf, whatIf } from '../engine/ahead/what-if';
import type { Shop } from '../engine/shop';
import { shopOfFile } from '../engine/shop-of-file';
import { askedShop } from './asked-shop';

/** What would be otherwise, in sentences: the sums first, then product by product. And what could not be read. */
export type WhatIfSaid = { sums: string[]; products: string[]; faults: Fault[] };

/** What supposing something does to cost, waste and order days. Nothing is changed by asking. Refuses 'not-found'. */
export async function whatIfAnswer(
  { shop: id, ...fields }: WhatIfFields & { shop: string },
  clock: Clock,
): Promise<Outcome<WhatIfSaid>> {
  const here = await askedShop(id);
  if (!here.ok) return here;
  return accept(whatIfSaid(await projectionNow(here.value.id, clock), fields));
}

/** The same for a projection that is there already. */
export function whatIfSaid(projection: Projection, fields: WhatIfFields): WhatIfSaid {
  const { asked, faults } = readWhatIf(fields);
  const { shop, today, weeks } = projection;
  const change = whatIf(projection, { ...asked, ...named(shop, asked) });
  return {
    sums: sumWords(change, shop.currency, weeks),
    products: change.products.map((one) => productWords(one, today)),
    faults,
  };
}

/** The things that are named by id. What the shop does not have any more is not supposed. */
function named(shop: Shop, { product, extra, bench }: WhatIfAsked) {
  const program = (id: string | undefined) => shop.programs.find((one) => one.id === id);
  const [more, wider] = [program(extra?.program), program(bench?.program)];
  return {
    product: shop.products.find(({ id }) => id === product) ?? null,
    extra: extra && more ? { program: more, on: extra.on } : null,
    bench: bench && wider ? { ...bench, program: wider } : null,
  };
}

/** The last projection that was asked for. A slider asks for the same one dozens of times. */
let kept: { of: string; projection: Projection } | null = null;

async function projectionNow(id: string, clock: Clock): Promise<Projection> {
  const { revision } = await shopMarks(id);
  const known = kept;
  if (known && known.of === `${id} ${revision} ${clock.today(known.projection.shop.zone)}`) return known.projection;
  const shop = shopOfFile(await shopFileOf(id));
  const today = clock.today(shop.zone);
  const projection = projectionOf(shop, today, WEEKS_AHEAD);
  kept = { of: `${id} ${revision} ${today}`, projection };
  return projection;
}

function sumWords(
  { material, toBuy, waste, sprayings, unknownCosts }: WhatIf,
  currency: string,
  weeks: number,
): string[] {
  const money = (what: string, { from, to }: Change<Micros>): string[] => {
    if (from === to) return [];
    const more = to > from ? `${showMoney(to - from, currency)} more` : `${showMoney(from - to, currency)} less`;
    return [`${what} ${showMoney(to, currency)} instead of ${showMoney(from, currency)}: ${more}.`];
  };
  const said = [
    ...(sprayings.from === sprayings.to ? [] : [`${sprayings.to} sprayings instead of ${sprayings.from}.`]),
    ...money(`Product for ${weeks} weeks costs`, material),
    ...money('Of it has to be bought', toBuy),
    ...money('Wasted is', waste),
    ...(unknownCosts.from === unknownCosts.to
      ? []
      : [`The cost of ${unknownCosts.to} sprayings is not known, instead of ${unknownCosts.from}.`]),
  ];
  return said.length > 0 ? said : ['Costs and waste stay as they are planned.'];
}

function productWords({ product, orderBy, runsOutOn }: WhatIf['products'][number], today: Day): string {
  const day = (on: Day) => `${showDay(on, today)}${on < today ? ', which is late' : ''}`;
  if (runsOutOn.to === null) return `${product.name} no longer runs out.`;
  const was = runsOutOn.from === null ? '' : ` instead of ${showDay(runsOutOn.from, today)}`;
  const runsOut = runsOutOn.from === runsOutOn.to ? '' : `runs out ${showDay(runsOutOn.to, today)}${was}`;
  const before = orderBy.from === null ? '' : ` instead of ${showDay(orderBy.from, today)}`;
  const order = orderBy.to === null || orderBy.from === orderBy.to ? '' : `order by ${day(orderBy.to)}${before}`;
  return `${product.name}: ${[order, runsOut].filter(Boolean).join('; ')}.`;
}
