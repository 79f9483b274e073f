import 'server-only';
import type { Clock } from '@/lib/clock';
import { fingerprint } from '@/lib/data/fingerprint';
import { saveShop } from '@/lib/data/save-shop';
import { shopFromRows } from '@/lib/data/shop-rows';
import { write } from '@/lib/data/writer';
import type { CsvAsked, LineNote } from '@/lib/engine/exchange/csv/asked';
import { type CsvPlan, csvPlan } from '@/lib/engine/exchange/csv/csv-plan';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
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

/**
 * Bring a CSV list into a shop, exactly as the preview showed it: all of it, or nothing.
 *
 * Refuses  'shop-changed-since-preview' when the shop is no longer the one that was looked at; 'faults', each with its line
 *          and column; 'not-found'
 */
export async function importCsv(
  { commandId, shopId, actor, ...body }: ImportCsv,
  clock: Clock,
  onStep: (step: object) => void = () => undefined,
): Promise<Outcome<CsvImported>> {
  const { list } = body.asked;
  const command = { id: commandId, name: 'importCsv', shopId, body, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const current = await shopFromRows(rows, shopId);
    if (!current) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const unread = unreadRefusal(current);
    if (unread) return refuse(unread);
    if (fingerprint(current) !== body.fingerprint) return refuse({ code: 'shop-changed-since-preview' });
    const { result, faults, lines } = finished(csvPlan(current, body.asked));
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
