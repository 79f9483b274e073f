import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';

type Turn = { program: string; on: Day };

/**
 * The line that says that a planned spraying is done by a record. A spraying that was moved stays where it was moved to:
 * benches that are still open are due from then on.
 */
export function doneChange(file: ShopFile, { program, on }: Turn, application: string) {
  const before = file.programs.find(({ id }) => id === program)?.changes.find((change) => change.on === on);
  const place = { movedTo: before?.movedTo ?? null, startTime: before?.startTime ?? null };
  return { program, change: { on, kind: 'done' as const, application, ...place, reason: null } };
}
