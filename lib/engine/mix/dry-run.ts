import { minutes } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { atClock } from '@/shared/time/zone';
import type { Projection, Spraying } from '../ahead/plan';
import { projectionWith } from '../ahead/projection';
import { amountOf, newLine } from '../ahead/sprayings';
import { doseOutsideLabel } from '../rules/dose-outside-label';
import { byGravity, type Flag } from '../rules/flag';
import { lotExpired } from '../rules/lot-expired';
import { mustNotMix } from '../rules/must-not-mix';
import { phOutsideRange } from '../rules/ph-outside-range';
import { reiUnknown } from '../rules/rei-unknown';
import { short } from '../rules/short';
import { unknownCost } from '../rules/unknown-cost';
import type { Bench, Program, Recipe, Shop } from '../shop';
import type { Ground } from '../strength/dose-in-stock';
import type { Batch } from './batch';

/** What mixing a batch today would draw and cost, and which rules it breaks. The lines are those of the recipe, in its order. */
export type DryRun = Pick<Spraying, 'lines' | 'materialCost'> & { flags: Flag[] };

/**
 * A batch as if it were sprayed today and nothing else were: the same draws, prices and rules as in a plan.
 *
 * Takes    the shop as it stands
 * Gives    flags without a program, the gravest first; those that ask what else is sprayed, or when, are left out
 */
export function dryRun(shop: Shop, recipe: Recipe, batch: Batch, today: Day): DryRun {
  const spraying = sprayingOf(shop, recipe, batch, today);
  const projection = projectionWith(onlyFor(shop, recipe), [spraying], today, 1);
  return { lines: spraying.lines, materialCost: spraying.materialCost, flags: flagsIn(projection, batch) };
}

/** The ground of a batch and its spray, for what is dosed per area. */
export const groundFor = ({ area, spray }: Batch): Ground => ({ area, sprayMl: spray.total });

/** The benches of a batch; where none are named, the ground that somebody gave for it, or did not. */
export const benchesOf = ({ benches, area }: Batch): Bench[] =>
  benches.length > 0
    ? benches
    : [
        {
          ...{ id: UNNAMED, name: 'the ground that it is for', coverage: 1, area, place: null, plants: [] },
          ...{ customers: true, enclosed: true, harvestOn: null },
        },
      ];

const UNNAMED = '';

/** The shop with nothing but what the recipe takes and what is on record, so that no rule speaks of anything else. */
export function onlyFor(shop: Shop, { ingredients }: Recipe): Shop {
  const products = [...new Set(ingredients.map(({ product }) => product))];
  const containers = shop.containers.filter(({ product }) => products.includes(product));
  return { ...shop, products, containers, programs: [] };
}

/** A batch as a spraying of no program, at the midnight that a day begins with. */
export function sprayingOf(shop: Shop, recipe: Recipe, batch: Batch, today: Day): Spraying {
  const now = atClock(shop.zone, today, 0);
  return {
    program: programOf(recipe, batch, today),
    recipe,
    occurrence: 0,
    date: today,
    startsAt: now,
    endsAt: now,
    reopensAt: null,
    spray: batch.spray,
    plants: batch.plants ?? 0,
    lines: recipe.ingredients.map((one) => newLine(one, amountOf(one, batch.spray.total, batch.area))),
    materialCost: null,
    labourCost: null,
  };
}

const programOf = (recipe: Recipe, batch: Batch, today: Day): Program => ({
  id: UNNAMED,
  recipes: [recipe],
  benches: benchesOf(batch),
  startsOn: today,
  endsOn: today,
  changes: [],
  repeat: null,
  startMinute: 0,
  duration: minutes(0),
  sprayer: null,
});

const RULES = [doseOutsideLabel, mustNotMix, phOutsideRange, lotExpired, reiUnknown, short, unknownCost];

function flagsIn(projection: Projection, { benches }: Batch): Flag[] {
  const ids = benches.map(({ id }) => id);
  const flags = RULES.flatMap((rule) => rule(projection));
  return flags.map((flag) => ({ ...flag, program: null, benches: flag.benches.length > 0 ? ids : [] })).sort(byGravity);
}
