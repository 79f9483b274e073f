import 'server-only';
import type { z } from 'zod';
import type { BuyQuestion, EquivalentsQuestion } from '@/shared/api/questions';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Clock } from '../clock';
import { snapshotOf } from '../data/snapshot';
import { type BuyDocument, buyDocument } from '../engine/buying/buy-document';
import { equivalentsFault } from '../engine/equivalents/equivalents-answer';
import { type EquivalentsDocument, equivalentsDocument } from '../engine/equivalents/equivalents-document';
import { onThread } from '../solver/on-thread';
import { askedShop } from './asked-shop';
import { workedOut } from './worked-out';

/** What to buy, as `shop buy` prints it for the same shop as a file. The search runs on a thread of its own. */
export async function buyAnswer(asked: z.output<typeof BuyQuestion>, clock: Clock): Promise<Outcome<BuyDocument>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const { file, shop } = await snapshotOf(found.value.id);
  const { weeks, seconds } = asked;
  const today = asked.today ?? clock.today(shop.zone);
  return searched(async () => {
    return accept(buyDocument(await onThread({ what: 'purchase plan', file, today, weeks, seconds })));
  });
}

/** What could stand in a recipe, as `shop equivalents` prints it. Refuses what that refuses. */
export async function equivalentsAnswer(
  asked: z.output<typeof EquivalentsQuestion>,
  clock: Clock,
): Promise<Outcome<EquivalentsDocument>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const { file, shop } = await snapshotOf(found.value.id);
  const fault = equivalentsFault(shop, asked);
  if (fault) return refuse(fault);
  const { recipe, product, weeks, seconds } = asked;
  const today = asked.today ?? clock.today(shop.zone);
  return searched(async () => {
    const answer = await onThread({ what: 'equivalents', file, recipe, product, today, weeks, seconds });
    return answer ? accept(equivalentsDocument(answer)) : refuse({ code: 'not-found', what: 'product', id: product });
  });
}

async function searched<T>(work: () => Promise<Outcome<T>>): Promise<Outcome<T>> {
  const outcome = await workedOut(work);
  return outcome.ok ? outcome.value : outcome;
}
