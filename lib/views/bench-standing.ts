import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import type { BenchState } from '../engine/keepout/keep-out';
import { type BenchStrip, dayStrips } from '../engine/keepout/planned-closures';
import { benchAnchor } from './bench-anchor';
import { type Closing, closingsOf } from './closings';
import type { Fig } from './figures';
import type { House } from './house';

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
  /** What the keep-out rests on: recipes, and what is missing. */
  because: string[];
  /** The next spraying planned for today, or the one that was planned and not recorded. */
  next: { recipe: string; startsAt: Instant; reopensAt: Instant | null; unrecorded: boolean } | null;
  strip: BenchStrip | null;
};

/** Every bench in the shop's order, as it stands now and through today. */
export function benchStandings(house: House): BenchStanding[] {
  const { shop, plan, today, benches, figure } = house;
  const closings = closingsOf(shop, plan);
  const strips = dayStrips(shop, plan.sprayings, today).benches;
  return benches.map(({ bench, state, until, because }) => {
    const own = closings.filter((closing) => closing.benches.includes(bench));
    return {
      id: bench.id,
      anchor: benchAnchor(bench.id),
      name: bench.name,
      state,
      until: figure('bench', bench.id, 'until'),
      closedUntil: state === 'closed' ? until : null,
      elapsedAt: state === 'open' ? lastElapsed(house, own) : null,
      because: [...new Set(because.map(({ recipe, endedAt }) => reasonOf(state, recipe, endedAt)))],
      next: nextToday(house, own),
      strip: strips.find((strip) => strip.bench === bench) ?? null,
    };
  });
}

function reasonOf(
  state: BenchState['state'],
  recipe: BenchState['because'][number]['recipe'],
  endedAt: Instant | null,
) {
  if (state !== 'unknown') return recipe.name;
  if (endedAt === null) return `${recipe.name}: no end noted`;
  const missing = recipe.ingredients.filter(({ product }) => product.label.rei === null);
  return `no interval entered for ${missing.map(({ product }) => product.name).join(', ')}`;
}

/** When the latest recorded interval came to its end; null when nothing was ever recorded. */
function lastElapsed({ now }: House, own: Closing[]): Instant | null {
  const past = own.filter(({ planned, startsAt }) => !planned && startsAt <= now);
  return past.reduce<Instant | null>(
    (latest, { reopensAt }) => (reopensAt !== null && (latest === null || reopensAt > latest) ? reopensAt : latest),
    null,
  );
}

/** The next spraying of the day; or one whose time has come today while nobody has recorded it. */
function nextToday({ shop, now, today }: House, own: Closing[]): BenchStanding['next'] {
  const on = (instant: Instant): Day => dayOf(shop.zone, instant);
  const recorded = own.filter(({ planned, startsAt }) => !planned && on(startsAt) === today);
  const due = own
    .filter((one) => one.planned && on(one.startsAt) === today)
    .filter((one) => !recorded.some(({ recipe }) => recipe === one.recipe))
    .sort((a, b) => a.startsAt - b.startsAt);
  const next = due.find(({ startsAt }) => startsAt >= now) ?? due.at(-1);
  if (!next) return null;
  const { recipe, startsAt, reopensAt } = next;
  return { recipe: recipe.name, startsAt, reopensAt, unrecorded: startsAt < now };
}
