import 'server-only';
import { jsonPieces } from '@/shared/json/pieces';
import { accept, type Outcome } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { snapshotOf } from '../data/snapshot';
import { planAhead } from '../engine/ahead/plan-ahead';
import { type FlagsSaid, planToWrite } from '../engine/ahead/plan-document';
import type { InPieces } from './shop-written';
import { workedOut } from './worked-out';

/** The plan of a shop as `shop plan` prints it for the same shop as a file, in pieces. Refuses what is too much. */
export async function planPieces(asked: {
  shop: string;
  today: Day | null;
  weeks: number;
  flags: FlagsSaid;
  clock: Clock;
}): Promise<Outcome<InPieces>> {
  const { shop } = await snapshotOf(asked.shop);
  const plan = await workedOut(() => planAhead(shop, asked.today ?? asked.clock.today(shop.zone), asked.weeks));
  return plan.ok ? accept({ pieces: jsonPieces(planToWrite(plan.value, asked.flags)) }) : plan;
}
