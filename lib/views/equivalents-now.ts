import 'server-only';
import { shopMarks } from '../data/shop-marks';
import type { CurvePoint, Equivalents } from '../engine/equivalents/equivalents';
import { onThread } from '../solver/on-thread';
import type { HereNow } from './house';

/** The season that candidates are compared over. */
const SEASON_WEEKS = 52;

/** How long one comparison may be searched for. */
const SECONDS = 8;

/** A chart is worth less waiting: searches wait for each other, and the next page may need one. */
const CHART_SECONDS = 3;

type Kept = Map<string, Promise<unknown>>;

const kept = keptIn(globalThis);

/** Pages and routes are bundles of their own, and share what the process has once. */
function keptIn(house: { equivalentsKept?: Kept } & typeof globalThis): Kept {
  house.equivalentsKept ??= new Map();
  return house.equivalentsKept;
}

/** So many answers are kept; the oldest make room. */
const MOST_KEPT = 40;

/** An answer that there was no time to finish is asked for anew by whoever comes after so long. */
const UNFINISHED_MS = 60_000;

type Asked = { recipe: string; product: string };
export type AskedOf = Pick<HereNow, 'id' | 'file' | 'today'>;

/** What could stand in a recipe, worked out once for a shop as it stands. Null when there is no such place. */
export const equivalentsNow = (here: AskedOf, asked: Asked): Promise<Equivalents | null> =>
  once(here, ['equivalents', asked.recipe, asked.product], isFinished, ({ file, today }) =>
    onThread({ what: 'equivalents', file, today, weeks: SEASON_WEEKS, seconds: SECONDS, ...asked }),
  );

const isFinished = (found: Equivalents | null): boolean =>
  found === null || (found.breakEven.isWhole && found.candidates.every(({ season }) => season?.inTime !== false));

/** What a season costs with each of some candidates at other uses than planned. */
export const curveNow = (here: AskedOf, asked: Asked & { candidates: string[] }): Promise<CurvePoint[]> =>
  once(here, ['curve', asked.recipe, asked.product], isDrawn, ({ file, today }) =>
    onThread({ what: 'season curve', file, today, weeks: SEASON_WEEKS, seconds: CHART_SECONDS, ...asked }),
  );

const isDrawn = (curve: CurvePoint[]): boolean => curve.every(({ seasons }) => !seasons.includes(null));

async function once<T>(
  here: AskedOf,
  of: string[],
  isWhole: (answer: T) => boolean,
  work: (here: AskedOf) => Promise<T>,
): Promise<T> {
  const { revision } = await shopMarks(here.id);
  const name = JSON.stringify([here.id, revision, here.today, ...of]);
  const known = kept.get(name) as Promise<T> | undefined;
  if (known) return known;
  const answer = work(here);
  kept.set(name, answer);
  const forget = () => kept.delete(name);
  answer.then((found) => {
    if (!isWhole(found)) setTimeout(forget, UNFINISHED_MS).unref();
  }, forget);
  for (const old of [...kept.keys()].slice(0, -MOST_KEPT)) kept.delete(old);
  return answer;
}
