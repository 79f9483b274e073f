import 'server-only';
import type { Instant } from '@/shared/time/instant';
import type { Rows } from './database';
import type { ContainerAt } from './movements';
import { nextLine } from './next-line';
import { small, toStored, toWhole } from './whole';
import type { Stamp } from './writer';

/** What may happen to a container besides its movements: opened, found shut after all, moved, its printed day corrected. */
export type ChangeKind = 'opened' | 'shut' | 'moved' | 'dated';

/** A change that is to be recorded: what counts from now on, a day or a place; null for none. */
export type Changing = ContainerAt & { kind: ChangeKind; is: string | null; occurredAt: Instant; reason?: string };

const COLUMNS = { opened: 'openedOn', shut: 'openedOn', moved: 'keptIn', dated: 'expiresOn' } as const;

/**
 * The one writer of what happens to a container besides its movements: the line in its history, and the column of its
 * row that holds what counts now.
 */
export async function changeContainer(rows: Rows, stamp: Stamp, changing: Changing): Promise<void> {
  const { lotId, place, kind, is } = changing;
  const where = { shopId_lotId_place: { shopId: stamp.shopId, lotId, place } };
  const column = COLUMNS[kind];
  const before = await rows.container.findUniqueOrThrow({ where });
  await addLines(rows, stamp, [{ ...changing, was: before[column] }]);
  await rows.container.update({ where, data: { [column]: is } });
}

/** Note of containers that come in opened that they are: their rows say so from the first. */
export const noteOpened = (rows: Rows, stamp: Stamp, opened: readonly Omit<Changing, 'kind'>[]): Promise<void> =>
  addLines(
    rows,
    stamp,
    opened.map((one) => ({ ...one, kind: 'opened' as const, was: null })),
  );

async function addLines(rows: Rows, stamp: Stamp, lines: readonly (Changing & { was: string | null })[]) {
  if (lines.length === 0) return;
  const { shopId, commandId, actor } = stamp;
  stamp.touched.add(
    'lots',
    lines.map(({ lotId }) => lotId),
  );
  const recordedAt = toStored(stamp.recordedAt);
  const first = toWhole(await nextLine(rows, shopId));
  await rows.containerChange.createMany({
    data: lines.map(({ lotId, place, kind, was, is, occurredAt, reason = null }, index) => ({
      ...{ shopId, lotId, place, number: small(first + index), kind, was, is },
      ...{ occurredAt: toStored(occurredAt), recordedAt, actor, commandId, reason },
    })),
  });
}
