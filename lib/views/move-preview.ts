import 'server-only';
import type { z } from 'zod';
import type { MoveQuestion } from '@/shared/forms/move-spraying';
import { showMinutes } from '@/shared/measure/show';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { showDay, showInstant, showUntil } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { planKept } from '../data/plan-kept';
import { shopOf } from '../data/snapshot';
import { movedPlan } from '../engine/ahead/moved-plan';
import type { Spraying } from '../engine/ahead/plan';
import type { Flag } from '../engine/rules/flag';
import type { Shop } from '../engine/shop';
import { askedShop } from './asked-shop';
import { clearedWords, costWords, stockWords } from './difference-words';
import { gravestFirst } from './flags-by-gravity';
import { reopeningOf } from './reopening-words';

/** What moving a spraying would do to reopening, cost and stock, in words; and what would be flagged. */
export type MovePreview = { where: string; effects: string[]; flags: Flag[] };

/** What moving a spraying would do. Nothing is changed by asking. Refuses 'not-found'. */
export async function movePreview(asked: z.output<typeof MoveQuestion>, clock: Clock): Promise<Outcome<MovePreview>> {
  const here = await askedShop(asked.shop);
  if (!here.ok) return here;
  const shop = await shopOf(here.value.id);
  if (!shop.programs.some(({ id }) => id === asked.program)) {
    return refuse({ code: 'not-found', what: 'program', id: asked.program });
  }
  const plan = await planKept(shop, clock.today(shop.zone));
  const moved = movedPlan(plan, asked.program, asked.on, { day: asked.to, startMinute: asked.at });
  const { spraying } = moved;
  return accept({
    where: spraying ? showInstant(spraying.startsAt, shop.zone, plan.today) : showDay(asked.to, plan.today),
    effects: [
      ...(spraying ? reopeningWords(shop, spraying) : ['The plan does not reach that day.']),
      ...costWords(shop, moved),
      ...stockWords(moved),
      ...clearedWords(moved.cleared),
    ],
    flags: gravestFirst([...moved.flags, ...moved.newElsewhere]),
  });
}

function reopeningWords(shop: Shop, spraying: Spraying): string[] {
  const { reopensAt, date } = spraying;
  if (reopensAt === null) return ['Nobody can say when its benches reopen.'];
  const reopens = `Reopens ${showUntil(reopensAt, shop.zone, date)}`;
  const met = reopeningOf(shop, spraying);
  if (met.kind === 'during') return [`${reopens}: closed in opening hours.`];
  return [met.kind === 'before' ? `${reopens}, ${showMinutes(met.minutes)} before opening.` : `${reopens}.`];
}
