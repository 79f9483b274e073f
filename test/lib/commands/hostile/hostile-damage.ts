import { acceptRecords } from '@/lib/commands/accept-records';
import { acceptRows } from '@/lib/commands/accept-rows';
import { putRight } from '@/lib/commands/put-right';
import { withConfirmation } from '@/lib/confirmation';
import { shownRows } from '@/lib/data/accept-rows';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { recordsOfShop } from '@/lib/data/records-of-file';
import { askThrough } from '@/lib/data/seal-records';
import { sha256 } from '@/lib/data/sha256';
import { seenFaults } from '@/lib/engine/record/chain';
import type { Outcome } from '@/shared/outcome';
import { CLOCK } from '../../data/fresh-database';
import type { Fields } from './hostile-values';

const sent = (shopId: string) => ({ commandId: newId(), shopId });

/** Another hash in the last line of the chain, past the guard of the table. */
async function breakChain(shopId: string): Promise<string> {
  const { writer, reader } = await database();
  const triggers = await writer.$queryRawUnsafe<{ name: string; sql: string }[]>(
    "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'RecordSeal'",
  );
  for (const { name } of triggers) await writer.$executeRawUnsafe(`DROP TRIGGER "${name}"`);
  await writer.$executeRawUnsafe(
    `UPDATE "RecordSeal" SET "hash" = lower(hex(randomblob(32)))
     WHERE "shopId" = ? AND "number" = (SELECT max("number") FROM "RecordSeal" WHERE "shopId" = ?)`,
    ...[shopId, shopId],
  );
  for (const { sql } of triggers) await writer.$executeRawUnsafe(sql);
  return seenFaults((await recordsOfShop(askThrough(reader), shopId)).faults, sha256);
}

/** Puts right, or accepts, what was damaged just before, with fields of the fuzzer's choice. */
export const DAMAGE: Record<string, (any: Fields, shopId: string) => Promise<Outcome<unknown>>> = {
  'accept-records': async (any, shopId) => {
    const said = { ...sent(shopId), seen: any.text(await breakChain(shopId)), reason: any.text('looked') };
    const accept = () => acceptRecords(said, CLOCK);
    const asked = await accept();
    const token = !asked.ok && asked.refusal.code === 'opens-earlier' ? asked.refusal.token : '';
    return withConfirmation({ token, reason: 'looked' }, accept);
  },
  'accept-rows': async (any, shopId) => {
    const { accepting, writer } = await database();
    await writer.rowSeal.deleteMany({ where: { tableName: 'Supplier', shopId } });
    const seen = shownRows(await accepting.seen(shopId));
    const said = { ...sent(shopId), seen: any.text(seen), reason: any.text('looked') };
    const accept = () => acceptRows(said, CLOCK);
    const asked = await accept();
    const token = !asked.ok && asked.refusal.code === 'opens-earlier' ? asked.refusal.token : '';
    const outcome = await withConfirmation({ token, reason: 'looked' }, accept);
    const found = outcome.ok ? [] : await accepting.seen(shopId);
    await writer.$transaction((rows) => accepting.seal(rows, found));
    return outcome;
  },
  'put-right': async (any, shopId) => {
    const { writer } = await database();
    const where = { shopId_id: { shopId, id: 's' } };
    const before = await writer.supplier.findUniqueOrThrow({ where, select: { name: true } });
    await writer.supplier.update({ where, data: { name: 'a\tb' } });
    const values = [{ path: 'name', is: any.text('Supplier') }];
    const outcome = await putRight(
      { ...sent(shopId), list: 'suppliers', id: any.id('s'), values, reason: any.text('looked') },
      CLOCK,
    );
    if (!outcome.ok) await writer.supplier.update({ where, data: before });
    return outcome;
  },
};
