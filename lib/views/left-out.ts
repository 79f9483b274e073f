import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { leftOutBetween } from '../engine/ahead/left-out';
import type { Shop } from '../engine/shop';

/** A planned spraying that was left out, in words. */
export type LeftOutSeen = { key: string; day: Day; when: string; recipe: string; benches: string; reason: string };

/** The planned sprayings between two days, both included, that were left out, each with its reason. The earliest first. */
export const leftOutSeen = (shop: Shop, from: Day, to: Day, today: Day): LeftOutSeen[] =>
  leftOutBetween(shop, from, to).map(({ program, on, date, recipe, benches, reason }) => ({
    ...{ key: `${program.id} ${on}`, day: date, when: showDay(date, today), recipe: recipe.name },
    benches: benches.map(({ name }) => name).join(', '),
    reason: reason ?? 'no reason given',
  }));
