import 'server-only';
import { showMinutes } from '@/shared/measure/show';
import type { Instant } from '@/shared/time/instant';
import { IN_ANY_YEAR, showDayUntil, showInstant } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { shopOfLink } from '../data/shared-links';
import { shopSoon } from '../data/snapshot';
import { isBeingSprayed } from '../engine/keepout/being-sprayed';
import type { Shop } from '../engine/shop';
import { figureAddress } from '../engine/working/shown';
import { benchAnchor } from './bench-anchor';
import { benchStates, certaintyNow, type Doubt, type Standing } from './bench-states';
import { elapsedAt, reasonsOf } from './keep-out-words';
import { openingsOfToday } from './openings-confirmed';
import { reducedBenches, rememberBenches } from './reduced-board';
import { chosenShop, shopsAndShown } from './shown-shop';
import { type WayOut, waysOutOf } from './ways-out';

/** One bench on the keep-out board, in words that were made on the server: no phone decides what they say. */
export type BoardBench = {
  id: string;
  /** Where it stands on the page. */
  anchor: string;
  name: string;
  state: Standing['state'];
  word: string;
  /** Until when, or since when, with weekday and date; null when nobody knows, or nothing was recorded. */
  when: string | null;
  left: string | null;
  because: string[];
  /** What somebody can do so that its end is known; none on a board that shows states and nothing else. */
  ways: WayOut[];
  /** Where the working of its state opens; null on a board that shows states and nothing else. */
  working: string | null;
};

/** The keep-out board at one moment. */
export type Board = {
  shop: string | null;
  /** The moment on the server's clock, in milliseconds and in words. */
  now: number;
  asOf: string;
  zone: string;
  /** Why every bench is kept out of; null when each is told for itself. */
  doubt: Doubt | 'unreadable' | 'reading' | null;
  benches: BoardBench[];
};

/** What a board tells: everything, or states and nothing else. */
export type BoardDetail = 'full' | 'states';

/**
 * The board of the shop that is looked at.
 *
 * Gives   null when there is no shop. While a large shop is still being read, and when anything at all cannot be read: a
 *         board that keeps people out of every bench by its name
 */
export async function keepOutBoard(clock: Clock): Promise<Board | null> {
  const whose = `shown ${await chosenShop()}`;
  return readable(clock, { whose, detail: 'full', shopOf: async () => (await shopsAndShown()).shown?.id ?? null });
}

/** The board behind a secret link: states and nothing else. Null when there is no such link, or it was revoked. */
export const floorBoard = (clock: Clock, token: string): Promise<Board | null> =>
  readable(clock, { whose: `link ${token}`, detail: 'states', shopOf: () => shopOfLink(token, 'board') });

/** Whose board it is, how much it tells, and how its shop is found. */
type Asked = { whose: string; detail: BoardDetail; shopOf: () => Promise<string | null> };

async function readable(clock: Clock, { whose, detail, shopOf }: Asked): Promise<Board | null> {
  try {
    const shop = await shopOf();
    const board = shop === null ? null : await boardOf(shop, clock, detail);
    if (board === 'reading') return { ...boardOfNone(clock, board), ...(await reducedBenches(whose, shopOf)) };
    rememberBenches(whose, board);
    return board;
  } catch (error) {
    if (isNotOurs(error)) throw error;
    console.error('The keep-out board cannot be read, so it keeps people out of every bench:', error);
    return { ...boardOfNone(clock, 'unreadable'), ...(await reducedBenches(whose, shopOf)) };
  }
}

/** What Next throws to itself, such as "this page cannot be made at build time". It carries a digest of its own. */
const isNotOurs = (error: unknown): boolean => error instanceof Error && 'digest' in error;

/** The board of a shop of which nothing is known yet, or nothing can be. */
function boardOfNone(clock: Clock, doubt: 'unreadable' | 'reading'): Board {
  const now = clock.now();
  const asOf = `${new Date(now).toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  return { shop: null, now, asOf, zone: 'UTC', doubt, benches: [] };
}

async function boardOf(shopId: string, clock: Clock, detail: BoardDetail): Promise<Board | 'reading'> {
  const certainty = await certaintyNow(clock, shopId);
  // The moment comes first: what is recorded while the shop is being read then counts, and no interval ends meanwhile.
  const now = clock.now();
  const shop = await shopSoon(shopId);
  if (shop === null) return 'reading';
  const opened = detail === 'full' ? await openingsOfToday(shopId, shop, now) : new Map<string, string[]>();
  return {
    shop: shop.name,
    now,
    asOf: showInstant(now, shop.zone, IN_ANY_YEAR),
    zone: shop.zone,
    doubt: certainty.doubt,
    benches: benchStates(shop, now, certainty).map((standing) => {
      const bench = boardBench({ shop, now }, standing, detail);
      return { ...bench, because: [...bench.because, ...(opened.get(bench.id) ?? [])] };
    }),
  };
}

const MINUTE = 60_000;

/** What every bench is told from: the shop and the moment. */
type Known = { shop: Shop; now: Instant };

/**
 * One bench in words. The word `safe` stands nowhere: that an interval has elapsed is what the records say, and no more.
 *
 * Rounds  the end and what is left of it up to the minute; an end of which no minute is left still keeps people out
 */
export function boardBench(known: Known, standing: Standing, detail: BoardDetail): BoardBench {
  const { shop, now } = known;
  const { bench, state, until } = standing;
  const { zone } = shop;
  const today = dayOf(zone, now);
  const isFull = detail === 'full';
  return {
    ...{ id: bench.id, anchor: benchAnchor(bench.id), name: bench.name, state },
    ...(state === 'open' ? openWords(known, standing) : closedWords(known, standing)),
    left: until === null ? null : `${showMinutes((until - now) / MINUTE)} left`,
    because: isFull ? reasonsOf(standing, { zone, today, now }) : [],
    ways: isFull ? waysOutOf(standing, today) : [],
    working: isFull ? figureAddress('bench', bench.id, 'until') : null,
  };
}

function closedWords({ shop: { zone }, now }: Known, { state, until, because, doubt }: Standing) {
  if (doubt === null && because.some((record) => isBeingSprayed(record, now))) {
    return { word: 'KEEP OUT, being sprayed', when: null };
  }
  if (state === 'unknown' || until === null) return { word: 'KEEP OUT (not known)', when: null };
  return { word: 'KEEP OUT', when: `until ${showDayUntil(until, zone)}` };
}

function openWords({ shop, now }: Known, { bench }: Standing) {
  const at = elapsedAt(shop, bench, now);
  if (at === null) return { word: 'Nothing recorded', when: null };
  return { word: 'Interval elapsed', when: `${showDayUntil(at, shop.zone)}, as recorded` };
}
