import { addDays, readDay } from '../time/day';
import { occurrences, readRepeat, settleUntil } from '../time/recurrence';
import { readZone } from '../time/zone';
import { type Ids, idsOf } from './check-ids';
import { checkSprayer } from './check-sprayer';
import type { ShopFile } from './contract';
import { grouped, LONGEST_HORIZON, type Load, MOST_FILLS, MOST_INGREDIENTS, MOST_LISTED, tooMuchAhead } from './limits';
import type { PartRead } from './part-faults';
import { type Path, pathText } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/**
 * A shop that is larger than can be worked out: lists that are too long, and programs that together come to too much. Of
 * those it complains once, at the first one with which it is too much. Only whole files are held against this: a shop that
 * was kept before there were limits is still read.
 */
export function limitFaults(readable: ReadablePart<ShopFile>): PartRead[] {
  const { part } = readable;
  const ids = idsOf(part);
  const faults: PartRead[] = [];
  const complain: Complain = (path, message) => faults.push({ path, text: pathText(path), message });
  for (const [list, most] of Object.entries(MOST_LISTED) as [keyof typeof MOST_LISTED, number][]) {
    tooLong([list], part?.[list], most, complain);
  }
  for (const [index, { ingredients }] of eachOf(part?.recipes)) {
    tooLong(['recipes', index, 'ingredients'], ingredients, MOST_INGREDIENTS, complain);
  }
  const fills = checkSprayer(readable, ids, () => {});
  for (const [index, its] of fills) if (its > MOST_FILLS) complain(['programs', index, 'benches'], tooManyFills(its));
  checkAhead(part, ids, fills, complain);
  return faults;
}

const tooManyFills = (fills: number): string =>
  `These benches take ${grouped(Math.ceil(fills))} fills of the sprayer each time; at most ${grouped(MOST_FILLS)} can be planned. Look at the plants, their mL per plant and the fill.`;

function tooLong(path: Path, list: { length: number } | null | undefined, most: number, complain: Complain): void {
  const there = list?.length ?? 0;
  if (there > most) complain(path, `There are ${grouped(there)} here; at most ${grouped(most)} can be kept.`);
}

/** Takes how many fills each program takes each time, by its place. */
function checkAhead(part: Loose<ShopFile>, ids: Ids, fills: ReadonlyMap<number, number>, complain: Complain): void {
  const load: Load = { sprayings: 0, benches: 0, ingredients: 0, fills: 0 };
  for (const [index, program] of eachOf(part?.programs)) {
    const times = timesIn(program, part?.shop?.timeZone);
    const longest = Math.max(
      0,
      ...[...eachOf(program.recipes)].map(
        ([, id]) => part?.recipes?.[ids.recipes.get(id) ?? -1]?.ingredients?.length ?? 0,
      ),
    );
    load.sprayings += times;
    load.benches += times * (program.benches?.length ?? 0);
    load.ingredients += times * longest;
    load.fills += times * Math.ceil(fills.get(index) ?? 0);
    const said = tooMuchAhead(load);
    if (said === null) continue;
    complain(['programs', index], said);
    return;
  }
}

/** How often a program comes round in the longest horizon, counted from the day it starts on. */
function timesIn(
  { startsOn, endsOn, repeat }: NonNullable<Loose<ShopFile['programs'][number]>>,
  timeZone: string | null | undefined,
): number {
  const [first, zone, rule] = [readDay(startsOn ?? ''), readZone(timeZone ?? 'UTC'), readRepeat(repeat ?? '')];
  if (repeat == null || !first.ok || !zone.ok || !rule.ok) return 1;
  const end = endsOn == null ? null : readDay(endsOn);
  const horizon = addDays(first.value, LONGEST_HORIZON - 1);
  const last = end?.ok && end.value < horizon ? end.value : horizon;
  return occurrences(settleUntil(rule.value, zone.value, 0), first.value, first.value, last).length;
}
