import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readClockTime } from '@/shared/time/clock-time';
import { keyOf } from './by-owner';
import type { Rows } from './database';
import { parsed, type Saving } from './saving';
import { small, toStored } from './whole';
import type { Stamp } from './writer';

type FileProgram = ShopFile['programs'][number];
type FileChange = FileProgram['changes'][number];

/** Save what became of single sprayings, as programs of a file tell it. */
export const saveChanges = (rows: Rows, stamp: Stamp, programs: Saving<FileProgram>[]): Promise<void> =>
  recordChanges(
    rows,
    stamp,
    programs.flatMap(({ item }) => item.changes.map((change) => ({ program: item.id, change }))),
  );

/**
 * The one writer of what became of single sprayings: a further line for each that is not as the last one has it. None
 * is ever rewritten.
 */
export async function recordChanges(
  rows: Rows,
  stamp: Stamp,
  changes: { program: string; change: FileChange }[],
): Promise<void> {
  if (changes.length === 0) return;
  const { shopId, commandId, actor } = stamp;
  const programs = [...new Set(changes.map(({ program }) => program))];
  stamp.touched.add('programs', programs);
  const lines = await rows.sprayingChange.findMany({
    where: { shopId, programId: { in: programs } },
    orderBy: { number: 'asc' },
  });
  const newest = new Map(lines.map((line) => [keyOf(line.programId, line.plannedOn), line]));
  const fresh = changes.flatMap(({ program, change }) => {
    const before = newest.get(keyOf(program, change.on));
    const columns = changeColumns(change);
    if (before && isSame(before, columns)) return [];
    const keys = { shopId, programId: program, plannedOn: change.on, number: small((before?.number ?? 0) + 1) };
    return [{ ...keys, ...columns, actor, commandId, recordedAt: toStored(stamp.recordedAt) }];
  });
  await rows.sprayingChange.createMany({ data: fresh });
}

const changeColumns = ({ kind, movedTo, startTime, application, reason }: FileChange) => ({
  kind,
  movedToOn: movedTo,
  movedToMinute: startTime === null ? null : small(parsed(readClockTime(startTime))),
  applicationId: application,
  reason,
});

type Columns = ReturnType<typeof changeColumns>;

const isSame = (before: Omit<Columns, 'kind'> & { kind: string }, columns: Columns): boolean =>
  before.kind === columns.kind &&
  before.movedToOn === columns.movedToOn &&
  before.movedToMinute === columns.movedToMinute &&
  before.applicationId === columns.applicationId &&
  before.reason === columns.reason;
