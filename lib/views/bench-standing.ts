import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import type { Spraying } from '../engine/ahead/plan';
import type { BenchState } from '../engine/keepout/keep-out';
import type { BenchStrip, DayStrips } from '../engine/keepout/planned-closures';
import type { Bench } from '../engine/shop';
import { benchAnchor } from './bench-anchor';
import type { Fig } from './figures';
import type { House } from './house';
import { elapsedAt, reasonsOf } from './keep-out-words';
import { type WayOut, waysOutOf } from './ways-out';

/** Who may stand at one bench: now as recorded, and through the day as recorded and planned. */
export type BenchStanding = {
  id: string;
  /** Where it stands on the page. */
  anchor: string;
  name: string;
  state: BenchState['state'];
  until: Fig;
  /** The instant of `until`, when it is closed. */
  closedUntil: Instant | null;
  /** When the last recorded interval elapsed, when it is open and there was one. */
  elapsedAt: Instant | null;
  /** What the keep-out rests on: recipes, sprayings that were due, and what is missing. */
  because: string[];
  /** What somebody can do so that its end is known. */
  ways: WayOut[];
  /** The next spraying planned for today. */
  next: { startsAt: Instant; reopensAt: Instant | null } | null;
  strip: BenchStrip | null;
};

/** Every bench in the shop's order, as it stands now and through today. Takes today's strips. */
export function benchStandings(house: House, strips: DayStrips['benches']): BenchStanding[] {
  const { shop, toSpray, benches, figure, now, today } = house;
  const ofToday = toSpray.filter(({ startsAt }) => startsAt > now && dayOf(shop.zone, startsAt) === today);
  return benches.map((standing) => {
    const { bench, state, until } = standing;
    return {
      id: bench.id,
      anchor: benchAnchor(bench.id),
      name: bench.name,
      state,
      until: figure('bench', bench.id, 'until'),
      closedUntil: state === 'closed' ? until : null,
      elapsedAt: state === 'open' ? elapsedAt(shop, bench, now) : null,
      because: reasonsOf(standing, { ...house.ways, now }),
      ways: waysOutOf(standing, today),
      next: nextOf(ofToday, bench),
      strip: strips.find((strip) => strip.bench === bench) ?? null,
    };
  });
}

/** The next spraying of the day. One whose time has come keeps the bench closed until it is recorded. */
function nextOf(ofToday: readonly Spraying[], bench: Bench): BenchStanding['next'] {
  const [next] = ofToday
    .filter(({ program }) => program.benches.includes(bench))
    .sort((a, b) => a.startsAt - b.startsAt);
  return next ? { startsAt: next.startsAt, reopensAt: next.reopensAt } : null;
}
