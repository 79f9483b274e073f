import 'server-only';
import type { Clock } from '@/lib/clock';
import { shelveSheet } from '@/lib/data/safety-sheets';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';

export type PutAwaySheet = {
  commandId: string;
  shopId: string;
  actor?: string;
  product: string;
  /** Which of the product's sheets, from 1. */
  number: number;
  /** False takes it out again. */
  isAway: boolean;
};

/**
 * Put a safety data sheet away: it counts no more and is shown among those put away, or take it out again. Its file is
 * kept either way.
 *
 * Refuses  'not-found'
 */
export async function putAwaySheet(input: PutAwaySheet, clock: Clock): Promise<Outcome<{ isAway: boolean }>> {
  const { commandId, shopId, actor, ...body } = input;
  const command = { id: commandId, name: 'putAwaySheet', shopId, body, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    if (await shelveSheet(rows, stamp, body)) return accept({ isAway: body.isAway });
    return refuse({ code: 'not-found', what: 'safety data sheet', id: `${body.product} ${body.number}` });
  });
}
