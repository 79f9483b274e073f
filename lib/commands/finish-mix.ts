import 'server-only';
import type { Clock } from '@/lib/clock';
import { doneChange } from '@/lib/data/done-change';
import { newCommandId, newId } from '@/lib/data/new-id';
import { drawsOf, writeDraws } from '@/lib/data/poured-rows';
import { recordChanges } from '@/lib/data/save-changes';
import { newestVersions } from '@/lib/data/save-recipes';
import { type ApplicationRecord, NO_DETAILS, saveRecords } from '@/lib/data/save-records';
import { seeClock } from '@/lib/data/see-clock';
import { applicationCount } from '@/lib/data/shop-facts';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { takeTelling } from '@/lib/data/take-telling';
import { write } from '@/lib/data/writer';
import { plainStock } from '@/lib/engine/exchange/plain-text';
import { counts } from '@/lib/engine/keepout/counting';
import { longestRei, longestReiOf } from '@/lib/engine/keepout/reopening';
import { AHEAD_MINUTES, type Mixed, type MixSent, mixedAs } from '@/lib/engine/mix/mixed-as';
import { leftOfDone, plannedTurn } from '@/lib/engine/mix/planned-turn';
import { asItIs } from '@/lib/engine/mix/sprayed-product';
import { apartFrom, keptAsTold } from '@/lib/engine/record/as-told';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import { treatedPlace, treatedPlants } from '@/lib/engine/record/treated';
import { wasSprayed } from '@/lib/engine/record/was-sprayed';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, type Refusal, refuse } from '@/shared/outcome';
import type { Micros, Minutes } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import { addMinutes, type Instant, laterOf } from '@/shared/time/instant';

export type FinishMix = MixSent & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** The planned spraying that this was, by the day on which its program has it. */
  planned: { program: string; on: Day } | null;
};

/** What a finished mix came to: its record, and what the products in it cost as they were drawn; null when not known. */
export type Finished = { application: string; cost: Micros | null };

/**
 * Finish a mix: draw stock from the bottles that were really used, write the record, close the benches and mark the
 * planned spraying as done, all in one step or not at all. A record that comes so late that its interval is over already
 * opens no bench that people are kept out of: its benches stay closed for the interval from now on, until it is confirmed.
 *
 * Refuses  'already-done' when that planned spraying has a record; 'faults' for what cannot have been, and for each rule
 *          that said stop and was given no reason; 'not-enough-stock' when a bottle cannot have held what came out of it;
 *          'not-found'
 */
export async function finishMix(sent: FinishMix, clock: Clock): Promise<Outcome<Finished>> {
  const outcome = await writeMix(sent, clock);
  if (!outcome.ok && wasSprayed(outcome.refusal)) await takeTelling(asUnderWay(sent), clock.now());
  return outcome;
}

const asUnderWay = ({ commandId, shopId, actor, recipe, benches, planned, by, passed, ...sent }: FinishMix) => ({
  ...{ commandId: newCommandId(), shopId, actor, spraying: commandId, recipe, benches, planned, by },
  ...{ startedAt: sent.startedAt, endedAt: sent.endedAt, passed },
});

async function writeMix(sent: FinishMix, clock: Clock): Promise<Outcome<Finished>> {
  const { commandId, shopId, actor, ...body } = sent;
  const command = { id: commandId, name: 'finishMix', shopId, body: sayable(body), spokenAt: sent.startedAt, actor };
  await seeClock(clock.reading());
  const now = clock.now();
  const input = { ...sent, startedAt: begun(sent.startedAt, now) };
  return write<Finished>(command, now, async (rows, stamp) => {
    const file = await shopInWrite(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const shop = shopOfFile(file);
    const standing = plannedFault(file, shop, input);
    if (standing) return refuse(standing);
    // What was told of this spraying before its record is no spraying beside it.
    const { told, beside } = apartFrom(shop, commandId);
    const mixed = mixedAs(beside, input, now);
    if (!mixed.ok) return mixed;
    const draws = await drawsOf(rows, shopId, shop.zone, mixed.value.poured, input.startedAt);
    if (!draws.ok) return draws;

    const id = told ? commandId : newId();
    const { cost } = draws.value;
    const recipeNumber = (await newestVersions(rows, shopId)).get(input.recipe) ?? 0;
    const position = await applicationCount(rows, shopId);
    const rei = reiOf(mixed.value);
    const late = { benches: input.benches, endedAt: input.endedAt, rei };
    const closedUntil = laterOf(closedAfterLateEntry(shop, late, now), keptAsTold(told, { ...late, now }));
    const by = input.by ?? stamp.actor;
    const record = recordOf(mixed.value, input, { cost, by, address: shop.address, closedUntil });
    await saveRecords(rows, stamp, [{ ...record, id, position, recipeNumber }]);
    await writeDraws(rows, stamp, draws.value, id);
    if (input.planned) await recordChanges(rows, stamp, [doneChange(file, input.planned, id)]);
    return accept({ application: id, cost });
  });
}

/** A clock that runs ahead on a phone must not leave a sprayed bench open until this one has caught up. */
function begun(startedAt: Instant, now: Instant): Instant {
  return startedAt > now && startedAt <= addMinutes(now, AHEAD_MINUTES) ? now : startedAt;
}

/** The same with fractions as text, so that it can be told from another. */
const sayable = (body: unknown): unknown =>
  JSON.parse(JSON.stringify(body, (_, value) => (typeof value === 'bigint' ? `${value}` : value)));

/**
 * Why a planned spraying cannot be finished: there is none, or it is on record for these benches. One that was skipped can
 * be done after all.
 */
function plannedFault(file: ShopFile, shop: Shop, { planned, benches }: FinishMix): Refusal | null {
  if (!planned) return null;
  const program = file.programs.find(({ id }) => id === planned.program);
  if (!program) return { code: 'not-found', what: 'program', id: planned.program };
  const change = program.changes.find(({ on }) => on === planned.on);
  const record = file.applications.find(({ id }) => id === change?.application);
  // What was done by a record entered in error is still to be done.
  if (change?.kind !== 'done' || (record && !counts(record))) return null;
  const turn = plannedTurn(shop, planned.program, planned.on);
  const isLeft = turn.ok && leftOfDone(shop, turn.value).some(({ id }) => benches.includes(id));
  return isLeft ? null : { code: 'already-done', on: planned.on };
}

/** What is sprayed is mixed by then; where nobody noted when, it counts from the start. */
const mixedBy = ({ mixedAt, startedAt }: FinishMix): Instant => (mixedAt && mixedAt < startedAt ? mixedAt : startedAt);

type Known = { cost: Micros | null; by: string; address: string | null; closedUntil: Instant | null };

/** The longest interval of what went in; of plain water, of what the recipe has. */
const reiOf = ({ recipe, poured }: Mixed): Minutes | null =>
  poured.length === 0 ? longestRei(recipe) : longestReiOf(poured.map(({ product }) => product));

function recordOf(
  mixed: Mixed,
  sent: FinishMix,
  { cost, by, address, closedUntil }: Known,
): Omit<ApplicationRecord, 'id' | 'position' | 'recipeNumber'> {
  const { recipe, benches, poured, acid } = mixed;
  return {
    ...{ number: 1, reason: null, recipe: recipe.id, benches: benches.map(({ id }) => id) },
    ...{ startedAt: sent.startedAt, endedAt: sent.endedAt },
    products: poured.map(({ product, total }) => {
      const planned = recipe.ingredients.find((one) => one.product === product);
      const dose = planned?.dose.text ?? `${plainStock(total, product.form)}/${plainStock(mixed.sprayed, 'liquid')}`;
      return { product: product.id, dose, amount: total, reiMinutes: longestReiOf([product]), ...asItIs(product) };
    }),
    details: {
      ...NO_DETAILS,
      ...{ by, cost, closedUntil, plannedCost: mixed.plannedCost, sprayed: mixed.sprayed, leftover: mixed.leftover },
      ...{ leftoverWent: sent.leftoverWent, conditions: sent.conditions, temperatureC: sent.temperatureC ?? null },
      ...{ plants: sent.plants, pH: sent.pH },
      acid: acid && { product: acid.product.id, amount: acid.total },
      passed: mixed.passed,
      extra: sent.planned === null,
      mixedAt: mixedBy(sent),
      crop: treatedPlants(benches, sent.plants),
      location: treatedPlace(benches, address),
    },
  };
}
