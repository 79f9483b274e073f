import type { Sealable } from '@/lib/engine/record/seal-text';
import { partsOf } from './by-owner';
import type { Pace } from './pace';
import { type Ask, sealableIn } from './sealed-rows';

/**
 * Everything of a shop that ought to be sealed, in parts with a pause between them, and in the same order.
 *
 * Takes    how long the reading may go on without a pause
 */
export async function allSealableIn(ask: Ask, shopId: string, { few, pause }: Pace): Promise<Sealable[]> {
  if (few === null) return sealableIn(ask, { shopId, applications: null });
  const ids = await ask(RECORDS, shopId, shopId);
  const found: Sealable[] = [];
  for (const some of partsOf(ids, few)) {
    await pause();
    found.push(...(await sealableIn(ask, { shopId, applications: some.map(({ id }) => String(id)) })));
  }
  const isVersion = ({ kind }: Sealable) => kind === 'version';
  return [...found.filter(isVersion), ...found.filter((thing) => !isVersion(thing))];
}

/** Every record of which there is a version or a confirmation, the record itself there or gone. */
const RECORDS = `SELECT CAST(its."applicationId" AS TEXT) AS id, (SELECT "position" FROM "Application"
    WHERE "shopId" = its."shopId" AND "id" = its."applicationId") AS position FROM
  (SELECT "shopId", "applicationId" FROM "ApplicationVersion" WHERE "shopId" = ?
    UNION SELECT "shopId", "applicationId" FROM "AmendmentConfirmation" WHERE "shopId" = ?) AS its ORDER BY position`;
