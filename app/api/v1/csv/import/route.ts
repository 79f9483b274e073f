import { clock } from '@/lib/clock';
import { importCsv } from '@/lib/commands/import-csv';
import { doorRoute } from '@/lib/door/door-route';
import { CsvImportBody } from '@/shared/api/csv-bodies';
import { NoQuestion } from '@/shared/api/questions';

/** The import of a list: all of it or nothing, and only as the preview showed it. */
export const POST = doorRoute(
  { query: NoQuestion, body: CsvImportBody, tells: true },
  async ({ body: { commandId, shop: shopId, fingerprint, ...asked }, visitor: { actor }, tell }) => {
    await tell({ step: 'together', lines: 0 });
    return importCsv({ commandId, shopId, actor, asked, fingerprint }, clock, tell);
  },
);
