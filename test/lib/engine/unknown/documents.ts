import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { equivalentsAnswerOf } from '@/lib/engine/equivalents/equivalents-answer';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { keepoutDocument } from '@/lib/engine/keepout/keepout-document';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { AT_ONCE } from '@/lib/solver/at-once';
import { exact } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { Instant } from '@/shared/time/instant';

/* Every document of a shop, taken apart into what it adds up and what it says is not known. */

const TODAY = Day.parse('2026-03-02');
const NOW = Instant.parse(Date.UTC(2026, 2, 2, 12));
const WEEKS = 6;

/**
 * What is not known: a place in the document, the ids that it is about, and the part of the document that it stands in
 * (a spraying, a product, the totals); null where it is said for all of it.
 */
export type Said = { key: string; about: string[]; part: string | null };

/** A document's sums by name, with the part each stands in, and what it says is not known. */
export type Told = { document: string; sums: Map<string, { value: number; part: string }>; said: Said[] };

const key = (...parts: (string | number | null)[]) => parts.join(' ');

/** Notes a sum that is known, or that it is not. */
function note(
  { document, sums, said }: Told,
  name: string,
  value: string | number | null,
  about: string[],
  part = document,
): void {
  if (value === null) said.push({ key: `${name} is null`, about, part });
  else sums.set(name, { value: Number(value), part });
}

/** A bottle whose last day is not known dies in no week, and the flag says so for all of the plan. */
const partOf = (rule: string): string | null => (rule === 'unknown-expiry' ? null : 'flags');

function planTold(file: ShopFile): Told {
  const told: Told = { document: 'plan', sums: new Map(), said: [] };
  const { totals, products, sprayings, flags, assumed } = planDocument(planAhead(shopOfFile(file), TODAY, WEEKS));
  for (const [name, value] of Object.entries(totals)) {
    if (typeof value === 'string') note(told, name, value, [], 'totals');
    // A count says something as often as it counts.
    else for (let one = 0; one < value; one++) told.said.push({ key: key(name, one), about: ['any'], part: 'totals' });
  }
  for (const { program, date, materialCost, labourCost, sprayMl, ingredients, costPerPlant } of sprayings) {
    const about = [program, ...ingredients.map(({ product }) => product)];
    const part = key('spraying', program, date);
    note(told, key('material', program, date), materialCost, about, part);
    note(told, key('plant', program, date), costPerPlant, about, part);
    note(told, key('labour', program, date), labourCost, [program, 'wage'], part);
    note(told, key('spray', program, date), sprayMl, [program], part);
    for (const [at, { product, amount, cost }] of ingredients.entries()) {
      note(told, key('amount', program, date, at), amount, [program, product], part);
      note(told, key('cost', program, date, at), cost, [program, product], part);
    }
  }
  for (const { product, weeks, wasteCost, unknownSince } of products) {
    if (unknownSince !== null) told.said.push({ key: key('since', product), about: [product], part: product });
    note(told, key('waste', product), wasteCost, [product], product);
    for (const { week, need, needAtLeast, used, short } of weeks) {
      const part = key(product, week);
      note(told, key('need', product, week), need, [product], part);
      note(told, key('needAtLeast', product, week), needAtLeast, [product], part);
      note(told, key('taken', product, week), used + short, [product], part);
    }
  }
  for (const { rule, on, program, product } of flags.filter(({ rule }) => rule.includes('unknown'))) {
    told.said.push({
      key: key('flag', rule, on, program, product),
      about: [product ?? 'any', program ?? 'any'],
      part: partOf(rule),
    });
  }
  told.said.push(...assumed.map(({ path }) => ({ key: path, about: [path], part: null })));
  return told;
}

function buyTold(file: ShopFile): Told {
  const told: Told = { document: 'buy', sums: new Map(), said: [] };
  const plan = buyDocument(purchasePlanOf(shopOfFile(file), TODAY, WEEKS, AT_ONCE));
  for (const [name, value] of Object.entries({ ...plan.cost, ...plan.habits })) {
    // What is left is taken off, and what dies is no sum of its own.
    if (name !== 'left' && name !== 'ofWhichWaste') note(told, name, value, []);
  }
  for (const id of plan.unknown) told.said.push({ key: key('unknown', id), about: [id], part: null });
  for (const { path } of plan.assumed) told.said.push({ key: path, about: [path], part: null });
  if (plan.unknown.length > 0 && plan.proven) throw new Error('proven, with a need that nobody knows');
  return told;
}

function mixTold(file: ShopFile): Told {
  const told: Told = { document: 'mix', sums: new Map(), said: [] };
  const mix = mixAnswerOf(shopOfFile(file), { recipe: 'r0', ml: exact(5_000n), area: null }, TODAY);
  if (!mix.ok) return told;
  const { cost, steps, strength, elements, flags, assumed } = mix.value;
  told.said.push(...assumed.map(({ path }) => ({ key: path, about: [path], part: null })));
  note(told, 'cost', cost, ['any']);
  for (const { product, amount } of steps) note(told, key('amount', product), amount, [product]);
  for (const { substance, mgPerL } of strength) note(told, key('strength', substance), mgPerL, ['any']);
  for (const { element, mgPerL } of elements) note(told, key('element', element), mgPerL, ['any']);
  for (const { rule, product } of flags.filter((flag) => flag.rule.includes('unknown')))
    told.said.push({ key: key('flag', rule, product), about: [product ?? 'any'], part: 'flags' });
  return told;
}

function equivalentsTold(file: ShopFile): Told {
  const told: Told = { document: 'equivalents', sums: new Map(), said: [] };
  const product = file.recipes[0]?.ingredients[0]?.product ?? '';
  const asked = { recipe: 'r0', product };
  const found = equivalentsAnswerOf(shopOfFile(file), asked, { today: TODAY, weeks: WEEKS }, AT_ONCE);
  if (!found.ok) {
    told.said.push({ key: 'refused', about: ['any'], part: null });
    return told;
  }
  const { substance, mgPerL, candidates, assumed } = found.value;
  note(told, key('mgPerL', substance), mgPerL, [product]);
  for (const one of candidates) {
    note(told, key('gram', one.product, substance), one.costPerGram, [one.product, product]);
    note(told, key('season', one.product, substance), one.seasonCost, ['any']);
  }
  told.said.push(...assumed.map(({ path }) => ({ key: path, about: [path], part: null })));
  return told;
}

function keepoutTold(file: ShopFile): Told {
  const told: Told = { document: 'keepout', sums: new Map(), said: [] };
  const shop = shopOfFile(file);
  for (const { bench, state, until } of keepoutDocument(NOW, keepOut(shop, NOW), shop.zone).benches) {
    if (state === 'unknown') told.said.push({ key: key('keep out', bench), about: [bench], part: bench });
    else note(told, key('shut', bench), until === null ? 0 : Date.parse(until), [bench], bench);
  }
  return told;
}

export const EVERY_DOCUMENT = [planTold, buyTold, mixTold, equivalentsTold, keepoutTold];
