import 'server-only';
import { showMinutes } from '@/shared/measure/show';
import type { ShopFile } from '@/shared/shop-file/contract';
import { IN_ANY_YEAR, showDayUntil, showInstant } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { workingLinks } from '../data/shared-links';
import { reiOf } from '../engine/keepout/reopening';
import type { Application } from '../engine/shop';
import { benchAnchor } from './bench-anchor';
import type { Standing } from './bench-states';
import { type House, houseNow } from './house';
import { reasonsOf } from './keep-out-words';
import { type SquareCode, squareCode } from './square-code';

/** What is hung up at a bench that people keep out of. Paper learns nothing later, so it never says more than until when. */
export type Notice = {
  id: string;
  bench: string;
  place: string | null;
  /** With weekday, date and year; null when nobody knows. */
  until: string | null;
  applied: Applied[];
  /** Why it is not known until when. */
  because: string[];
  /** What the square code opens: the live state. */
  live: string;
  square: SquareCode;
};

type Applied = { id: string; recipe: string; products: string[]; from: string; to: string; interval: string };

export type NoticesScreen = {
  sheet: 'letter' | 'a4';
  printedAt: string;
  shop: { name: string; zone: string; contact: string | null; address: string | null };
  notices: Notice[];
  /** What was asked for and needs no notice now. */
  open: string | null;
};

/**
 * Notices for the benches that people keep out of now, one sheet each.
 *
 * Takes   the bench that is asked for, or null for every closed one; where the shop is reached, such as http://127.0.0.1:3000
 * Gives   null when there is no shop, or no such bench
 */
export async function noticesScreen(
  clock: Clock,
  asked: { bench: string | undefined; sheet: string | undefined },
  origin: string,
): Promise<NoticesScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { shop, file, now, benches } = house;
  const chosen = asked.bench === undefined ? benches : benches.filter(({ bench }) => bench.id === asked.bench);
  if (asked.bench !== undefined && chosen.length === 0) return null;
  const live = await liveBoard(house.id, origin);
  const usual = shop.units === 'us' ? 'letter' : 'a4';
  return {
    sheet: asked.sheet === 'letter' || asked.sheet === 'a4' ? asked.sheet : usual,
    printedAt: showInstant(now, shop.zone, IN_ANY_YEAR),
    shop: {
      ...{ name: shop.name, zone: shop.zone },
      ...{ contact: file.shop.contact ?? null, address: file.shop.address ?? null },
    },
    notices: chosen.filter(({ state }) => state !== 'open').map((standing) => noticeOf(house, standing, live)),
    open: asked.bench === undefined ? null : (chosen.find(({ state }) => state === 'open')?.bench.name ?? null),
  };
}

/** The board for everybody where the shop has a link for it; else its own. */
async function liveBoard(shopId: string, origin: string): Promise<string> {
  const link = (await workingLinks(shopId)).findLast(({ kind }) => kind === 'board');
  return `${origin}${link ? `/board/${link.token}` : '/keep-out'}`;
}

function noticeOf({ shop, file, ways, now }: House, standing: Standing, board: string): Notice {
  const { bench, until, because } = standing;
  const live = `${board}#${benchAnchor(bench.id)}`;
  return {
    ...{ id: bench.id, bench: bench.name, place: bench.place, live, square: squareCode(live) },
    until: until === null ? null : showDayUntil(until, shop.zone, IN_ANY_YEAR),
    applied: because.map((record) => appliedOf(file, record, shop.zone)),
    because: until === null ? reasonsOf(standing, { ...ways, now }) : [],
  };
}

function appliedOf(file: ShopFile, record: Application, zone: House['shop']['zone']): Applied {
  const { id, recipe, startedAt, endedAt } = record;
  const rei = reiOf(record);
  const noted = file.applications.find((one) => one.id === id)?.products ?? [];
  return {
    ...{ id, recipe: recipe.name },
    products: recipe.ingredients.map(({ product }) => {
      const then = noted.find((line) => line.product === product.id);
      const registration = then?.registration ?? product.label.registration;
      const details = [then?.actives, registration && `reg. no. ${registration}`].filter(Boolean).join(', ');
      return `${then?.name ?? product.name}${details && ` (${details})`}`;
    }),
    from: showInstant(startedAt, zone, IN_ANY_YEAR),
    to: endedAt === null ? 'no end noted' : showDayUntil(endedAt, zone, IN_ANY_YEAR),
    interval: rei === null ? 'not known' : showMinutes(rei),
  };
}
