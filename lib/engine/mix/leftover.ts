import { minutes } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { groundOf } from '../bench/ground';
import { plantsOn, sprayFor } from '../bench/spray-volume';
import type { Bench, Recipe, Shop } from '../shop';
import type { Batch } from './batch';
import { mixFlags } from './mix-flags';

/** A bench that could take spray that was left over: mL that its plants take, and whether a program sprays this there. */
export type LeftoverPlace = { bench: Bench; roomMl: Exact; inProgram: boolean };

/**
 * The benches on which spray that was left over could go, within its label and the rules of the shop. Mixed spray is
 * neither kept nor poured away, so this is asked first.
 *
 * Takes    the shop as it stands, the recipe as it was mixed, the benches that people may enter now and that it was not mixed
 *          for, and the moment
 * Gives    at most eight of those, that no rule says stop to now, and whose plants take a known volume; those with a program
 *          of this recipe first
 */
export function leftoverPlaces(shop: Shop, recipe: Recipe, open: readonly Bench[], now: Instant): LeftoverPlace[] {
  const planned = new Set(open.filter((bench) => hasProgram(shop, recipe, bench)));
  const places: LeftoverPlace[] = [];
  for (const bench of [...planned, ...open.filter((one) => !planned.has(one))]) {
    const batch = batchOn(shop, bench);
    if (!batch || isStopped(shop, recipe, batch, now)) continue;
    places.push({ bench, roomMl: batch.spray.onPlants, inProgram: planned.has(bench) });
    if (places.length === ENOUGH) break;
  }
  return places;
}

/** More are not looked through by anybody who holds a sprayer. */
const ENOUGH = 8;

/** What the plants of a bench take, in one go. Null when nobody knows, and when that is nothing. */
function batchOn({ sprayer }: Shop, bench: Bench): Batch | null {
  const spray = sprayFor([bench], sprayer);
  if (!spray || spray.onPlants.over === 0n) return null;
  const whole = { onPlants: spray.onPlants, fills: 1, fill: spray.onPlants, total: spray.onPlants };
  return { spray: whole, benches: [bench], area: groundOf([bench]), plants: plantsOn([bench]) };
}

/** The spray is there already, so that nothing can be short; everything else that says stop, counts. */
function isStopped(shop: Shop, recipe: Recipe, batch: Batch, now: Instant): boolean {
  const when = { startsAt: now, endsAt: addMinutes(now, minutes(0)) };
  return mixFlags(shop, recipe, batch, when).some(({ severity, rule }) => severity === 'stop' && rule !== 'short');
}

const hasProgram = ({ programs }: Shop, { id }: Recipe, bench: Bench): boolean =>
  programs.some(({ recipes, benches }) => recipes.some((one) => one.id === id) && benches.includes(bench));
