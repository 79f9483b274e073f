import 'server-only';
import { partsOf } from './by-owner';
import type { Rows } from './database';
import type { Pace } from './pace';
import { type RecordVersion, versionsIn } from './record-versions';

/**
 * Every version of every record of a shop, read in parts with a pause between them. Versions of records that are gone are
 * among them.
 *
 * Takes    how long the reading may go on without a pause
 */
export async function allVersionsIn(rows: Rows, shopId: string, { few, pause }: Pace): Promise<RecordVersion[]> {
  if (few === null) return versionsIn(rows, shopId);
  const found: RecordVersion[] = [];
  for (const ids of partsOf(await recordsInOrder(rows, shopId), few)) {
    await pause();
    found.push(...(await versionsIn(rows, shopId, ids)));
  }
  return found;
}

/** The ids of all records in the order of the shop; first those of records that are gone, whose versions are still there. */
async function recordsInOrder(rows: Rows, shopId: string): Promise<string[]> {
  const versions = await rows.$queryRaw<{ id: unknown }[]>`
    SELECT DISTINCT "applicationId" AS "id", "Application"."position" AS "position" FROM "ApplicationVersion"
      LEFT JOIN "Application" ON "Application"."shopId" = "ApplicationVersion"."shopId"
        AND "Application"."id" = "ApplicationVersion"."applicationId"
      WHERE "ApplicationVersion"."shopId" = ${shopId} ORDER BY "position"`;
  return versions.map(({ id }) => String(id));
}
