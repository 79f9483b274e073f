import 'server-only';
import { showMoney, showNumber, showVolume } from '@/shared/measure/show';
import { type Micros, sum } from '@/shared/quantity/amounts';
import { compare, divide, exact, toNumber, ZERO } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { showInstant, showUntil } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { type DrawnFrom, drawnFor } from '../data/record-draws';
import { plantsOn } from '../engine/bench/spray-volume';
import { account } from '../engine/ledger/account';
import { balance } from '../engine/ledger/balance';
import { type RecordFinding, recordFindings } from '../engine/rules/record-findings';
import type { Application, Shop } from '../engine/shop';
import { bottleName } from '../engine/working/line-figures';
import { figureAddress } from '../engine/working/shown';
import { benchStates, type Certainty, certaintyNow } from './bench-states';
import { lastingAddress } from './bottle-address';
import type { Fig } from './figures';
import { type HereNow, shopNow } from './house';
import { pouredText } from './mix-pours';
import { type PlannedCost, plannedCost } from './planned-cost';

/** What a finished mix came to. */
export type MixedScreen = Pick<HereNow, 'today' | 'ways'> & {
  application: string;
  recipe: { id: string; name: string };
  when: string;
  by: string | null;
  benches: { id: string; name: string; state: 'open' | 'closed' | 'unknown'; until: string | null }[];
  sprayed: string | null;
  leftover: string | null;
  pH: string | null;
  passed: { rule: string; reason: string }[];
  /** What the record says that ought not to have been. */
  findings: RecordFinding[];
  /** Whether its benches stay closed until somebody confirms it, because it came late. */
  isUnconfirmed: boolean;
  lines: { product: { id: string; name: string }; amount: string; costMicros: number | null }[];
  /** What it was to cost by line, as far as the books tell; null where they do not. */
  planned: PlannedCost | null;
  cost: { planned: number | null; actual: number | null; perLitre: string | null; perPlant: string | null };
  bottles: { label: string; href: string; left: Fig | null; leftText: string }[];
};

/** A record as whoever has just mixed wants to see it. Null when the shop that is looked at has no such record. */
export async function mixedScreen(clock: Clock, application: string): Promise<MixedScreen | null> {
  const here = await shopNow(clock);
  const record = here?.shop.applications.find(({ id }) => id === application);
  if (!here || !record) return null;
  const { shop, file, ways, today } = here;
  const [drawn, planned] = [await drawnFor(here.id, application), await plannedCost(here, record)];
  const noted = file.applications.find(({ id }) => id === application);
  const ended = record.endedAt === null ? '' : ` to ${showUntil(record.endedAt, shop.zone, today)}`;
  return {
    ...{ today, ways, application, recipe: { id: record.recipe.id, name: record.recipe.name } },
    when: `${showInstant(record.startedAt, shop.zone)}${ended}`,
    by: record.by,
    benches: benchesOf(here, record, await certaintyNow(clock, here.id)),
    sprayed: record.sprayed && showVolume(toNumber(record.sprayed) * 1000, ways.units),
    leftover: noted?.leftover ? `${noted.leftover}${noted.leftoverWent ? `: ${noted.leftoverWent}` : ''}` : null,
    pH: record.pH === null ? null : showNumber(record.pH),
    passed: noted?.passed ?? [],
    findings: recordFindings(shop, record),
    isUnconfirmed: record.closedUntil !== null,
    lines: [...linesOf(record, drawn), ...leftOutOf(record, planned)],
    planned,
    cost: costOf(record, noted?.plants ?? null, ways.currency),
    bottles: drawn.map((one) => bottleOf(one, shop)),
  };
}

function benchesOf({ shop, now, ways, today }: HereNow, record: Application, certainty: Certainty) {
  const states = benchStates(shop, now, certainty);
  return record.benches.map(({ id, name }) => {
    const standing = states.find(({ bench }) => bench.id === id);
    const until = standing?.until ?? null;
    const state = standing?.state ?? ('unknown' as const);
    return { id, name, state, until: until && showUntil(until, ways.zone, today) };
  });
}

/** What went in of each product, and what that cost as it was drawn. */
function linesOf({ id, recipe, amounts }: Application, drawn: readonly DrawnFrom[]): MixedScreen['lines'] {
  return recipe.ingredients.map(({ product }, at) => {
    const amount = amounts[at] ?? null;
    return {
      product: { id: product.id, name: product.name },
      amount: amount === null ? 'not noted' : pouredText(amount, product),
      costMicros: amount === null ? null : costDrawn(id, product.id, amount, drawn),
    };
  });
}

/** What was planned and did not go in. */
const leftOutOf = ({ recipe }: Application, planned: PlannedCost | null): MixedScreen['lines'] =>
  (planned?.lines ?? [])
    .filter(({ product }) => !recipe.ingredients.some((one) => one.product.id === product.id))
    .map(({ product }) => ({ product, amount: 'left out', costMicros: 0 }));

/** Null when a price is not known, and when some of it came from a bottle that is not in the books. */
function costDrawn(application: string, product: string, amount: number, drawn: readonly DrawnFrom[]): Micros | null {
  const costs: Micros[] = [];
  let open = amount;
  for (const { history } of drawn.filter((one) => one.product === product)) {
    if (history.paid === null) return null;
    const its = new Set(
      history.lines.flatMap((line) =>
        'movement' in line && line.applicationId === application ? line.movement.id : [],
      ),
    );
    const { carried } = account(history.paid, history.ledger.size, history.ledger.movements);
    for (const { movement, cost } of carried) {
      if (movement.kind !== 'drawn' || !its.has(movement.id)) continue;
      costs.push(cost);
      open -= movement.amount;
    }
  }
  return open > 0 ? null : sum(costs);
}

/**
 * How many plants were sprayed: all on the benches, or those that the record counts, such as "14 Basil on Herb trays".
 * Null where it says which plants, and not how many.
 */
export function plantsSprayed(benches: Application['benches'], said: string | null): number | null {
  if (said === null || said.trim() === '') return plantsOn(benches);
  const counts = said.split(/[,;]/).map((group) => /^\s*(\d{1,6})\s/.exec(group)?.[1]);
  return counts.every((count) => count !== undefined) ? counts.reduce((all, count) => all + Number(count), 0) : null;
}

function costOf(
  { sprayed, benches, plannedCost, cost }: Application,
  said: string | null,
  currency: string,
): MixedScreen['cost'] {
  const litres = sprayed && compare(sprayed, ZERO) > 0 ? divide(sprayed, exact(1000n)) : null;
  const plants = plantsSprayed(benches, said);
  const per = (of: ReturnType<typeof exact> | null) =>
    cost === null || !of ? null : showMoney(wholeNearest<Micros>(divide(exact(cost), of)), currency);
  return {
    ...{ planned: plannedCost, actual: cost, perLitre: per(litres) },
    perPlant: per(plants !== null && plants > 0 ? exact(plants) : null),
  };
}

/** A bottle with what remains in it, by the figure that its own page shows. */
function bottleOf({ lotId, place, product, history }: DrawnFrom, shop: Shop): MixedScreen['bottles'][number] {
  const { lot, place: name, ledger } = history;
  const container = shop.containers.find((one) => one.lot === lot && one.place === name);
  const its = shop.products.find(({ id }) => id === product);
  const left = balance(ledger.movements);
  return {
    label: container ? bottleName(container) : (its?.name ?? product),
    href: lastingAddress({ lotId, place }),
    leftText: pouredText(left, { form: ledger.form }),
    left: container
      ? {
          at: figureAddress('container', lot, name, 'remaining'),
          value: { kind: 'stock', amount: container.remaining, form: ledger.form },
        }
      : null,
  };
}
