import 'server-only';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import { damagedRecords } from '../data/check-records';
import { doubtOfClock } from '../data/clock-mark';
import { recordsAreStray } from '../data/stray-records';
import { unrecordedSprayings } from '../engine/ahead/overdue';
import { type BenchState, keepOut } from '../engine/keepout/keep-out';
import type { Shop } from '../engine/shop';

/** Why nothing can be said of any bench: the time is not certain, or records are lost or changed. */
export type Doubt = 'clock' | 'records';

/** Who may stand at a bench, and what is doubted about everything. */
export type Standing = BenchState & { doubt: Doubt | null };

/**
 * Whether anything speaks against telling from this machine's clock and records who may stand where. Damage in one shop's
 * records speaks against those of all: in another the newest may be gone with their seals, which its own chain cannot show.
 */
export async function doubtNow(clock: Clock): Promise<Doubt | null> {
  if ((await doubtOfClock({ now: clock.now(), steady: clock.steady() })) !== null) return 'clock';
  return (await recordsAreStray()) || (await damagedRecords()).size > 0 ? 'records' : null;
}

/**
 * Who may stand where, for every page, list, paper, calendar and program that asks a running shop.
 *
 * Takes   the shop, the moment, and what is doubted
 * Gives   `keepOut` from records and from planned sprayings that nobody has recorded; every bench unknown in doubt
 */
export function benchStates(shop: Shop, now: Instant, doubt: Doubt | null): Standing[] {
  if (doubt === null) {
    return keepOut(shop, now, unrecordedSprayings(shop, now)).map((state) => ({ ...state, doubt }));
  }
  const nobodyKnows = { state: 'unknown', until: null, because: [], unrecorded: [] } as const;
  return shop.benches.map((bench) => ({ bench, ...nobodyKnows, because: [], unrecorded: [], doubt }));
}
