import { readMoney } from '@/shared/measure/money';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import { compare, type Exact, exact, multiply } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { addMinutes, type Instant } from '@/shared/time/instant';
import type { RuleName } from '../rules/flag';
import type { Bench, Recipe, Shop } from '../shop';
import { asPoured, type Poured, type Pouring, pouredOf, sprayedBatch } from './as-poured';
import { mixFlags, type Passing, unpassed } from './mix-flags';

/** One mix as somebody says it was, from the first pour to the last plant. */
export type MixSent = {
  recipe: string;
  benches: string[];
  plants: string | null;
  startedAt: Instant;
  endedAt: Instant;
  /** When the first fill was mixed, from when on its use-within time counts; left out or null when nobody noted it. */
  mixedAt?: Instant | null;
  /** mL. */
  sprayed: Exact;
  by: string | null;
  poured: Pouring[];
  /** mL. */
  leftover: Exact | null;
  leftoverWent: string | null;
  /** How warm it was, °C; left out or null when nobody noted it. */
  temperatureC?: number | null;
  conditions: string | null;
  pH: number | null;
  /** Which of the products poured is the acid that brought the pH there. */
  acid: string | null;
  passed: Passing[];
  plannedCost: string | null;
};

/** A mix that holds together, with the amounts in µL and mg. */
export type Mixed = {
  recipe: Recipe;
  benches: Bench[];
  poured: Poured[];
  sprayed: Stock;
  leftover: Stock | null;
  acid: Poured | null;
  plannedCost: Micros | null;
  passed: Passing[];
};

/**
 * What was mixed, held against the shop: whether it can have been, and whether every rule that says stop to it was given
 * a reason.
 *
 * Takes    the shop as it stands, what was sent, and the moment it comes in
 * Refuses  'not-found' for the recipe or a bench; 'faults', all at once, each with its place in what was sent
 */
export function mixedAs(shop: Shop, sent: MixSent, now: Instant): Outcome<Mixed> {
  const recipe = shop.recipes.find(({ id }) => id === sent.recipe);
  if (!recipe) return refuse({ code: 'not-found', what: 'recipe', id: sent.recipe });
  const missing = sent.benches.find((id) => !shop.benches.some((bench) => bench.id === id));
  if (missing !== undefined) return refuse({ code: 'not-found', what: 'bench', id: missing });
  const benches = shop.benches.filter(({ id }) => sent.benches.includes(id));
  const { poured, faults } = pouredOf(shop, sent.poured);
  const acid = sent.acid === null ? null : (poured.find(({ product }) => product.id === sent.acid) ?? null);
  const wrong = [...faults, ...textFaults(sent), ...timeFaults(sent, now), ...amountFaults(sent, poured, acid)];
  if (wrong.length > 0) return refuse({ code: 'faults', faults: wrong });

  const stops = stopFaults(shop, recipe, benches, poured, sent);
  if (stops.length > 0) return refuse({ code: 'faults', faults: stops });
  const cost = sent.plannedCost === null ? null : readMoney(sent.plannedCost);
  return accept({
    ...{ recipe, benches, poured, acid },
    sprayed: microlitres(sent.sprayed),
    leftover: sent.leftover && microlitres(sent.leftover),
    plannedCost: cost?.ok ? cost.value : null,
    passed: sent.passed.filter(({ reason }) => reason.trim() !== ''),
  });
}

const microlitres = (ml: Exact): Stock => wholeNearest<Stock>(multiply(ml, exact(1000)));

/** What the contract of the shop file would refuse of the record that is to be written. */
function textFaults(sent: MixSent): Fault[] {
  const { record } = PIECES;
  const passed = sent.passed.filter(({ reason }) => reason.trim() !== '');
  return [
    ...heldTo(
      ['by', record.by, sent.by],
      ['plants', record.plants, sent.plants],
      ['conditions', record.conditions, sent.conditions],
      ['leftoverWent', record.leftoverWent, sent.leftoverWent],
      ['pH', record.pH, sent.pH],
      ['temperatureC', record.temperatureC, sent.temperatureC],
    ),
    ...heldTo(
      ['startedAt', PIECES.moment, sent.startedAt],
      ['endedAt', PIECES.moment, sent.endedAt],
      ['mixedAt', PIECES.moment, sent.mixedAt],
    ),
    ...passed.flatMap(({ rule, reason }) =>
      heldTo([`passed.${rule}`, PIECES.passed.rule, rule], [`passed.${rule}`, PIECES.passed.reason, reason]),
    ),
  ];
}

/** A phone's clock may be a little ahead of this one. */
export const AHEAD_MINUTES = 10;

function timeFaults({ startedAt, endedAt }: MixSent, now: Instant): Fault[] {
  const faults: Fault[] = [];
  if (endedAt < startedAt) {
    faults.push({ path: 'endedAt', message: 'The end is before the start. Put one of the two right.' });
  }
  if (startedAt > addMinutes(now, AHEAD_MINUTES)) {
    faults.push({ path: 'startedAt', message: 'That is still to come. Write when spraying began.' });
  } else if (endedAt > addMinutes(now, AHEAD_MINUTES)) {
    faults.push({ path: 'endedAt', message: 'That is still to come. Finish when the last plant was sprayed.' });
  }
  return faults;
}

function amountFaults(
  { sprayed, leftover, acid, plannedCost }: MixSent,
  poured: Poured[],
  found: Poured | null,
): Fault[] {
  const faults: Fault[] = [];
  if (leftover && compare(leftover, sprayed) > 0) {
    faults.push({ path: 'leftover', message: 'That is more than was mixed. Put one of the two right.' });
  }
  if (acid !== null && !found) {
    faults.push({ path: 'acid', message: `None of what was poured is "${acid}". Name the acid among it, or none.` });
  }
  const twice = poured.find(({ product }, at) => poured.findIndex((one) => one.product === product) !== at);
  if (twice) faults.push({ path: 'poured', message: `${twice.product.name} is in it twice. Put it in one line.` });
  const cost = plannedCost === null ? null : readMoney(plannedCost);
  if (cost && !cost.ok) faults.push({ path: 'plannedCost', message: cost.message });
  return faults;
}

/** What says stop before spraying, and can no longer: what was poured has been found somewhere. */
const PAST: ReadonlySet<RuleName> = new Set<RuleName>(['short']);

function stopFaults(shop: Shop, recipe: Recipe, benches: Bench[], poured: Poured[], sent: MixSent): Fault[] {
  const mixed = asPoured(recipe, poured, sent.sprayed);
  const flags = mixFlags(shop, mixed, sprayedBatch(benches, sent.sprayed), {
    startsAt: sent.startedAt,
    endsAt: sent.endedAt,
  });
  const open = unpassed(
    flags.filter(({ rule }) => !PAST.has(rule)),
    sent.passed,
  );
  return [...open].map(([rule, stops]) => ({
    path: `passed.${rule}`,
    message: `${stops[0]?.message ?? rule} Write why it was sprayed all the same; it goes into the record.`,
  }));
}
