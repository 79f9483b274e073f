import 'server-only';
import type { Clock } from '@/lib/clock';
import { checkRecords, marksAreDamaged } from '@/lib/data/check-records';
import {
  forgetMarks,
  keptUntil,
  remember,
  speakOfRestored,
  storeRestored,
  storeTrust,
  trustBefore,
} from '@/lib/data/clock-mark';
import { database } from '@/lib/data/database';
import { toStored } from '@/lib/data/whole';
import { write } from '@/lib/data/writer';
import { confirmed } from '@/lib/engine/keepout/clock-doubt';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Instant } from '@/shared/time/instant';

export type ConfirmClock = {
  commandId: string;
  /** Any shop of this machine: its clock is everybody's. */
  shopId: string;
  actor?: string;
  /** What the clock showed when the person said that it is right. */
  shownAt: Instant;
  /**
   * Whether it was right before it went ahead, too, because the computer slept or was off. Left out: yes. If it was wrong
   * and has been set, what was sprayed before is kept closed for longer by as much.
   */
  wasRight?: boolean;
};

const MINUTE = 60_000;
/** As long as a page may stand before somebody confirms the time on it. */
const MOST_SINCE_SHOWN = 5 * MINUTE;

/**
 * Say that this machine's clock is right: from now on its time counts again, and it is on record who said so. Marks of the
 * clock that were damaged are made anew. Where they spoke of a backup that was put back and nobody was told so, that is
 * to be confirmed after it.
 *
 * Refuses  'clock-moved' when the clock shows something else by now than what was confirmed; 'not-found'
 */
export async function confirmClock(input: ConfirmClock, clock: Clock): Promise<Outcome<{ confirmed: true }>> {
  const { commandId, shopId, actor, shownAt, wasRight = true } = input;
  const reading = clock.reading();
  // Of marks that cannot be read nothing is known, and the clock is taken as it is confirmed.
  const before = await trustBefore(false).catch(() => null);
  // Whoever was shown no doubt about a backup has confirmed nothing of it.
  const isRestored = before?.doubt !== 'restored' && (await speakOfRestored());
  const until = isRestored ? await keptUntil().catch(() => null) : null;
  const settled = confirmed(before, reading, wasRight);
  const trust = isRestored ? { ...settled, doubt: 'restored' as const } : settled;
  const body = { shownAt, ...(!wasRight && { wasRight }) };
  const command = { id: commandId, name: 'confirmClock', shopId, body, actor };
  let isSettled = false;
  const outcome = await write(command, reading.now, async (rows, stamp) => {
    const shop = await rows.shop.findUnique({ where: { id: shopId }, select: { id: true } });
    if (!shop) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    if (Math.abs(reading.now - shownAt) > MOST_SINCE_SHOWN) return refuse({ code: 'clock-moved' });
    stamp.touched.addOutside();
    const [markAt, nowAt] = [toStored(before?.mark ?? reading.now), toStored(reading.now)];
    const line = { id: stamp.commandId, markAt, nowAt, actor: stamp.actor, recordedAt: nowAt };
    await rows.clockConfirmation.create({ data: line });
    await forgetMarks(rows);
    await (isRestored ? storeRestored(rows, trust, until) : storeTrust(rows, trust));
    isSettled = true;
    return accept({ confirmed: true as const });
  });
  // A confirmation that is sent again confirms nothing anew.
  if (!outcome.ok || !isSettled) return outcome;
  remember(await database(), trust);
  if (await marksAreDamaged()) await checkRecords();
  return outcome;
}
