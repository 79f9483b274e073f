import 'server-only';
import type { z } from 'zod';
import type { MoveQuestion } from '@/shared/forms/move-spraying';
import { showMinutes, showMoney } from '@/shared/measure/show';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { showDay, showInstant, showUntil } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { shopFileOf } from '../data/snapshot';
import { type MovedPlan, movedPlan } from '../engine/ahead/moved-plan';
import type { Spraying } from '../engine/ahead/plan';
import { planAhead } from '../engine/ahead/plan-ahead';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import type { Flag } from '../engine/rules/flag';
import type { Shop } from '../engine/shop';
import { shopOfFile } from '../engine/shop-of-file';
import { askedShop } from './asked-shop';
import { gravestFirst } from './flags-by-gravity';
import { reopeningOf } from './reopening-words';

/** What moving a spraying would do to reopening, cost and stock, in words; and what would be flagged. */
export type MovePreview = { where: string; effects: string[]; flags: Flag[] };

/** What moving a spraying would do. Nothing is changed by asking. Refuses 'not-found'. */
export async function movePreview(asked: z.output<typeof MoveQuestion>, clock: Clock): Promise<Outcome<MovePreview>> {
  const here = await askedShop(asked.shop);
  if (!here.ok) return here;
  const shop = shopOfFile(await shopFileOf(here.value.id));
  if (!shop.programs.some(({ id }) => id === asked.program)) {
    return refuse({ code: 'not-found', what: 'program', id: asked.program });
  }
  const plan = planAhead(shop, clock.today(shop.zone), WEEKS_AHEAD);
  const moved = movedPlan(plan, asked.program, asked.on, { day: asked.to, startMinute: asked.at });
  const { spraying } = moved;
  return accept({
    where: spraying ? showInstant(spraying.startsAt, shop.zone, plan.today) : showDay(asked.to, plan.today),
    effects: [
      ...(spraying ? reopeningWords(shop, spraying) : ['The plan does not reach that day.']),
      ...costWords(shop, moved),
      ...stockWords(moved),
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

function costWords({ currency }: Shop, { costMore, wasteMore }: MovedPlan): string[] {
  const words = (what: string, { micros, isMore }: MovedPlan['wasteMore']) =>
    micros === 0 ? `${what} as before` : `${what} ${showMoney(micros, currency)} ${isMore ? 'more' : 'less'}`;
  const cost = costMore === null ? 'product costs something else, not known how much' : words('product', costMore);
  return [`Over the ${WEEKS_AHEAD} weeks ahead: ${cost}; ${words('waste', wasteMore)}.`];
}

function stockWords({ runsOut, cleared }: MovedPlan): string[] {
  const stock = runsOut.map(({ product, from, to }) => {
    if (to === null) return `${product.name} no longer runs out.`;
    return `${product.name} runs out ${showDay(to)}${from === null ? '' : ` instead of ${showDay(from)}`}.`;
  });
  if (runsOut.length === 0) stock.push('Nothing runs out on another day.');
  return cleared > 0 ? [...stock, `${cleared} of today’s flags would be gone or become another.`] : stock;
}
