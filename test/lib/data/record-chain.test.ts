import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { askFile, recordsOfFile, recordsOfShop } from '@/lib/data/records-of-file';
import { sha256 } from '@/lib/data/sha256';
import { demoShop } from '@/lib/demo/demo-shop';
import { NO_HASH, type Seal, type Sealable, sealText } from '@/lib/engine/record/seal-text';
import { sealEarlier } from '@/prisma/seal-earlier';
import { Day } from '@/shared/time/day';
import { figure } from '@/test/promises/figure';
import { runs } from '@/test/runs';
import { smallShop, today } from '../commands/small-shop';
import { parsedOrThrow } from './any-shop-file';
import { CLOCK, freshDatabase } from './fresh-database';

/** How many single bytes are changed: five hundred, or as many as somebody asks for. */
const CHANGES = runs(70, 500);

/**
 * The demo shop's records with everything that a record may say, the first of them amended, and that confirmed. Gives the
 * file and the shop.
 */
async function demoRecords(): Promise<{ file: string; shopId: string }> {
  const file = join(await freshDatabase(), 'shop.db');
  const demo = parsedOrThrow(demoShop(Day.parse('2026-03-31')));
  const applications = demo.applications.map((one, at) => ({ ...one, ...DETAILS, pH: 5 + at / 100 }));
  const sent = { commandId: 'import', file: { ...demo, applications }, into: { isDemo: true } };
  const outcome = await importShopFile(sent, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  const { shopId } = outcome.value;
  const about = { shopId, application: applications[0]?.id ?? '', reason: 'entered twice' };
  await amendApplication({ ...about, commandId: 'amend', change: { withdrawn: true } }, CLOCK);
  await confirmAmendment({ ...about, commandId: 'confirm', version: 2 }, CLOCK);
  return { file, shopId };
}

const DETAILS = {
  ...{ by: 'Ada', sprayed: '2 gal', leftover: '100 mL', leftoverWent: 'on the yard', conditions: 'calm' },
  ...{ temperatureC: 18.5, crop: 'Ferns', location: '1 Quarry Lane', plants: 'the front half' },
  ...{ mixedAt: '2026-01-01T10:00:00Z', passed: [{ rule: 'too-soon', reason: 'mites' }] },
};

/** The file as somebody with other tools opens it: no triggers, no references, no checks. */
function opened(file: string): Database.Database {
  const database = new Database(file);
  database.pragma('foreign_keys = OFF');
  database.pragma('ignore_check_constraints = ON');
  const triggers = database.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck().all();
  for (const name of triggers) database.exec(`DROP TRIGGER "${name}"`);
  return database;
}

const amendment = { change: { endedAt: '2026-03-31T08:00:00Z' }, reason: 'noted the end' };

test('every version of every record is sealed with what was written, each line with the hash of the line before', async () => {
  const { file } = await demoRecords();
  const [shop] = await recordsOfFile(file);
  expect(shop?.faults).toEqual([]);
  expect(shop?.seals.length).toBeGreaterThan(100);
  expect(shop?.seals).toHaveLength(shop?.things.length ?? 0);
  expect(shop?.seals[0]?.previousHash).toBe(NO_HASH);
  expect(shop?.seals.map(({ number }) => Number(number))).toEqual(shop?.seals.map((_, at) => at + 1));
});

test(`${CHANGES} changes of a single byte are all found, and name the record`, { timeout: 300_000 }, async () => {
  const { file, shopId } = await demoRecords();
  const database = opened(file);
  const random = seeded(20_260_331);
  let found = 0;
  for (let tries = 0; found < CHANGES && tries < CHANGES * 3; tries += 1) {
    database.exec('BEGIN');
    const changed = changeAByte(database, random);
    if (changed) {
      const { faults } = await recordsOfShop(askFile(database), shopId);
      expect({ ...changed, named: faults.some(({ application }) => application === changed.application) }).toEqual({
        ...changed,
        named: true,
      });
      found += 1;
    }
    database.exec('ROLLBACK');
  }
  database.close();
  expect(found).toBe(CHANGES);
  figure(15, `${found} of ${CHANGES} found and named`);
});

/** Numbers that look random and are the same in every run. */
function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const TABLES = [
  ...['ApplicationVersion', 'ApplicationVersion', 'ApplicationBench', 'ApplicationProduct', 'Application'],
  ...['RecordSeal', 'AmendmentConfirmation'],
];

/** Changes one byte of one value of one row. Gives what it was; null when that cannot be, because such a row is there. */
function changeAByte(database: Database.Database, random: (below: number) => number) {
  const table = TABLES[random(TABLES.length)] ?? '';
  const count = Number(database.prepare(`SELECT count(*) FROM "${table}"`).pluck().get());
  const row = database
    .prepare<unknown[], Record<string, unknown>>(`SELECT rowid AS at, * FROM "${table}" LIMIT 1 OFFSET ?`)
    .get(random(count));
  const { at, ...columns } = row ?? {};
  const filled = Object.entries(columns).filter(([, value]) => value !== null && value !== '');
  const [column = '', value] = filled[random(filled.length)] ?? [];
  const bytes = Buffer.from(String(value));
  const place = random(bytes.length);
  bytes[place] =
    typeof value === 'number' ? 48 + ((Number(bytes[place]) - 48 + 1 + random(9)) % 10) : otherByte(bytes[place] ?? 0);
  const is = bytes.toString();
  // 7 and 07 are one number.
  if (typeof value === 'number' && Number(is) === value) return null;
  try {
    database
      .prepare(`UPDATE "${table}" SET "${column}" = ? WHERE rowid = ?`)
      .run(typeof value === 'number' ? Number(is) : is, at);
  } catch {
    return null;
  }
  const application = String(columns.applicationId ?? columns.id).replace('\nconfirmed', '');
  return { table, column, was: value, is, application };
}

const otherByte = (byte: number): number => (byte >= 0x7e || byte < 0x20 ? 0x41 : byte + 1);

test('a version that is taken away, put in, or moved in the chain is named', async () => {
  const shopId = await smallShop();
  await amendApplication({ commandId: '1', shopId, application: 'a', ...amendment }, CLOCK);
  const file = join(process.env.DATA_DIR ?? '', 'shop.db');
  const database = opened(file);
  const faultsAfter = async (...statements: string[]) => {
    database.exec('BEGIN');
    for (const statement of statements) database.exec(statement);
    const { faults } = await recordsOfShop(askFile(database), shopId);
    database.exec('ROLLBACK');
    return faults.map(({ wrong, application, version, seal }) => `${wrong} ${application}/${version} line ${seal}`);
  };
  expect(await faultsAfter()).toEqual([]);
  expect(await faultsAfter('DELETE FROM "ApplicationVersion" WHERE "number" = 2')).toEqual(['missing a/2 line 2']);
  expect(await faultsAfter('DELETE FROM "ApplicationBench" WHERE "number" = 1')).toEqual(['changed a/1 line 1']);
  const columns = database.prepare<unknown[], { name: string }>(
    "SELECT name FROM pragma_table_info('ApplicationVersion')",
  );
  const values = columns.all().map(({ name }) => (name === 'number' ? '3' : `"${name}"`));
  expect(
    await faultsAfter(
      `INSERT INTO "ApplicationVersion" SELECT ${values.join(', ')} FROM "ApplicationVersion" WHERE "number" = 2`,
    ),
  ).toEqual(['unsealed a/3 line null']);
  expect(
    await faultsAfter(
      'DELETE FROM "RecordSeal" WHERE "number" = 1',
      'DELETE FROM "ApplicationVersion" WHERE "number" = 1',
    ),
  ).toEqual(['broken a/2 line 2']);
  database.close();
});

test('a record whose own line was made anew to fit is betrayed by the line after it', async () => {
  const shopId = await smallShop();
  await amendApplication({ commandId: '1', shopId, application: 'a', ...amendment }, CLOCK);
  const database = opened(join(process.env.DATA_DIR ?? '', 'shop.db'));
  database.exec('UPDATE "ApplicationVersion" SET "startedAt" = "startedAt" - 60000 WHERE "number" = 1');
  const { seals, things } = await recordsOfShop(askFile(database), shopId);
  const forged = sha256(sealText(seals[0] as Seal, things[0] as Sealable));
  database.prepare('UPDATE "RecordSeal" SET "hash" = ? WHERE "number" = 1').run(forged);
  expect((await recordsOfShop(askFile(database), shopId)).faults).toMatchObject([{ wrong: 'broken', seal: '2' }]);
  database.close();
});

test('records from before there were seals are sealed at the start, and their lines say so; other shops are left alone', async () => {
  const shopId = await smallShop();
  const file = join(process.env.DATA_DIR ?? '', 'shop.db');
  const database = opened(file);
  expect(await sealEarlier(file, today(10))).toBe(0);
  database.exec('DELETE FROM "RecordSeal"');
  expect((await recordsOfFile(file))[0]?.faults).toMatchObject([{ wrong: 'unsealed', application: 'a' }]);
  expect(await sealEarlier(file, today(10))).toBe(1);
  expect(await sealEarlier(file, today(11))).toBe(0);
  const { things, seals, faults } = await recordsOfShop(askFile(database), shopId);
  expect(faults).toEqual([]);
  expect(sealText(seals[0] as Seal, things[0] as Sealable)).toContain('\nwritten before this was kept\n');
  database.close();
});

test('a column that a later program adds changes no earlier seal, and is sealed once it holds something', async () => {
  const shopId = await smallShop();
  const file = join(process.env.DATA_DIR ?? '', 'shop.db');
  const database = opened(file);
  database.exec('ALTER TABLE "ApplicationVersion" ADD COLUMN "later" TEXT');
  expect((await recordsOfShop(askFile(database), shopId)).faults).toEqual([]);
  database.exec(`UPDATE "ApplicationVersion" SET "later" = 'more'`);
  expect((await recordsOfShop(askFile(database), shopId)).faults).toMatchObject([{ wrong: 'changed' }]);
  database.close();
});

test('the text of a seal is the one that is documented', () => {
  const column = (name: string, kind: 'text' | 'integer' | 'real', value: string) => ({ name, kind, value });
  const thing: Sealable = {
    ...{ application: 'a', version: '1', kind: 'version', recordedAt: '1774947600000' },
    parts: [
      { of: 'version', columns: [column('measuredPh', 'real', '6.1'), column('actor', 'text', 'Ada\n"B"')] },
      { of: 'bench', columns: [column('benchId', 'text', 'b')] },
      { of: 'product', columns: [column('dose', 'text', '12 mL/gal'), column('amount', 'integer', '6000')] },
    ],
  };
  expect(sealText({ number: '12', previousHash: NO_HASH, sealedAt: '1774947600000' }, thing)).toBe(
    [
      'bench-and-bottle record seal 1',
      'number 12',
      `previous ${NO_HASH}`,
      'sealed 1774947600000',
      'version actor text "Ada\\n\\"B\\""',
      'version measuredPh real 6.1',
      'bench 0 benchId text "b"',
      'product 0 amount integer 6000',
      'product 0 dose text "12 mL/gal"',
      '',
    ].join('\n'),
  );
});
