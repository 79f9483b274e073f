import 'server-only';
import { z } from 'zod';
import type { Ledgered } from '@/lib/engine/ledger/decide';
import type { Movement } from '@/lib/engine/ledger/movement';
import type { Day } from '@/shared/time/day';
import { byOwner, inParts, keyOf } from './by-owner';
import type { Rows } from './database';
import { insertMany } from './insert-many';
import { nextLine } from './next-line';
import { asDay, toInstant, toStock, toStored } from './whole';
import type { Stamp } from './writer';

/** Which container: its lot, and its place in it from 0. */
export type ContainerAt = { lotId: string; place: number };

/** A movement of a container that is to be recorded. */
export type Recording = ContainerAt & { movement: Movement; applicationId?: string; reason?: string };

/**
 * The one writer of the ledger: record movements after all that came before.
 *
 * Takes    movements that the engine decided, in the order in which they happened to be decided
 */
export async function recordMovements(rows: Rows, stamp: Stamp, recordings: readonly Recording[]): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  stamp.touched.add(
    'lots',
    recordings.map(({ lotId }) => lotId),
  );
  const recordedAt = toStored(stamp.recordedAt);
  const first = await nextLine(rows, shopId);
  await insertMany(
    rows,
    'Movement',
    recordings.map(({ lotId, place, movement, applicationId = null, reason = null }, index) => ({
      ...{ shopId, id: movement.id, number: first + BigInt(index), lotId, place, kind: movement.kind },
      ...{ fromSide: movement.from, toSide: movement.to, amount: toStored(movement.amount) },
      ...{ occurredAt: toStored(movement.occurredAt), recordedAt, actor, commandId },
      ...{ reversesId: movement.reverses, applicationId, reason },
    })),
  );
}

/** What a container's row and its ledger say. */
export type ContainerStanding = ContainerAt & {
  ledger: Ledgered;
  openedOn: Day | null;
  expiresOn: Day | null;
  keptIn: string | null;
};

/** A container with its movements, as the ledger decides on it. Null when there is no such container in the shop. */
export async function containerAt(rows: Rows, shopId: string, at: ContainerAt): Promise<ContainerStanding | null> {
  if (!Number.isInteger(at.place) || at.place < 0 || at.place > LAST_PLACE) return null;
  const where = { shopId, ...at };
  const container = await rows.container.findUnique({ where: { shopId_lotId_place: where }, include: OF_WHAT });
  if (!container) return null;
  return standingOf(container, await rows.movement.findMany({ where, orderBy: { number: 'asc' } }));
}

/** The containers of some lots with their movements, read at once. */
export async function containersOf(
  rows: Rows,
  shopId: string,
  lotIds: readonly string[],
): Promise<(at: ContainerAt) => ContainerStanding | null> {
  const standing = new Map<string, ContainerStanding>();
  for (const some of inParts(lotIds)) {
    const where = { shopId, lotId: { in: [...some] } };
    const found = await rows.movement.findMany({ where, orderBy: { number: 'asc' } });
    const movements = byOwner(found, ({ lotId, place }) => keyOf(lotId, place));
    for (const container of await rows.container.findMany({ where, include: OF_WHAT })) {
      const key = keyOf(container.lotId, container.place);
      standing.set(key, standingOf(container, movements(key)));
    }
  }
  return ({ lotId, place }) => standing.get(keyOf(lotId, place)) ?? null;
}

/** No lot holds as many containers as this, and no column a larger number. */
const LAST_PLACE = 1_000_000;

const OF_WHAT = { lot: { include: { product: { select: { form: true } } } } } as const;

type ContainerRow = Omit<NonNullable<Awaited<ReturnType<Rows['container']['findUnique']>>>, 'paid'> & {
  lot: { pack: bigint; receivedOn: string; product: { form: string } };
};

const standingOf = (
  { lotId, place, openedOn, expiresOn, keptIn, lot }: ContainerRow,
  movements: MovementRow[],
): ContainerStanding => ({
  ...{ lotId, place, keptIn },
  openedOn: dayOrNull(openedOn),
  expiresOn: dayOrNull(expiresOn),
  ledger: {
    form: Form.parse(lot.product.form),
    size: toStock(lot.pack),
    receivedOn: asDay(lot.receivedOn),
    movements: movements.map(movementOf),
  },
});

/** Which container a movement is of. */
export const spotOf = (rows: Rows, shopId: string, movementId: string): Promise<ContainerAt | null> =>
  rows.movement.findUnique({
    where: { shopId_id: { shopId, id: movementId } },
    select: { lotId: true, place: true },
  });

const dayOrNull = (text: string | null): Day | null => (text === null ? null : asDay(text));

const Form = z.enum(['liquid', 'powder']);
const Side = z.enum(['supplier', 'container', 'spray', 'waste', 'count']);
const Kind = z.enum(['received', 'drawn', 'counted', 'discarded', 'reversed']);

type MovementRow = NonNullable<Awaited<ReturnType<Rows['movement']['findUnique']>>>;

/** A stored movement as the ledger counts with it. */
export const movementOf = ({ id, kind, fromSide, toSide, amount, occurredAt, reversesId }: MovementRow): Movement => ({
  id,
  kind: Kind.parse(kind),
  from: Side.parse(fromSide),
  to: Side.parse(toSide),
  amount: toStock(amount),
  occurredAt: toInstant(occurredAt),
  reverses: reversesId,
});
