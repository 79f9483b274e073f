import 'server-only';
import { z } from 'zod';
import type { Ledgered } from '@/lib/engine/ledger/decide';
import type { Movement } from '@/lib/engine/ledger/movement';
import type { Micros } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import type { ChangeKind } from './container-changes';
import { database, type Rows } from './database';
import { standingLots } from './lot-rows';
import { type ContainerAt, containerAt } from './movements';
import { toInstant, toWhole } from './whole';

/** What every line of a ledger says besides what it did. */
type Written = {
  /** Its number among all lines of the shop's books, in the order in which they were written. */
  number: number;
  occurredAt: Instant;
  recordedAt: Instant;
  actor: string;
  reason: string | null;
};

/** One line in the history of a container: a movement, or something else that happened to it. */
export type HistoryLine = Written &
  (
    | { movement: Movement; applicationId: string | null }
    | { change: ChangeKind; was: string | null; is: string | null }
  );

/** A container with everything that ever happened to it. */
export type History = {
  /** What the shop file calls it just now. */
  lot: string;
  place: number;
  /** How many came in its lot. */
  count: number;
  paid: Micros | null;
  ledger: Ledgered;
  /** In the order in which they were written. */
  lines: HistoryLine[];
};

/** Everything that ever happened to a container, from one read; null when there is none. */
export async function historyOf(shopId: string, at: ContainerAt): Promise<History | null> {
  const { reader } = await database();
  return reader.$transaction((rows) => readHistory(rows, shopId, at));
}

async function readHistory(rows: Rows, shopId: string, at: ContainerAt): Promise<History | null> {
  const container = await containerAt(rows, shopId, at);
  const standing = (await standingLots(rows, shopId, at.lotId)).filter(({ lotId }) => lotId === at.lotId);
  const named = standing.flatMap(({ part }) =>
    part.containers.map((one, place) => ({ ...one, lot: part.id, name: place })),
  );
  const self = named.find(({ place }) => place === at.place);
  if (!container || !self) return null;
  const where = { shopId, ...at };
  const written = await rows.movement.findMany({ where, orderBy: { number: 'asc' } });
  const byId = new Map(container.ledger.movements.map((movement) => [movement.id, movement]));
  const moves = written.flatMap((row): HistoryLine[] => {
    const movement = byId.get(row.id);
    return movement ? [{ ...writtenOf(row), movement, applicationId: row.applicationId }] : [];
  });
  const changes = (await rows.containerChange.findMany({ where })).map((row): HistoryLine => {
    return { ...writtenOf(row), change: Kind.parse(row.kind), was: row.was, is: row.is };
  });
  return {
    ...{ lot: self.lot, place: self.name, count: named.length, paid: self.paid, ledger: container.ledger },
    lines: [...moves, ...changes].sort((a, b) => a.number - b.number),
  };
}

const Kind = z.enum(['opened', 'shut', 'moved', 'dated']);

type Row = { number: bigint | number; occurredAt: bigint; recordedAt: bigint; actor: string; reason: string | null };

const writtenOf = ({ number, occurredAt, recordedAt, actor, reason }: Row): Written => ({
  ...{ number: Number(number), actor, reason },
  occurredAt: toInstant(occurredAt),
  recordedAt: toInstant(recordedAt),
});

/** What reading an amount of a container needs: how it is measured, and what it holds. Null when there is none. */
export async function measuresOf(shopId: string, at: ContainerAt) {
  const { reader } = await database();
  const row = await reader.container.findUnique({
    where: { shopId_lotId_place: { shopId, ...at } },
    include: { lot: { include: { product: true, shop: { select: { timeZone: true, units: true } } } } },
  });
  if (!row) return null;
  const { product, shop, pack } = row.lot;
  const form: 'liquid' | 'powder' = product.form === 'powder' ? 'powder' : 'liquid';
  const { densityGPerMl, gramsPerTeaspoon } = product;
  return {
    kept: { form, densityGPerMl, gramsPerTeaspoon },
    size: toWhole(pack),
    timeZone: shop.timeZone,
    units: shop.units,
  };
}
