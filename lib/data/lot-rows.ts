import 'server-only';
import { plainMoney, plainStock } from '@/lib/engine/exchange/plain-text';
import { type LotContainer, type LotPart, paidFor, parentOf, partsOf } from '@/lib/engine/exchange/split-lots';
import { Prisma } from '@/prisma/generated/client';
import type { Stock } from '@/shared/quantity/amounts';
import { byOwner, keyOf } from './by-owner';
import type { Rows } from './database';
import { AT_ONCE, type Pace } from './pace';
import { UNREADABLE } from './readable-cells';
import { asDay, asMicros, asStock } from './whole';

/** A lot as it stands in the shop file, with the containers that it tells of. */
export type StandingLot = {
  part: LotPart;
  lotId: string;
  productId: string;
  form: 'liquid' | 'powder';
  packText: string;
  size: Stock;
  receivedOn: string;
  orderId: string | null;
  offerId: string | null;
};

/**
 * The lots of a shop as its file tells them, out of the sums of their movements.
 *
 * Takes    the ids of lots as they came in, when only what stands under those is wanted
 */
export async function lotsOf(rows: Rows, shopId: string, only: ReadonlySet<string> | null, pace: Pace = AT_ONCE) {
  const lots = only === null ? await standingLots(rows, shopId, undefined, pace) : await lotsUnder(rows, shopId, only);
  return lots.map(({ part, productId, form, packText, size, receivedOn, orderId, offerId }) => {
    const [first] = part.containers;
    const paid = paidFor(part);
    return {
      id: part.id,
      product: productId,
      pack: packText,
      count: part.containers.length,
      remaining: !first || first.remaining === size ? null : levelText(first.remaining, form),
      paid: paid === null ? null : plainMoney(paid),
      receivedOn,
      openedOn: first?.openedOn ?? null,
      expiresOn: first?.expiresOn ?? null,
      keptIn: first?.keptIn ?? null,
      ...{ order: orderId, offer: offerId },
    };
  });
}

/** No level becomes a text that the contract refuses, so that the lot is told as one that cannot be read. */
const levelText = (level: Stock, form: StandingLot['form']): string =>
  Number.isNaN(level) ? `${UNREADABLE}a movement in its ledger that cannot be read` : plainStock(level, form);

async function lotsUnder(rows: Rows, shopId: string, ids: ReadonlySet<string>): Promise<StandingLot[]> {
  if (ids.size > FEW) return (await standingLots(rows, shopId)).filter(({ lotId }) => ids.has(lotId));
  const found: StandingLot[] = [];
  for (const id of ids) found.push(...(await standingLots(rows, shopId, id)).filter(({ lotId }) => lotId === id));
  return found;
}

/** More lots than these are read together with all others. */
const FEW = 20;

/**
 * The same with their containers, for whoever writes to them.
 *
 * Takes    the id of a lot or of a part of one, when only what may stand under it is wanted
 */
export async function standingLots(rows: Rows, shopId: string, under?: string, pace = AT_ONCE): Promise<StandingLot[]> {
  const lots = await rows.lot.findMany({
    where: {
      shopId,
      ...(under === undefined ? {} : { OR: [{ id: under }, { id: { startsWith: parentOf(under) ?? under } }] }),
    },
    orderBy: { position: 'asc' },
  });
  const mine = { shopId, lotId: under === undefined ? undefined : { in: lots.map(({ id }) => id) } };
  const containersOf = byOwner(
    await rows.container.findMany({ where: mine, orderBy: { place: 'asc' } }),
    ({ lotId }) => lotId,
  );
  const powders = await rows.product.findMany({ where: { shopId, form: 'powder' }, select: { id: true } });
  const isPowder = new Set(powders.map(({ id }) => id));
  await pace.pause();
  const left = await balances(rows, mine);
  await pace.pause();
  const ids = new Set((await rows.lot.findMany({ where: { shopId }, select: { id: true } })).map(({ id }) => id));
  return lots.flatMap(({ id: lotId, productId, packText, pack, receivedOn, orderId, offerId }) => {
    const size = asStock(pack);
    const standing = containersOf(lotId).map(
      ({ place, paid, openedOn, expiresOn, keptIn }): LotContainer => ({
        place,
        remaining: left(lotId, place),
        paid: paid === null ? null : asMicros(paid),
        openedOn: openedOn === null ? null : asDay(openedOn),
        expiresOn: expiresOn === null ? null : asDay(expiresOn),
        keptIn,
      }),
    );
    const form = isPowder.has(productId) ? 'powder' : 'liquid';
    return partsOf({ id: lotId, size }, standing, (id) => ids.has(id)).map((part) => {
      return { part, lotId, productId, form, packText, size, receivedOn, orderId, offerId };
    });
  });
}

type Mine = { shopId: string; lotId: { in: string[] } | undefined };

/** A level that nobody can work out, since a movement of the container cannot be read. */
const NO_LEVEL = Number.NaN as Stock;

/** Every side that a movement goes from or to. The sums would pass over any other without a word. */
const SIDES = Prisma.sql`('supplier', 'container', 'spray', 'waste', 'count')`;

/**
 * What is left in each container of a shop: what came into it less what left it, summed by the database. No level where
 * a movement has an amount that is no whole number, or goes from or to no known side.
 */
async function balances(rows: Rows, { shopId, lotId }: Mine): Promise<(lotId: string, place: number) => Stock> {
  if (lotId?.in.length === 0) return () => NO_LEVEL;
  const only = lotId ? Prisma.sql`AND "lotId" IN (${Prisma.join(lotId.in)})` : Prisma.empty;
  const whole = Prisma.sql`CAST("amount" AS BIGINT)`;
  const sums = await rows.$queryRaw<{ lotId: unknown; place: unknown; left: unknown; odd: unknown }[]>`
    SELECT "lotId", "place",
      CAST(SUM(CASE WHEN "toSide" = 'container' THEN ${whole} ELSE 0 END)
        - SUM(CASE WHEN "fromSide" = 'container' THEN ${whole} ELSE 0 END) AS TEXT) AS "left",
      CAST(SUM(CASE WHEN CAST("amount" AS TEXT) = CAST(${whole} AS TEXT)
        AND "toSide" IN ${SIDES} AND "fromSide" IN ${SIDES} THEN 0 ELSE 1 END) AS TEXT) AS "odd"
    FROM "Movement" WHERE "shopId" = ${shopId} ${only} GROUP BY "lotId", "place"`;
  const bySpot = new Map(
    sums.map(({ lotId, place, left, odd }) => [
      keyOf(String(lotId), Number(place)),
      odd === '0' ? (Number(left) as Stock) : NO_LEVEL,
    ]),
  );
  // Less than nothing is no amount, and the contract says so of this lot alone.
  return (lotId, place) => bySpot.get(keyOf(lotId, place)) ?? NONE;
}

const NONE = 0 as Stock;
