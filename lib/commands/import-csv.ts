import 'server-only';
import type { Clock } from '@/lib/clock';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { saveShop } from '@/lib/data/save-shop';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { shopFromRows } from '@/lib/data/shop-rows';
import { revisionIn, write } from '@/lib/data/writer';
import type { CsvAsked, LineNote } from '@/lib/engine/exchange/csv/asked';
import { type CsvPlan, csvPlan } from '@/lib/engine/exchange/csv/csv-plan';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { unreadRefusal } from '@/shared/shop-file/unread';

export type ImportCsv = {
  commandId: string;
  shopId: string;
  actor?: string;
  /** The file with what was said about it, as the preview was asked. */
  asked: CsvAsked;
  /** How the shop stood when the preview was made. */
  fingerprint: string;
};

/** What an import did: how many things of the list it added and changed, and how many suppliers it made. */
export type CsvImported = { added: number; changed: number; suppliers: number };

/** An import that was looked at before its turn: the shop as it stood, and what the list makes of it. */
export type ReadyCsv = { current: ShopFile; state: string | null; plan: CsvPlan };

/**
 * Do what an import takes before it writes: read the shop, and work out what the list makes of it. It takes most of the
 * time, and meanwhile others write.
 *
 * Takes    what was found before, where it was: it still stands unless the shop was changed since
 * Gives    null when there is no such shop
 */
export async function preparedCsv(
  { shopId, asked }: Pick<ImportCsv, 'shopId' | 'asked'>,
  before?: ReadyCsv | null,
): Promise<ReadyCsv | null> {
  const { marks, reader } = await database();
  // What is read may be newer than this, and never older.
  const state = await marks.stateOf(shopId);
  if (before && before.state === state) return before;
  const current = await reader.$transaction((rows) => shopFromRows(rows, shopId), PATIENCE);
  return current && { current, state, plan: finished(csvPlan(current, asked)) };
}

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/**
 * Bring a CSV list into a shop, exactly as the preview showed it: all of it, or nothing.
 *
 * Takes    the list with what it was found to make of the shop, where that was done before
 * Refuses  'shop-changed-since-preview' when the shop is no longer the one that was looked at; 'faults', each with its line
 *          and column; 'not-found'
 */
export async function importCsv(
  { commandId, shopId, actor, ready, ...body }: ImportCsv & { ready?: ReadyCsv | null },
  clock: Clock,
  onStep: (step: object) => void = () => undefined,
): Promise<Outcome<CsvImported>> {
  const { list } = body.asked;
  const seen = { before: ready?.current, atRevision: revisionIn(ready?.state) };
  const command = { id: commandId, name: 'importCsv', shopId, body, actor, ...seen };
  return write(command, clock.now(), async (rows, stamp) => {
    const current = ready ? ready.current : await shopInWrite(rows, shopId);
    if (!current) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const unread = unreadRefusal(current);
    if (unread) return refuse(unread);
    if (fingerprint(current) !== body.fingerprint) return refuse({ code: 'shop-changed-since-preview' });
    const { result, faults, lines } = ready?.plan ?? finished(csvPlan(current, body.asked));
    if (!result) return refuse({ code: 'faults', faults: faults.map(asFault) });
    onStep({ step: 'saving', lines });
    await saveShop(rows, stamp, result.file, result.comparison);
    const { added, changed } = result.comparison.collections[list];
    const suppliers = result.comparison.collections.suppliers.added.length;
    return accept({ added: added.length, changed: changed.length, suppliers });
  });
}

function finished(plan: ReturnType<typeof csvPlan>): CsvPlan {
  for (let step = plan.next(); ; step = plan.next()) if (step.done) return step.value;
}

const asFault = ({ line, column, message }: LineNote): Fault => ({
  path: [line === null ? '' : `line ${line}`, column ?? ''].filter(Boolean).join(', '),
  message,
});
