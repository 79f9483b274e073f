import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { clock } from '@/lib/clock';
import { bringBack, candidate } from '@/lib/data/restore-backup';
import type { TableDigest } from '@/lib/data/row-digests';
import { moveFromPostgresql, moveToPostgresql } from '@/prisma/move';

/**
 * Copy a shop from the data folder into PostgreSQL, or back. Nothing is taken away where it came from, and what is in the
 * data folder is kept aside when something comes back.
 *
 * Gives    the code to end with: 0, or 1 when nothing was copied
 */
export async function move(args: readonly string[], folder: string): Promise<number> {
  const [way, url = ''] = args;
  if ((way !== '--to' && way !== '--from') || !/^postgres(ql)?:\/\//.test(url)) return say(USAGE);
  const database = join(folder, 'shop.db');
  try {
    return way === '--to' ? await to(database, url) : await from(url, database);
  } catch (error) {
    return say(`Nothing was copied. ${(error as Error).message}`);
  }
}

const USAGE =
  'Say where to: npm run move -- --to postgresql://ACCOUNT@HOST/DATABASE or --from, to bring it back into the data folder.';

async function to(database: string, url: string): Promise<number> {
  if (!existsSync(database)) return say(`There is no database at ${database}.`);
  console.log(
    `\n  ${counted(await moveToPostgresql(database, url))} copied to PostgreSQL; every count and hash is equal.\n`,
  );
  return 0;
}

async function from(url: string, database: string): Promise<number> {
  const fresh = `${database}.moving`;
  rmSync(fresh, { force: true });
  try {
    const digests = await moveFromPostgresql(url, fresh);
    const aside = await bringBack(await candidate(fresh), database, clock.now());
    console.log(`\n  ${counted(digests)} copied from PostgreSQL; every count and hash is equal.`);
    if (aside) console.log(`  What was in the data folder before is kept in ${aside}`);
    console.log('  Every bench reads KEEP OUT until somebody has confirmed what was sprayed since (Setup, Clock).\n');
    return 0;
  } finally {
    rmSync(fresh, { force: true });
  }
}

function counted(digests: Record<string, TableDigest>): string {
  const tables = Object.values(digests);
  return `${tables.reduce((sum, { rows }) => sum + rows, 0)} rows of ${tables.length} tables`;
}

function say(sentence: string): number {
  console.error(`\n  ${sentence}\n`);
  return 1;
}
