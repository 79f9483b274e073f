import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { shopOf } from '../data/snapshot';
import { missedSprayings } from '../engine/ahead/overdue';
import { ownDay } from '../engine/ahead/program-turns';
import type { HereNow } from './house';
import { plannedQuery } from './planned-query';

/**
 * What is put on record when a missed spraying was done as planned: its recipe, the benches that are still open, and the
 * times that its program has. Null when it is not missed any more.
 */
export async function missedTurn(shopId: string, clock: Clock, { program, on }: { program: string; on: Day }) {
  const shop = await shopOf(shopId);
  const turn = missedSprayings(shop, clock.today(shop.zone)).find(
    (one) => one.program.id === program && ownDay(one.program, one.date, one.occurrence) === on,
  );
  if (!turn) return null;
  const { recipe, open, startsAt, endsAt } = turn;
  return { recipe: recipe.id, benches: open.map(({ id }) => id), startedAt: startsAt, endedAt: endsAt };
}

/** A spraying that was missed, for whoever says what became of it. */
export type Missed = {
  key: string;
  shop: string;
  commandId: string;
  program: string;
  on: Day;
  date: Day;
  recipe: string;
  benches: string;
  query: string;
};

/** The sprayings that were missed and that nobody has said anything of, the latest first. */
export const missedSeen = ({ id, shop, today }: Pick<HereNow, 'id' | 'shop' | 'today'>): Missed[] =>
  missedSprayings(shop, today)
    .map((spraying) => {
      const { program, date, occurrence, recipe, open } = spraying;
      const on = ownDay(program, date, occurrence);
      return {
        ...{ key: `${program.id} ${on}`, shop: id, commandId: newCommandId(), program: program.id, on, date },
        ...{ recipe: recipe.name, benches: open.map(({ name }) => name).join(', '), query: plannedQuery(spraying) },
      };
    })
    .reverse();
