import { showMinutes } from '@/shared/measure/show';
import type { Instant } from '@/shared/time/instant';
import { showInstant } from '@/shared/time/show-day';
import { isBeingSprayed, isUnderWay } from '../engine/keepout/being-sprayed';
import { sprayedIn } from '../engine/keepout/counting';
import { isHeldBack } from '../engine/keepout/held-back';
import { latestEnd } from '../engine/keepout/record-index';
import { reopensAfter, withoutInterval } from '../engine/keepout/reopening';
import type { Application, Bench, Shop } from '../engine/shop';
import type { Doubt, Standing } from './bench-states';
import type { HereNow } from './house';

type Here = Pick<HereNow['ways'], 'zone' | 'today'> & { now: Instant };

/** What a state rests on: recipes, and what is missing. Empty at a bench that nothing keeps people out of. */
export function reasonsOf(standing: Standing, { zone, today, now }: Here): string[] {
  const { because, unrecorded, toCome, doubt } = standing;
  if (doubt !== null) return [DOUBTS[doubt]];
  const due = unrecorded.map(
    ({ recipe, startsAt }) => `${recipe.name} was due ${showInstant(startsAt, zone, today)}, not recorded`,
  );
  const unlabelled = unrecorded.flatMap(({ recipe }) => {
    const missing = withoutInterval(recipe).map(({ name }) => name);
    return missing.length > 0 ? [`no interval entered for ${missing.join(', ')}`] : [];
  });
  const begun = because
    .filter((record) => !toCome.includes(record))
    .map((record) => reasonOf(standing, record, { zone, today, now }));
  const later = toCome.map(
    ({ recipe, startedAt }) =>
      `${recipe.name} is on record as begun ${showInstant(startedAt, zone, today)}, which is still to come: put the record or the clock right`,
  );
  return [...new Set([...begun, ...later, ...due, ...unlabelled])];
}

const DOUBTS: Record<Doubt, string> = {
  clock: 'the clock of this machine is not confirmed',
  restored: 'a backup was put back, and nobody has confirmed what was sprayed since',
  records: 'something in the books is lost, or is not as it was written',
};

const MINUTE = 60_000;

function reasonOf({ state, lag }: Standing, record: Application, { zone, today, now }: Here): string {
  const { recipe, endedAt, closedUntil } = record;
  if (state !== 'unknown') {
    if (lag !== null && isHeldBack(record, lag)) {
      return `${recipe.name}, ${showMinutes(lag.ms / MINUTE)} longer: the clock was moved, or nobody watched it`;
    }
    const isKept = closedUntil !== null && reopensAfter(record) === closedUntil;
    return isKept ? `${recipe.name}, to the later end until the record is confirmed` : recipe.name;
  }
  if (isUnderWay(record)) {
    const begun = `begun ${showInstant(record.startedAt, zone, today)}`;
    if (isBeingSprayed(record, now)) return `${recipe.name} is being sprayed, ${begun}`;
    if (endedAt === null) return `${recipe.name} was ${begun} and nobody has said that it ended`;
  }
  if (endedAt === null) return `${recipe.name}: no end noted`;
  const missing = withoutInterval(recipe).map(({ name }) => name);
  return missing.length > 0
    ? `no interval entered for ${missing.join(', ')}`
    : `${recipe.name}: its end is not certain`;
}

/** When the latest recorded interval of a bench came to its end; null when nothing was ever recorded. */
export const elapsedAt = (shop: Shop, bench: Bench, now: Instant): Instant | null =>
  latestEnd(sprayedIn(shop), bench, now);
