import 'server-only';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import { damageOfShop } from '../data/check-records';
import { trustOfClock } from '../data/clock-mark';
import { recordsAreStray } from '../data/stray-records';
import { unrecordedSprayings } from '../engine/ahead/overdue';
import { type ClockLag, type ClockTrust, lagOf } from '../engine/keepout/clock-doubt';
import { heldBack } from '../engine/keepout/held-back';
import { keepOut } from '../engine/keepout/keep-out';
import { type BenchWithToCome, withToCome } from '../engine/keepout/still-to-come';
import type { Shop } from '../engine/shop';

/** Why nothing can be said of any bench: the time is not certain, a backup was put back, or records are lost or changed. */
export type Doubt = 'clock' | 'restored' | 'records';

/** How far this machine's clock and records can be trusted: whether at all, and by how much what is closed stays so for longer. */
export type Certainty = { doubt: Doubt | null; lag: ClockLag };

/** Who may stand at a bench, and what is doubted about everything. */
export type Standing = BenchWithToCome & Certainty;

/**
 * Whether anything speaks against telling from this machine's clock and the records of a shop who may stand where. Damage
 * in the records of a shop closes its own benches. Records that belong to no shop any more close those of all.
 */
export async function certaintyNow(clock: Clock, shopId: string): Promise<Certainty> {
  const trust = await trustOfClock(clock.reading());
  const lag = isWatched(trust) ? lagOf(trust) : null;
  if (trust.doubt !== null) return { doubt: trust.doubt === 'restored' ? 'restored' : 'clock', lag };
  const isDamaged = (await recordsAreStray()) || (await damageOfShop(shopId)) !== null;
  return { doubt: isDamaged ? 'records' : null, lag };
}

const isWatched = (trust: Partial<ClockTrust>): trust is ClockTrust => trust.count !== undefined;

/** What is doubted now; null when nothing is. */
export const doubtNow = async (clock: Clock, shopId: string): Promise<Doubt | null> =>
  (await certaintyNow(clock, shopId)).doubt;

/**
 * Who may stand where, for every page, list, paper, calendar and program that asks a running shop.
 *
 * Takes   the shop, the moment, and how far clock and records can be trusted
 * Gives   `keepOut` from records and from planned sprayings that nobody has recorded, held back where the clock is ahead
 *         of the time that has provably passed; unknown where a record begins after now; every bench unknown in doubt
 */
export function benchStates(shop: Shop, now: Instant, { doubt, lag }: Certainty): Standing[] {
  if (doubt === null) {
    const states = keepOut(heldBack(shop, lag), now, unrecordedSprayings(shop, now));
    return withToCome(states, shop, now).map((state) => ({ ...state, doubt, lag }));
  }
  const nobodyKnows = { state: 'unknown', until: null, because: [], unrecorded: [] } as const;
  return shop.benches.map((bench) => ({ bench, ...nobodyKnows, because: [], unrecorded: [], toCome: [], doubt, lag }));
}
