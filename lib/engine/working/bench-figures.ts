import { type Instant, LAST_INSTANT } from '@/shared/time/instant';
import { isBeingSprayed, isUnderWay } from '../keepout/being-sprayed';
import { countingApplications } from '../keepout/counting';
import type { BenchState } from '../keepout/keep-out';
import { reiOf, reopensAfter } from '../keepout/reopening';
import type { Application, Bench, Shop } from '../shop';
import { entered, type FoundWorking, type Step, text } from './shown';

/** The working of a bench's state: `ID/until`. */
export function benchWorking(
  shop: Shop,
  benches: BenchState[],
  now: Instant,
  [id, figure]: string[],
): FoundWorking | null {
  const standing = benches.find(({ bench }) => bench.id === id);
  if (!standing || figure !== 'until') return null;
  const { bench, state, until, because, unrecorded } = standing;
  return {
    title: `${bench.name}: who may stand there`,
    value:
      state === 'unknown'
        ? text(because.some((one) => isBeingSprayed(one, now)) ? 'keep out, being sprayed' : 'keep out, not known')
        : until === null
          ? text('every recorded interval has elapsed')
          : { kind: 'instant', instant: until },
    rule: 'Closed from the start of an application until its end + the longest restricted-entry interval in the mix, in elapsed hours; the latest of all applications counts. A missing end or interval keeps the bench closed, and so does a planned spraying whose time has come until it is recorded, skipped or moved. The label governs.',
    steps: [
      ...(state === 'open' ? lastElapsed(shop, bench, now) : because).flatMap(applicationSteps),
      ...unrecorded.map(({ recipe, startsAt }) =>
        entered(
          `${recipe.name} was to begin`,
          { kind: 'instant', instant: startsAt },
          'the plan; nobody has said what became of it',
        ),
      ),
    ],
  };
}

/** At an open bench, the application whose interval was the last to elapse. */
function lastElapsed(shop: Shop, bench: Bench, now: Instant): Application[] {
  let last: { application: Application; at: Instant } | null = null;
  for (const application of countingApplications(shop)) {
    const at = reopensAfter(application);
    if (at === null || application.startedAt > now || !application.benches.includes(bench)) continue;
    if (last === null || at > last.at) last = { application, at };
  }
  return last ? [last.application] : [];
}

function applicationSteps(application: Application): Step[] {
  const { recipe, startedAt, endedAt, closedUntil } = application;
  const rei = reiOf(application);
  const from = isUnderWay(application) ? 'told from the bench; its record is still to come' : 'application record';
  return [
    entered(`${recipe.name} began`, { kind: 'instant', instant: startedAt }, from),
    entered(
      'It ended',
      endedAt === null ? { kind: 'unknown', because: 'No end was noted.' } : { kind: 'instant', instant: endedAt },
      from,
    ),
    entered(
      'Longest interval in the mix',
      rei === null
        ? { kind: 'unknown', because: 'One product has no interval entered.' }
        : { kind: 'minutes', minutes: rei },
      `labels of ${recipe.ingredients.map(({ product }) => product.name).join(', ')}`,
    ),
    ...(closedUntil === null ? [] : [keptClosed(closedUntil)]),
  ];
}

const keptClosed = (until: Instant): Step =>
  entered(
    'Kept closed at least until',
    until === LAST_INSTANT ? { kind: 'unknown', because: 'Before, nobody knew.' } : { kind: 'instant', instant: until },
    'a version that nobody has confirmed yet, or a clock that was moved',
  );
