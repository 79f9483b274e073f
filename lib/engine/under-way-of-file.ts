import { minutes } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readDay } from '@/shared/time/day';
import { readInstant } from '@/shared/time/instant';
import { type Find, known, maybe } from './known';
import type { Bench, Recipe, UnderWay } from './shop';

/** What stands for a recipe that is gone. Its spraying has no end, so nothing is concluded from what is not in it. */
const GONE: Recipe = { id: '', name: 'A recipe that is gone', targetPh: null, useWithin: null, ingredients: [] };

/** The sprayings of a shop that were begun and are not on record yet, as records without amounts. */
export const underWayIn = ({ underWay = [] }: ShopFile, recipe: Find<Recipe>, bench: Find<Bench>): UnderWay[] =>
  underWay.map((spraying) => {
    const its = spraying.recipe === null ? GONE : recipe(spraying.recipe);
    return {
      ...{ id: spraying.id, recipe: its, benches: spraying.benches.map(bench), by: spraying.by },
      planned: spraying.program && spraying.on ? { program: spraying.program, on: known(readDay(spraying.on)) } : null,
      startedAt: known(readInstant(spraying.startedAt)),
      endedAt: its === GONE ? null : maybe(spraying.endedAt, readInstant),
      closedUntil: maybe(spraying.closedUntil, readInstant),
      recordedRei: spraying.reiMinutes === null ? null : minutes(spraying.reiMinutes),
      amounts: its.ingredients.map(() => null),
      ...{ sprayed: null, pH: null, acid: null, plannedCost: null, cost: null, mixedAt: null, temperatureC: null },
      ...{ withdrawn: false, isExtra: false },
    };
  });
