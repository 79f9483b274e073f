import Sqlite from 'better-sqlite3';
import { sealAll } from '@/lib/data/row-seals';

/** Give a closed shop a long ledger: draws from one bottle, each taken back. All rows are sealed anew. */
export function withMovements(file: string, count: number): void {
  const raw = new Sqlite(file);
  raw.exec(`
    WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${count}),
      one AS (SELECT * FROM "Movement" WHERE "fromSide" = 'supplier' LIMIT 1),
      last AS (SELECT max("number") AS number FROM "Movement")
    INSERT INTO "Movement" ("shopId", "id", "number", "lotId", "place", "kind", "fromSide", "toSide", "amount",
      "occurredAt", "recordedAt", "actor", "commandId")
    SELECT one."shopId", 'many ' || i, last.number + i, one."lotId", one."place", 'counted',
      iif(i % 2, 'container', 'count'), iif(i % 2, 'count', 'container'), 1000 + i / 2,
      one."occurredAt" + i, one."recordedAt" + i, 'Ada', 'many' FROM n, one, last`);
  sealAll(raw, []);
  raw.close();
}
