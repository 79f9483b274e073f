import 'server-only';
import { showMinutes } from '@/shared/measure/show';
import type { Instant } from '@/shared/time/instant';
import { IN_ANY_YEAR, showInstant } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { marksAreDamaged } from '../data/check-records';
import { confirmationsOfClock, keptUntil, trustOfClock } from '../data/clock-mark';
import { newCommandId } from '../data/new-id';
import { type ClockDoubt, type ClockTrust, wentAhead } from '../engine/keepout/clock-doubt';
import { shopNow } from './house';

/** What this machine's clock shows, whether it is doubted, and who confirmed it before. */
export type ClockScreen = {
  shop: string;
  commandId: string;
  shownAt: Instant;
  shown: string;
  zone: string;
  doubt: ClockDoubt | null;
  /** The last moment that a backup knows of which was put back, in words; null when none was, or that is confirmed. */
  keptUntil: string | null;
  /** Whether what was stored of the clock was changed by something else. */
  isDamaged: boolean;
  /** How far it went ahead of the time that passed, in words: was it right before? Null where it did not. */
  wentAhead: string | null;
  confirmed: { id: string; by: string; at: string; before: string }[];
};

/** The clock of this machine, for whoever is to say that it is right. Null when there is no shop. */
export async function clockScreen(clock: Clock): Promise<ClockScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { zone } = here.shop;
  const words = (moment: Instant): string => showInstant(moment, zone, IN_ANY_YEAR);
  const reading = clock.reading();
  const shownAt = reading.now;
  const trust = await trustOfClock(reading).catch(() => ({ doubt: 'unconfirmed' as const }));
  const kept = trust.doubt === 'restored' ? await keptUntil() : null;
  return {
    ...{
      keptUntil: kept && words(kept),
      shop: here.id,
      commandId: newCommandId(),
      shownAt,
      shown: words(shownAt),
      zone,
    },
    ...{ doubt: trust.doubt, isDamaged: await marksAreDamaged(), wentAhead: aheadWords(trust) },
    confirmed: (await confirmationsOfClock()).map(({ id, actor, nowAt, markAt }) => ({
      ...{ id, by: actor, at: words(nowAt), before: words(markAt) },
    })),
  };
}

const MINUTE = 60_000;

function aheadWords(trust: Partial<ClockTrust>): string | null {
  const { level, anchor } = trust;
  if (level === undefined || anchor === undefined || !wentAhead({ level, anchor })) return null;
  return showMinutes((level - anchor) / MINUTE);
}
