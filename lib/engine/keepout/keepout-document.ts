import { type Instant, instantText } from '@/shared/time/instant';
import type { Zone } from '@/shared/time/zone';
import type { BenchState } from './keep-out';

export type KeepoutDocument = ReturnType<typeof keepoutDocument>;

/** Which benches are closed, as the `shop` command and the HTTP API print it: moments with the offset of the shop's zone. */
export const keepoutDocument = (now: Instant, states: BenchState[], zone: Zone) => ({
  now: instantText(now, zone),
  benches: states.map(({ bench, state, until, because }) => ({
    bench: bench.id,
    state,
    until: until === null ? null : instantText(until, zone),
    because: because.map(({ id }) => id),
  })),
});
