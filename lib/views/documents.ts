import 'server-only';
import type { z } from 'zod';
import type { KeepoutQuestion, MixQuestion, PlanQuestion, ShopQuestion, WorkingQuestion } from '@/shared/api/questions';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { unreadRefusal } from '@/shared/shop-file/unread';
import type { Clock } from '../clock';
import { planKept } from '../data/plan-kept';
import { type Snapshot, snapshotOf } from '../data/snapshot';
import { planAhead } from '../engine/ahead/plan-ahead';
import { type PlanDocument, planDocument } from '../engine/ahead/plan-document';
import { keepOut } from '../engine/keepout/keep-out';
import { type KeepoutDocument, keepoutDocument } from '../engine/keepout/keepout-document';
import { mixAnswerOf } from '../engine/mix/mix-answer';
import type { MixDocument } from '../engine/mix/mix-document';
import { type Working, workingOf } from '../engine/working/working';
import { askedShop } from './asked-shop';
import { benchStates, certaintyNow } from './bench-states';
import { budgetNow, isOfBudget } from './budget-now';
import { isOfSearch, searchedWorking } from './buying-workings';
import { workedOut } from './worked-out';

/** The plan of a shop, as `shop plan` prints it for the same shop as a file. */
export function planAnswer(asked: z.output<typeof PlanQuestion>, clock: Clock): Promise<Outcome<PlanDocument>> {
  return answerOf(asked.shop, ({ shop }) => {
    return planDocument(planAhead(shop, asked.today ?? clock.today(shop.zone), asked.weeks));
  });
}

/** The mix sheet of a finished volume, as `shop mix` prints it. Refuses 'not-found' when there is no such recipe. */
export async function mixAnswer(asked: z.output<typeof MixQuestion>, clock: Clock): Promise<Outcome<MixDocument>> {
  const { recipe, volume: ml, area = null } = asked;
  const outcome = await answerOf(asked.shop, ({ shop }) => {
    return mixAnswerOf(shop, { recipe, ml, area }, asked.today ?? clock.today(shop.zone));
  });
  return outcome.ok ? outcome.value : outcome;
}

/**
 * Which benches are closed. At a moment that is asked about, from records alone, as `shop keepout` prints it for the same
 * shop as a file; now, as the keep-out board has it.
 */
export async function keepoutAnswer(
  asked: z.output<typeof KeepoutQuestion>,
  clock: Clock,
): Promise<Outcome<KeepoutDocument>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const certainty = await certaintyNow(clock, found.value.id);
  return answerOf(found.value.id, ({ shop }) => {
    const now = asked.now ?? clock.now();
    return keepoutDocument(now, asked.now ? keepOut(shop, now) : benchStates(shop, now, certainty), shop.zone);
  });
}

/** A whole shop as its shop file. Refuses 'things-unread' rather than give a file that lacks something without a word. */
export async function shopFileAnswer(asked: z.output<typeof ShopQuestion>): Promise<Outcome<ShopFile>> {
  const answer = await answerOf(asked.shop, ({ file }) => file);
  const unread = answer.ok ? unreadRefusal(answer.value) : null;
  return unread ? refuse(unread) : answer;
}

/** How a figure of the pages was reached, now. Refuses 'not-found' when there is no such figure. */
export async function workingAnswer(asked: z.output<typeof WorkingQuestion>, clock: Clock): Promise<Outcome<Working>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const certainty = await certaintyNow(clock, found.value.id);
  if (isOfSearch(asked.figure)) return searchedAnswer(found.value.id, asked.figure, clock);
  const outcome = await answerOf(found.value.id, async ({ shop }, id) => {
    const today = clock.today(shop.zone);
    const budget = isOfBudget(asked.figure) ? await budgetNow({ id, shop, today }) : undefined;
    const plan = await planKept(shop, today);
    const now = clock.now();
    return workingOf({ plan, benches: benchStates(shop, now, certainty), now, budget }, asked.figure);
  });
  if (!outcome.ok) return outcome;
  return outcome.value ? accept(outcome.value) : refuse({ code: 'not-found', what: 'figure', id: asked.figure });
}

async function searchedAnswer(id: string, figure: string, clock: Clock): Promise<Outcome<Working>> {
  const { file, shop } = await snapshotOf(id);
  const working = await searchedWorking({ id, file, shop, today: clock.today(shop.zone) }, figure);
  return working ? accept(working) : refuse({ code: 'not-found', what: 'figure', id: figure });
}

async function answerOf<T>(
  id: string | undefined,
  work: (here: Snapshot, id: string) => T | Promise<T>,
): Promise<Outcome<T>> {
  const asked = await askedShop(id);
  if (!asked.ok) return asked;
  const here = await snapshotOf(asked.value.id);
  return workedOut(() => work(here, asked.value.id));
}
