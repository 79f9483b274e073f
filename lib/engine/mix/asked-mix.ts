import type { MixQuery, MixWhat } from '@/shared/forms/mix-query';
import { workMinutes } from '@/shared/mix/work-minutes';
import { type Reading, read, unreadable } from '@/shared/outcome';
import type { Minutes } from '@/shared/quantity/amounts';
import { divide, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import { wholeUp } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { groundOf } from '../bench/ground';
import { plantsOn } from '../bench/spray-volume';
import { byGravity, type Flag } from '../rules/flag';
import type { Bench, NamedSprayer, Recipe, Shop } from '../shop';
import { type Batch, batchFor } from './batch';
import { mixFlags, type SprayedWhen } from './mix-flags';
import { type MixSheet, mixSheet } from './mix-sheet';
import { type PlannedTurn, plannedTurn } from './planned-turn';

/** A mix that somebody asks for, worked out: the sheet, when it is sprayed, and every rule that it breaks then. */
export type AskedMix = {
  shop: Shop;
  /** The address that asks for it, after the question mark. */
  query: string;
  recipe: Recipe;
  planned: PlannedTurn | null;
  what: MixWhat;
  batch: Batch;
  sprayer: NamedSprayer;
  /** As planned, when that is still to come; else from now on. */
  when: SprayedWhen;
  /** The day that it is sprayed. */
  day: Day;
  /** How many minutes it is meant to take: as its program has it, or else by its plants; null when nobody can say. */
  worked: Exact | null;
  sheet: MixSheet;
  flags: Flag[];
};

/**
 * The mix that an address asks for.
 *
 * Takes    the shop as it stands, the moment, what is asked, and its address; and whether it is mixed now, whenever it is
 *          planned for
 * Refuses  a recipe, a program, a bench, a group of plants or a sprayer that the shop does not have; a day on which the
 *          program has no spraying; more plants than stand there; and what `batchFor` refuses
 */
export function askedMix(shop: Shop, now: Instant, asked: MixQuery, query: string, isNow = false): Reading<AskedMix> {
  const planned = asked.planned ? plannedTurn(shop, asked.planned.program, asked.planned.on) : read(null);
  if (!planned.ok) return planned;
  const turn = planned.value;
  const recipe = asked.recipe === null ? turn?.recipe : shop.recipes.find(({ id }) => id === asked.recipe);
  if (!recipe) return unreadable(`There is no recipe "${asked.recipe}" in this shop. Choose one of those below.`);
  const sprayer = sprayersOf(shop)[asked.sprayer ?? ownSprayer(shop, turn)];
  if (!sprayer) return unreadable('There is no such sprayer in this shop. Choose one of those below.');
  const batch = batchAsked(shop, asked.what, turn, sprayer);
  if (!batch.ok) return batch;
  const worked = turn ? exact(turn.program.duration) : workMinutes(shop, batch.value.plants);
  const when = whenSprayed(isNow ? null : turn, worked, now);
  const day = dayOf(shop.zone, when.startsAt);
  const sheet = mixSheet(shop, recipe, batch.value, day, worked);
  // Where no bench is named, only the rules that ask for none can be judged.
  const ofBenches = () => [...mixFlags(shop, recipe, batch.value, when), ...sheet.rough].sort(byGravity);
  const flags = batch.value.benches.length > 0 ? ofBenches() : sheet.flags;
  const { what } = asked;
  return read({
    ...{ shop, query, recipe, what, batch: batch.value, sprayer, when, day, worked, sheet, flags },
    planned: turn,
  });
}

/** The sprayers that can be chosen: at least the one that every figure goes by. */
export const sprayersOf = ({ sprayers, sprayer }: Shop): NamedSprayer[] =>
  sprayers.length > 0 ? sprayers : [{ ...sprayer, name: 'the sprayer' }];

/** The place of the sprayer that a planned spraying is sprayed with, or else of the first. */
export const ownSprayer = ({ sprayers }: Shop, turn: PlannedTurn | null): number =>
  turn?.program.sprayer ? Math.max(0, sprayers.indexOf(turn.program.sprayer)) : 0;

function whenSprayed(turn: PlannedTurn | null, worked: Exact | null, now: Instant): SprayedWhen {
  if (turn && turn.startsAt >= now) return { startsAt: turn.startsAt, endsAt: turn.endsAt };
  return { startsAt: now, endsAt: addMinutes(now, wholeUp<Minutes>(worked ?? ZERO)) };
}

function batchAsked(shop: Shop, what: MixWhat, turn: PlannedTurn | null, sprayer: NamedSprayer): Reading<Batch> {
  if (what.kind === 'planned') return batchFor({ kind: 'benches', benches: turn?.program.benches ?? [] }, sprayer);
  if (what.kind === 'plants') {
    const standing = plantsAsked(shop, what);
    return standing.ok ? batchFor({ kind: 'benches', benches: standing.value }, sprayer) : standing;
  }
  const benches = benchesNamed(shop, what.benches);
  if (!benches.ok) return benches;
  if (what.kind === 'benches') return batchFor({ kind: 'benches', benches: benches.value }, sprayer);
  return volumeAsked(what, benches.value.length > 0 ? benches.value : (turn?.program.benches ?? []), sprayer);
}

/** A volume is taken as it is; benches beside it say where it goes. */
function volumeAsked(
  { volume, area }: Extract<MixWhat, { kind: 'volume' }>,
  benches: Bench[],
  sprayer: NamedSprayer,
): Reading<Batch> {
  const ground = area?.value ?? groundOf(benches);
  const batch = batchFor({ kind: 'volume', ml: volume.value, area: ground }, sprayer);
  if (!batch.ok || benches.length === 0) return batch;
  return read({ ...batch.value, benches, plants: plantsOn(benches) });
}

function benchesNamed(shop: Shop, ids: readonly string[]): Reading<Bench[]> {
  const benches: Bench[] = [];
  for (const id of ids) {
    const bench = shop.benches.find((one) => one.id === id);
    if (!bench) return unreadable(`There is no bench "${id}" in this shop. Choose among those below.`);
    benches.push(bench);
  }
  return read(benches);
}

/** The benches with only the plants that are asked for on them, and with their share of the ground. */
function plantsAsked(shop: Shop, { plants, area }: Extract<MixWhat, { kind: 'plants' }>): Reading<Bench[]> {
  const named = benchesNamed(shop, [...new Set(plants.map(({ bench }) => bench))]);
  if (!named.ok) return named;
  const total = plants.reduce((sum, { count }) => sum + count, 0);
  const benches: Bench[] = [];
  for (const bench of named.value) {
    const groups: Bench['plants'] = [];
    for (const { group, count } of plants.filter((one) => one.bench === bench.id)) {
      const there = bench.plants[group];
      if (!there) return unreadable(`${bench.name} has no such plants any more. Count them anew below.`);
      if (count > there.count) {
        return unreadable(`${bench.name} has ${there.count} ${there.name}, not ${count}. Write as many or fewer.`);
      }
      groups.push({ ...there, count });
    }
    benches.push({ ...bench, plants: groups, area: groundShare(bench, groups, area?.value ?? null, total) });
  }
  return read(benches);
}

/** A part of the plants stands on a part of the ground that nobody measured, unless somebody says how large it is. */
function groundShare(bench: Bench, groups: Bench['plants'], area: Exact | null, total: number): Exact | null {
  const count = plantsOn([{ plants: groups }]);
  if (area) return multiply(area, divide(exact(count), exact(total)));
  return count === plantsOn([bench]) ? bench.area : null;
}
