import 'server-only';
import { shownRows } from '../data/accept-rows';
import { checkRecordsOf } from '../data/check-records';
import { database } from '../data/database';
import { newCommandId } from '../data/new-id';
import { sha256 } from '../data/sha256';
import { faultSentence, seenFaults } from '../engine/record/chain';

/** The damaged rows of a shop that may be accepted as they stand, and what their form carries unseen. */
export type AcceptScreen = {
  shop: string;
  commandId: string;
  seen: string;
  rows: { key: string; name: string; says: string; href?: string }[];
  more: number;
};

const MOST_SHOWN = 20;

/** What can be accepted as it stands; null when there is nothing, or when the file itself cannot be read. */
export async function acceptScreen(shopId: string): Promise<AcceptScreen | null> {
  const rows = await readable(async () => (await database()).accepting.seen(shopId));
  if (rows.length === 0) return null;
  return {
    ...{ shop: shopId, commandId: newCommandId(), seen: shownRows(rows) },
    rows: rows.slice(0, MOST_SHOWN).map(({ table, row, held }) => ({
      ...{ key: `${table} ${row}`, name: `${table} ${row.replaceAll('\n', ' ')}` },
      says: held === null ? 'It is gone.' : saidOf(held),
    })),
    more: Math.max(0, rows.length - MOST_SHOWN),
  };
}

/** The records that do not fit the chain and can be accepted as they stand; null when there is none. */
export async function acceptRecordsScreen(shopId: string): Promise<AcceptScreen | null> {
  const { faults } = await checkRecordsOf(shopId).catch(() => ({ faults: [] }));
  if (faults.length === 0) return null;
  return {
    ...{ shop: shopId, commandId: newCommandId(), seen: seenFaults(faults, sha256) },
    rows: faults.slice(0, MOST_SHOWN).map((fault) => ({
      ...{ key: fault.mark, name: `Record ${fault.application}`, says: faultSentence(fault) },
      ...(fault.wrong === 'missing' ? {} : { href: `/log/${encodeURIComponent(fault.application)}` }),
    })),
    more: Math.max(0, faults.length - MOST_SHOWN),
  };
}

const LONGEST = 60;

/** What a row holds, but for its shop and what it leaves empty. */
const saidOf = (held: Record<string, string>): string =>
  Object.entries(held)
    .filter(([name, value]) => name !== 'shopId' && value !== 'NULL')
    .map(([name, value]) => `${name} ${value.length > LONGEST ? `${value.slice(0, LONGEST)}…` : value}`)
    .join(', ');

async function readable<T>(read: () => Promise<T[]>): Promise<T[]> {
  try {
    return await read();
  } catch {
    // The section about the database says that the file cannot be read.
    return [];
  }
}
