import 'server-only';
import { minus, type Stock, stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { byOwner, keyOf } from './by-owner';
import { database, type Rows } from './database';
import type { ContainerAt } from './movements';
import { toStock } from './whole';

/** A container as the books had it before a record was written. */
type StoodThen = ContainerAt & { remaining: Stock; openedOn: Day | null; expiresOn: Day | null };

/** The recipe that a mix was made by, line by line as it was written then, and the bottles of its products before it. */
export type BooksBefore = {
  ingredients: { product: string; dose: string; use: string | null; order: number | null }[];
  containers: StoodThen[];
};

/**
 * The books as they stood before a mix was finished: what every container of its products held then, and which were open.
 *
 * Gives    null for a record that drew nothing from these books when it was written, such as one out of a file: nobody
 *          can say what stood there before it
 */
export async function booksBefore(shopId: string, applicationId: string): Promise<BooksBefore | null> {
  const { reader } = await database();
  return reader.$transaction(async (rows) => {
    const record = await rows.applicationVersion.findFirst({
      where: { shopId, applicationId, number: 1 },
      select: { commandId: true, recipeId: true, recipeNumber: true },
    });
    const first = record && (await firstLine(rows, shopId, applicationId, record.commandId));
    if (!record || first === null) return null;
    const ingredients = await rows.ingredient.findMany({
      where: { shopId, recipeId: record.recipeId, number: record.recipeNumber },
      orderBy: { position: 'asc' },
    });
    const products = [...new Set(ingredients.map(({ productId }) => productId))];
    return {
      ingredients: ingredients.map(({ productId, dose, use, order }) => ({ product: productId, dose, use, order })),
      containers: await standingBefore(rows, shopId, products, first),
    };
  });
}

/** The first line that a finished mix wrote into the ledger, which may be a count or an opening before its first draw. */
async function firstLine(rows: Rows, shopId: string, applicationId: string, commandId: string): Promise<bigint | null> {
  const drew = await rows.movement.count({ where: { shopId, applicationId, commandId } });
  if (drew === 0) return null;
  const where = { shopId, commandId };
  const moved = await rows.movement.aggregate({ where, _min: { number: true } });
  const changed = await rows.containerChange.aggregate({ where, _min: { number: true } });
  const [line, change] = [moved._min.number, changed._min.number];
  if (line === null) return null;
  return change !== null && BigInt(change) < line ? BigInt(change) : line;
}

async function standingBefore(rows: Rows, shopId: string, products: string[], line: bigint): Promise<StoodThen[]> {
  const lots = await rows.lot.findMany({ where: { shopId, productId: { in: products } }, select: { id: true } });
  const mine = { shopId, lotId: { in: lots.map(({ id }) => id) } };
  const containers = await rows.container.findMany({ where: mine });
  const movements = byOwner(await rows.movement.findMany({ where: { ...mine, number: { lt: line } } }), spotOf);
  const later = { ...mine, number: { gte: Number(line) } };
  const changes = byOwner(await rows.containerChange.findMany({ where: later, orderBy: { number: 'asc' } }), spotOf);
  return containers.flatMap((container): StoodThen[] => {
    const its = movements(spotOf(container));
    // Whatever came later was not there to be poured from.
    if (its.length === 0) return [];
    const undone = changes(spotOf(container));
    const before = (kinds: string[], now: string | null) => {
      const change = undone.find(({ kind }) => kinds.includes(kind));
      const text = change ? change.was : now;
      return text === null ? null : Day.parse(text);
    };
    return [
      {
        ...{ lotId: container.lotId, place: container.place, remaining: heldAfter(its) },
        openedOn: before(['opened', 'shut'], container.openedOn),
        expiresOn: before(['dated'], container.expiresOn),
      },
    ];
  });
}

const spotOf = ({ lotId, place }: ContainerAt): string => keyOf(lotId, place);

function heldAfter(movements: readonly { toSide: string; amount: bigint }[]): Stock {
  let [came, went] = [0, 0];
  for (const { toSide, amount } of movements) {
    if (toSide === 'container') came += toStock(amount);
    else went += toStock(amount);
  }
  return minus(stock(came), stock(went));
}
